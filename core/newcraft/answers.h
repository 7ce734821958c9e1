// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/fields.h"

#include <cstddef>
#include <optional>

namespace stillbay {

/// How the arms stand, seen from above; the X and the even ones have the gap between two arms
/// forward, the Y of three its foot backwards, the plus one arm forward.
enum class ArmLayout { Three, FourX, FourPlus, Six, Eight };
inline constexpr int kArmLayouts = 5;

/// What a builder says of a craft before there is one. What is left out follows from the rest.
/// Indices are those of the lists of core/presets; ranges those of the field table.
struct CraftAnswers {
    std::optional<ArmLayout> layout = {};
    std::optional<double> arm_length_mm = {};     ///< from the clamp's edge to the motor's axis
    std::optional<std::size_t> armMaterial = {};  ///< of armPresets()
    std::optional<double> arm_width_mm = {};
    std::optional<double> arm_height_mm = {};

    std::optional<double> propeller_diameter_in = {};
    std::optional<double> propeller_pitch_in = {};
    std::optional<int> blades = {};
    std::optional<std::size_t> motor = {};  ///< of motorPresets()
    std::optional<double> kv_rpm_per_v = {};
    std::optional<int> cells = {};
    std::optional<std::size_t> pack = {};  ///< of packPresets(); other cells rewire it

    std::optional<double> bay_mass_g = {};  ///< all that hangs on the tubes, in kBayMass_g
    std::optional<double> travel_mm = {};

    std::optional<std::size_t> camera = {};  ///< of cameraPresets()
    std::optional<double> frame_rate_hz = {};
    std::optional<double> exposure_ms = {};
    std::optional<double> tilt_down_deg = {};

    std::optional<std::size_t> tube = {};  ///< of tubePresets()
    std::optional<double> free_length_mm = {};
    std::optional<double> stretch = {};
    std::optional<double> mount_height_mm = {};   ///< of the bay points, as their z
    std::optional<double> mounts_along_mm = {};   ///< from the front bay points to the rear ones
    std::optional<double> mounts_across_mm = {};  ///< from the left bay points to the right ones

    bool operator==(const CraftAnswers&) const = default;
};

/// A range that no single field of the setup has.
struct AnswerRange {
    double min, max;
};
inline constexpr AnswerRange kBayMass_g{20, 20000};
inline constexpr AnswerRange kMountSpacing_mm{5, 2000};

}  // namespace stillbay
