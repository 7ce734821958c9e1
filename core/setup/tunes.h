// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"

#include <string>

/// Kept tunes: tube and mounts put aside under a name, and taken again.
namespace stillbay {

/// The craft's present tube and mounts.
Design designOf(const Setup& setup);

/// The craft with another tube and other mounts; its kept tunes stay.
Setup withDesign(Setup setup, const Design& design);

/// @param saved  ISO 8601, UTC
Tune presentTune(const Setup& setup, std::string name, std::string saved);

/// A name for the present tune that no kept tune has: "8 × 5 mm, Shore 60, 20 mm, +15 %", then
/// with " (2)" and so on. A drilled craft has no common stretch to name.
std::string freeTuneName(const Setup& setup);

}  // namespace stillbay
