// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"

namespace stillbay::test {

/// Draws a valid setup within a RapidCheck property: planned or drilled, with odd names, kept tunes
/// and unknown keys.
Setup drawSetup();

/// Whether any object of the setup has unknown keys.
bool hasExtras(const Setup& setup);

}  // namespace stillbay::test
