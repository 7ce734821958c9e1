// SPDX-License-Identifier: MIT
#pragma once

#include "core/newcraft/answers.h"
#include "core/presets/presets.h"
#include "core/setup/setup.h"

#include <cstddef>

/// What hangs in the bay as it follows from the answers.
namespace stillbay {

/// Index into cameraPresets(): the builder's, or the usual one for a bay of that weight.
std::size_t cameraFor(const CraftAnswers& answers, const PackPreset& pack);

/// Battery, camera and tray below the centre plates, of the weight asked for and with their
/// common centre of mass under the middle, and the camera with its sources; the frame is there.
Setup withBay(Setup setup, const PackPreset& pack, const CameraPreset& camera,
              const CraftAnswers& answers);

}  // namespace stillbay
