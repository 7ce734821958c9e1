// SPDX-License-Identifier: MIT
#include "core/base/printable.h"

#include "core/base/format.h"

namespace stillbay {
namespace {

bool isContinuation(char c)
{
    return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
}

// Of a well-formed character of at most three bytes; 0xFFFF for a longer one, which is never told.
unsigned codePoint(std::string_view character)
{
    const auto byte = [&](std::size_t i) {
        return static_cast<unsigned>(static_cast<unsigned char>(character[i]));
    };
    switch (character.size()) {
        case 1:
            return byte(0);
        case 2:
            return (byte(0) & 0x1FU) << 6U | (byte(1) & 0x3FU);
        case 3:
            return (byte(0) & 0x0FU) << 12U | (byte(1) & 0x3FU) << 6U | (byte(2) & 0x3FU);
        default:
            return 0xFFFF;
    }
}

// @source The Unicode Standard, chapter 23: control codes, separators, and the characters of the
// bidirectional algorithm (annex 9), which make a text read as another.
bool isToBeTold(unsigned code)
{
    const bool isControl = code < 0x20 || (code >= 0x7F && code < 0xA0);
    const bool isDirection = code == 0x061C || code == 0x200E || code == 0x200F ||
                             (code >= 0x202A && code <= 0x202E) ||
                             (code >= 0x2066 && code <= 0x2069);
    return isControl || isDirection || code == 0x2028 || code == 0x2029;
}

std::string told(std::string_view text, bool keepsBreaks)
{
    std::string shown;
    while (!text.empty()) {
        const std::size_t length = utf8Length(text);
        const std::string_view character = text.substr(0, length == 0 ? 1 : length);
        const unsigned code = codePoint(character);
        if (length == 0)
            shown += formatted("\\x%02x", code);
        else if (isToBeTold(code) && !(keepsBreaks && code == '\n'))
            shown += formatted("\\u%04x", code);
        else
            shown += character;
        text.remove_prefix(character.size());
    }
    return shown;
}

}  // namespace

std::size_t utf8Length(std::string_view text)
{
    if (text.empty())
        return 0;
    const auto byte = [&](std::size_t i) {
        return static_cast<unsigned char>(text[i]);
    };
    const unsigned first = byte(0);
    if (first < 0x80)
        return 1;
    const std::size_t length = first < 0xC2   ? 0
                               : first < 0xE0 ? 2
                               : first < 0xF0 ? 3
                               : first < 0xF5 ? 4
                                              : 0;
    if (length == 0 || text.size() < length)
        return 0;
    for (std::size_t i = 1; i < length; ++i)
        if (!isContinuation(text[i]))
            return 0;
    const unsigned second = byte(1);
    const bool overlong = (first == 0xE0 && second < 0xA0) || (first == 0xF0 && second < 0x90);
    const bool surrogate = first == 0xED && second >= 0xA0;
    const bool beyond = first == 0xF4 && second >= 0x90;
    return overlong || surrogate || beyond ? 0 : length;
}

std::size_t findNonUtf8(std::string_view text)
{
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t length = utf8Length(text.substr(at));
        if (length == 0)
            return at;
        at += length;
    }
    return std::string_view::npos;
}

std::string printable(std::string_view text)
{
    return told(text, false);
}

std::string printablePage(std::string_view text)
{
    return told(text, true);
}

}  // namespace stillbay
