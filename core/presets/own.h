// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/setup/setup.h"

#include <string>
#include <string_view>
#include <variant>
#include <vector>

/// Presets that a builder keeps: one object of a craft with what is said of its numbers, under a
/// name.
namespace stillbay {

enum class PresetKind { Arm, Motor, Propeller, Pack, Camera, Tube };

/// Path of the object that a preset of this kind fills, "drive.motor".
const char* pathOf(PresetKind kind);

struct OwnPreset {
    using Object = std::variant<ArmSection, Motor, Propeller, Battery, Camera, TubeKind>;

    std::string name;
    Object object;
    std::vector<Source> sources;  ///< keys as in a craft, "drive.motor.mass_g"

    PresetKind kind() const { return static_cast<PresetKind>(object.index()); }

    bool operator==(const OwnPreset&) const = default;
};

/// What the craft has there now.
OwnPreset ownPreset(const Setup& setup, PresetKind kind, std::string name);

/// The craft with the object of the preset in it, and what is said of its numbers. Where a motor or
/// a propeller sits above its arm, and where the camera looks from and how far down, stays.
Setup withOwn(Setup setup, const OwnPreset& preset);

/// The text of a file of presets: JSON, objects and sources written as in a craft's file.
std::string writeOwnPresets(const std::vector<OwnPreset>& presets);

/// Such a text, each preset checked as the reader of a craft checks its object.
///
/// @error BadInput  not JSON, not such a file, an unknown kind, no name, a name given twice, or an
///                  object that no craft may have; `where` says which.
Result<std::vector<OwnPreset>> readOwnPresets(std::string_view text);

}  // namespace stillbay
