// SPDX-License-Identifier: MIT
#include "tests/recordings/true_reedbed.h"

#include "core/craft/craft.h"
#include "core/drive/drive.h"

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
    craft.drive.throttle_curve.assign(kTrueThrottleCurve.begin(), kTrueThrottleCurve.end());
    craft.drive.unbalance_g_mm = kTrueUnbalance_g_mm;
    return craft;
}

double trueSpeed(const Setup& trueCraft, double stick)
{
    const ExcitedAirframe craft = makeExcitedAirframe(trueCraft);
    return rotorSpeed(craft.drive, stick, craft.fullVoltage);
}

}  // namespace stillbay::test
