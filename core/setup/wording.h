// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/phrase.h"
#include "core/setup/fields.h"

#include <cstddef>
#include <string>
#include <string_view>

/// How faults of a setup are put into words: paths, numbers with their unit, ranges.
namespace stillbay {

/// A value with its unit: "180 g", "4", "45°".
PhraseArgument withUnit(Number value, const char* unit);

/// "0.1 to 20000 g".
Phrase rangeText(double min, double max, const char* unit);

template <class Owner>
Phrase rangeText(const Field<Owner>& field)
{
    return rangeText(field.min, field.max, field.unit);
}

/// "1 to 100".
Phrase rangeText(CountRange range);

/// "Mass is 0 g, allowed 0.1 to 20000 g". @param label  a field's.
Phrase outOfRange(const char* label, PhraseArgument value, Phrase range);

/// What sentences call a text or a list of the setup, by its key: "The list of arms".
Phrase labelOf(std::string_view key);

/// The same of a list, where a text has the same key.
Phrase listLabelOf(std::string_view key);

/// Foreign text made fit for a one-line message: printable() and cut when long.
std::string shorten(std::string_view text);

/// The same in quotation marks.
std::string quote(std::string_view text);

/// The words of a choice: `"pluck", "tap", "film"`.
std::string quotedWords(const Choice& choice);

/// Path of a member: ("bay", "parts") → "bay.parts"; an empty parent gives the key alone.
std::string joinPath(std::string_view parent, std::string_view key);

/// Path of a list's entry: ("bay.parts", 1) → "bay.parts[1]".
std::string joinPath(std::string_view parent, std::size_t index);

}  // namespace stillbay
