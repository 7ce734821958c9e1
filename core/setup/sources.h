// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"

#include <cstddef>
#include <span>
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

/// Whether the builder stands for a number: nothing says that it is typical or estimated.
bool isOwn(const Setup& setup, std::string_view key);

/// How many numbers of a part of the craft there are, and how many of them are the builder's own.
struct OwnNumbers {
    std::size_t given = 0;
    std::size_t own = 0;

    bool operator==(const OwnNumbers&) const = default;
};

/// Counts the numbers that are given, place by place. What is left out and estimated by the program
/// does not count; a tuple or a list counts once.
///
/// @param places  paths of objects or lists, "drive.motor", "bay.parts"; each number counts for the
///                longest of them that holds it
/// @return one entry for each place.
std::vector<OwnNumbers> ownNumbers(const Setup& setup, std::span<const std::string> places);

/// What is said of two rows of a list changes places, as the rows do.
///
/// @param list  path of the list, "bay.parts"
void swapRowSources(Setup& setup, std::string_view list, std::size_t a, std::size_t b);

/// What is said of a row of a list is gone with the row, and what is said of those behind it moves
/// up with them.
void dropRowSources(Setup& setup, std::string_view list, std::size_t row);

/// Keys of the sources that name no number of the craft: an arm that was taken away, or a number
/// that only a newer program knows. They are kept and not used.
std::vector<std::string> sourcesOfNothing(const Setup& setup);

}  // namespace stillbay
