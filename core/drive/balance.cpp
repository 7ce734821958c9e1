// SPDX-License-Identifier: MIT
#include "core/drive/balance.h"

#include "core/base/units.h"

#include <numbers>

namespace stillbay {

double balanceGrade_mm_s(double unbalance, double rotorMass, double speed)
{
    return unbalance / rotorMass * 2 * std::numbers::pi * speed / unit::mm;
}

}  // namespace stillbay
