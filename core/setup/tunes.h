// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"

#include <string>

/// Kept tunes: tube and mounts put aside under a name, and taken again.
namespace stillbay {

/// The craft's present tube and mounts; its heaviest part is where the craft has it.
Design designOf(const Setup& setup);

/// The same with the place of the heaviest part, as a search has it that may move it.
Design wholeDesignOf(const Setup& setup);

/// The craft with another tube, other mounts and, where the design says so, its heaviest part
/// elsewhere; its kept tunes stay.
Setup withDesign(Setup setup, const Design& design);

/// The heaviest part, the first of equals; none without parts.
Part* heaviestPart(Bay& bay);
const Part* heaviestPart(const Bay& bay);

/// The bay with its heaviest part where a design has it.
Bay withDesign(Bay bay, const Design& design);

/// @param saved  ISO 8601, UTC
Tune presentTune(const Setup& setup, std::string name, std::string saved);

/// A name for the present tune that no kept tune has: "8 × 5 mm, Shore 60, 20 mm, +15 %", then
/// with " (2)" and so on. A drilled craft has no common stretch to name.
std::string freeTuneName(const Setup& setup);

}  // namespace stillbay
