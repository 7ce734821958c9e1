// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"

#include <array>

/// The craft that the sample recordings are made of: the sample reedbed as it "really" is. Its file
/// does not know these numbers; calibration is to find them.
namespace stillbay::test {

inline constexpr double kTrueYoungsModulus_mpa = 3.2;  // 60 Shore A makes it 3.6
inline constexpr double kTrueDynamicRatio = 1.38;      // in the file 1.25
inline constexpr double kTrueTubeLoss = 0.095;         // 0.12
inline constexpr double kTrueArmModulus_gpa = 9.1;     // 10
inline constexpr double kTrueArmLoss = 0.016;          // 0.01
inline constexpr double kTrueKv_rpm_per_v = 850;       // 880
inline constexpr double kTrueUnbalance_g_mm = 6.5;     // 4

/// What the controller makes of the stick, throttle and duty; the file has duty = stick.
inline constexpr std::array<std::array<double, 2>, 3> kTrueThrottleCurve{
    {{0.30, 0.235}, {0.45, 0.375}, {0.60, 0.53}}};

/// How much faster than their mean the motors turn, in the order of the arms; together nothing.
inline constexpr std::array<double, 4> kTrueSpeedOffset{0.004, -0.003, 0.002, -0.003};

/// @param asInFile  samples/reedbed.stillbay
Setup trueReedbed(const Setup& asInFile);

/// The motors' mean speed [rev/s] at a stick's place, pack full.
double trueSpeed(const Setup& trueCraft, double stick);

}  // namespace stillbay::test
