// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"

#include <cstdint>
#include <random>

namespace stillbay::test {

/// Draws a valid setup within a RapidCheck property: planned or drilled, with odd names, kept tunes
/// and unknown keys.
Setup drawSetup();

/// The same outside of a property: one seed, one setup.
Setup drawSetup(std::uint64_t seed);

/// Multiplies every number of a craft by a factor of its own, up to `spread` either way, within its
/// field's range. What comes of it may break a rule between fields.
Setup distorted(Setup setup, std::mt19937& random, double spread);

/// Whether any object of the setup has unknown keys.
bool hasExtras(const Setup& setup);

}  // namespace stillbay::test
