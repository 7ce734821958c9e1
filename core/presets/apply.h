// SPDX-License-Identifier: MIT
#pragma once

#include "core/presets/presets.h"
#include "core/setup/setup.h"

#include <string>
#include <vector>

/// A craft with a preset's numbers in it.
///
/// Each number that is filled in gets a source "typical" with the preset's spread and, as note,
/// where the preset has it from; what the craft said of the number before is gone with it. Numbers
/// that belong to the thing replaced and that the preset does not know (a propeller's measured
/// coefficients, a tube's hang test) are emptied, so that they are estimated again. What belongs to
/// the craft stays: sections, places, heights above the arm, tilt, unbalance.
namespace stillbay {

/// A material that is sold as tube gives a solid arm a wall of 1 mm, where that leaves a bore.
Setup withArm(Setup setup, const ArmPreset& preset);
Setup withMotor(Setup setup, const MotorPreset& preset);
Setup withPropeller(Setup setup, const PropellerPreset& preset);

/// Cells and resistance only: which box of the bay the pack is, packPart() does not know.
Setup withPack(Setup setup, const PackPreset& preset);

/// Cuts the exposure to one frame where it would not fit.
Setup withCamera(Setup setup, const CameraPreset& preset);

Setup withTube(Setup setup, const TubePreset& preset);

/// The pack, or the camera, as a box of the bay.
Part packPart(const PackPreset& preset, std::string name, const Triple& centre_mm);
Part cameraPart(const CameraPreset& preset, std::string name, const Triple& centre_mm);

enum class PartList { Airframe, Bay };

const char* pathOf(PartList list);
std::vector<Part>& partsOf(Setup& setup, PartList list);

/// One more part at the end of a list; its mass and size are typical, from this source.
Setup withPart(Setup setup, PartList list, Part part, const char* source);

/// One more plate at the end of a list; its mass is estimated from its material's density.
Setup withPlate(Setup setup, PartList list, Part plate, const ArmPreset& material);

}  // namespace stillbay
