// SPDX-License-Identifier: MIT
#pragma once

/// What the knife needs beyond the craft itself.
namespace stillbay {

inline constexpr double kUsualGrip_mm = 6.0;     ///< common practice, no source
inline constexpr double kLargestGrip_mm = 50.0;  ///< catches slips of the keyboard

/// How long a tube is cut: the clamp at each end holds grip_mm of it.
constexpr double cutLength_mm(double freeLength_mm, double grip_mm)
{
    return freeLength_mm + 2.0 * grip_mm;
}

}  // namespace stillbay
