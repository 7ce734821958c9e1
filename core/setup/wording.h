// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/fields.h"

#include <cstddef>
#include <string>
#include <string_view>

/// How faults of a setup are put into words: paths, numbers with their unit, ranges.
namespace stillbay {

/// Shortest decimals that read back to the same double: "180", "0.7", "1e+300", "nan".
std::string toText(double value);

/// Four significant digits, for what was computed rather than typed.
std::string toRoundedText(double value);

/// A value with its unit: "180 g", "4", "45°".
std::string withUnit(std::string_view value, std::string_view unit);

/// "0.1 to 20000 g".
std::string rangeText(double min, double max, std::string_view unit);

template <class Owner>
std::string rangeText(const Field<Owner>& field)
{
    return rangeText(field.min, field.max, field.unit);
}

/// "1 to 100".
std::string rangeText(CountRange range);

/// Foreign text made fit for a one-line message: control characters replaced, cut when long.
std::string shorten(std::string_view text);

/// The same in quotation marks.
std::string quote(std::string_view text);

/// Path of a member: ("bay", "parts") → "bay.parts"; an empty parent gives the key alone.
std::string joinPath(std::string_view parent, std::string_view key);

/// Path of a list's entry: ("bay.parts", 1) → "bay.parts[1]".
std::string joinPath(std::string_view parent, std::size_t index);

/// Position of the first byte that is not UTF-8 (overlong forms and surrogates count as wrong), or
/// npos.
std::size_t findNonUtf8(std::string_view text);

}  // namespace stillbay
