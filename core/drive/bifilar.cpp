// SPDX-License-Identifier: MIT
#include "core/drive/bifilar.h"

#include "core/base/units.h"

#include <numbers>

namespace stillbay {

double bifilarInertia(double mass, double period, double distance, double length)
{
    const double turns = distance * period / (4 * std::numbers::pi);
    return mass * kGravity * turns * turns / length;
}

}  // namespace stillbay
