// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"

#include <string>
#include <string_view>
#include <vector>

namespace stillbay {

/// What the craft says about where one of its numbers comes from; null where it says nothing.
///
/// @param key  path of the number, "tube.youngs_modulus_mpa"
const Source* sourceOf(const Setup& setup, std::string_view key);

/// Says where a number comes from, in place of what was said of it before.
void putSource(Setup& setup, Source source);

/// Says no longer where a number comes from.
void dropSource(Setup& setup, std::string_view key);

/// Paths of the craft's numbers that have a value, in file order; a place counts as one number.
std::vector<std::string> numbersOf(const Setup& setup);

/// Keys of the sources that name no number of the craft: an arm that was taken away, or a number
/// that only a newer program knows. They are kept and not used.
std::vector<std::string> sourcesOfNothing(const Setup& setup);

}  // namespace stillbay
