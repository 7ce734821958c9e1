// SPDX-License-Identifier: MIT
#include "core/setup/unbalance.h"

#include <algorithm>

namespace stillbay {

bool hasOwnUnbalance(const Setup& setup)
{
    return std::any_of(setup.airframe.arms.begin(), setup.airframe.arms.end(),
                       [](const Arm& arm) { return arm.unbalance_g_mm.has_value(); });
}

double unbalanceOf_g_mm(const Setup& setup, const Arm& arm)
{
    return arm.unbalance_g_mm.value_or(setup.drive.unbalance_g_mm);
}

void scaleUnbalance(Setup& setup, double factor)
{
    setup.drive.unbalance_g_mm *= factor;
    for (Arm& arm : setup.airframe.arms)
        if (arm.unbalance_g_mm)
            *arm.unbalance_g_mm *= factor;
}

}  // namespace stillbay
