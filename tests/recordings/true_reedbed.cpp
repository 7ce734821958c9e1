// SPDX-License-Identifier: MIT
#include "tests/recordings/true_reedbed.h"

#include "core/craft/craft.h"
#include "core/drive/drive.h"

#include <cstddef>

namespace stillbay::test {

Setup trueReedbed(const Setup& asInFile)
{
    Setup craft = asInFile;
    craft.tube.youngs_modulus_mpa = kTrueYoungsModulus_mpa;
    craft.tube.dynamic_ratio = kTrueDynamicRatio;
    craft.tube.loss_factor = kTrueTubeLoss;
    craft.airframe.arm.youngs_modulus_gpa = kTrueArmModulus_gpa;
    craft.airframe.arm.loss_factor = kTrueArmLoss;
    craft.drive.motor.kv_rpm_per_v = kTrueKv_rpm_per_v;
    craft.drive.unbalance_g_mm = kTrueUnbalance_g_mm;
    return craft;
}

double trueDuty(double stick)
{
    std::size_t i = 1;
    while (i + 1 < kTrueThrottleCurve.size() && kTrueThrottleCurve[i].first < stick)
        ++i;
    const auto [stick0, duty0] = kTrueThrottleCurve[i - 1];
    const auto [stick1, duty1] = kTrueThrottleCurve[i];
    return duty0 + (duty1 - duty0) * (stick - stick0) / (stick1 - stick0);
}

double trueSpeed(const Setup& trueCraft, double stick)
{
    const ExcitedAirframe craft = makeExcitedAirframe(trueCraft);
    return rotorSpeed(craft.drive, trueDuty(stick), craft.fullVoltage);
}

}  // namespace stillbay::test
