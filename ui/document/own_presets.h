// SPDX-License-Identifier: MIT
#pragma once

#include "core/presets/own.h"

#include <QString>

#include <vector>

/// The builder's own presets, in one file of the state folder, the same for every window. It is
/// read anew each time, so that what another window kept is there too.
namespace stillbay::ui {

/// All presets; none where the file is missing.
///
/// @error BadInput  what readFile() and readOwnPresets() refuse.
Result<std::vector<OwnPreset>> ownPresets();

/// Keeps a preset, in place of the one of its kind and name if there is one.
///
/// @error BadInput  the file cannot be read, and is left as it is; or it cannot be written.
Result<void> keepPreset(const OwnPreset& preset);

/// Forgets the preset of this kind and name.
///
/// @error BadInput  as for keepPreset().
Result<void> forgetPreset(PresetKind kind, const std::string& name);

}  // namespace stillbay::ui
