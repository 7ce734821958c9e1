// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <span>
#include <string>

/// One of the inputs, changed at random in one to four ways: bits and bytes, cuts, pieces of
/// another input, repeated blocks, numbers in place of numbers. Never longer than
/// kLargestMutant_bytes.
///
/// @param inputs  at least one
/// @param number  of the mutant: the same one gives the same bytes on every machine
std::string mutant(std::span<const std::string> inputs, std::uint64_t number);

inline constexpr std::size_t kLargestMutant_bytes = std::size_t{1} << 16;
