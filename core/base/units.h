// SPDX-License-Identifier: MIT
#pragma once

#include <numbers>

/// Factors from the builder's units to SI: `length = 3.0 * unit::mm`, `angle = a_deg * unit::deg`.
namespace stillbay::unit {

inline constexpr double mm = 1e-3;                       // [m]
inline constexpr double inch = 0.0254;                   // [m], exact
inline constexpr double g = 1e-3;                        // [kg]
inline constexpr double g_mm = 1e-6;                     // [kg·m]
inline constexpr double g_mm2 = 1e-9;                    // [kg·m²]
inline constexpr double ms = 1e-3;                       // [s]
inline constexpr double deg = std::numbers::pi / 180.0;  // [rad]
inline constexpr double rpm = 1.0 / 60.0;                // [rev/s]
inline constexpr double mohm = 1e-3;                     // [Ω]
inline constexpr double mpa = 1e6;                       // [Pa]
inline constexpr double gpa = 1e9;                       // [Pa]

}  // namespace stillbay::unit

namespace stillbay {

inline constexpr double kPercent = 100.0;    // of a share
inline constexpr double kGravity = 9.80665;  // [m/s²], standard gravity (ISO 80000-3)

}  // namespace stillbay
