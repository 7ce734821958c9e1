// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/setup/setup.h"

namespace stillbay {

/// Checks every number against the field table and the rules between fields.
///
/// @return the first fault in file order, or nothing when the setup may be loaded and saved.
/// @error BadInput  `where` is the key's path ("drive.battery.cells"), `what` names the value and
///                  the allowed range.
Result<void> validate(const Setup& setup);

/// The same for a tube and its mounts alone; paths are those in a setup.
Result<void> validate(const TubeKind& tube, const Mounts& mounts);

}  // namespace stillbay
