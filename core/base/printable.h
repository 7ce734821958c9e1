// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

/// Text from outside (names, keys, columns, arguments, what other programs say) for a terminal.
namespace stillbay {

/// Length in bytes of the well-formed character at the start of a text; 0 where there is none, or
/// the text is empty (overlong forms and surrogates count as wrong).
/// @source The Unicode Standard, table 3-7.
std::size_t utf8Length(std::string_view text);

/// Position of the first byte that is not UTF-8, or npos.
std::size_t findNonUtf8(std::string_view text);

/// What moves a terminal's cursor, changes its colours or turns the direction of reading, written
/// as JSON would: control characters (U+0000 to U+001F, U+007F to U+009F), separators of lines and
/// paragraphs, and the marks of direction as "\u001b"; a byte that is not UTF-8 as "\xe9". What is
/// left is printed as it is, also where it looks like one of these.
std::string printable(std::string_view text);

/// The same of a text of several lines: their breaks stay.
std::string printablePage(std::string_view text);

}  // namespace stillbay
