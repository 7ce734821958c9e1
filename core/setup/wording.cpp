// SPDX-License-Identifier: MIT
#include "core/setup/wording.h"

#include "core/base/check.h"

#include <utility>

namespace stillbay {
namespace {

constexpr std::size_t kLongestShown = 60;  // [bytes]

struct KeyLabel {
    std::string_view key;
    const char* label;
};

constexpr KeyLabel kKeyLabels[] = {
    {"name", translatable("The name")},
    {"notes", translatable("The text of the notes")},
    {"saved", translatable("The time of keeping")},
    {"note", translatable("The text of a note")},
    {"date", translatable("The date of a source")},
    {"parts", translatable("The list of parts")},
    {"arms", translatable("The list of arms")},
    {"points", translatable("The list of tubes")},
    {"file", translatable("The file of a recording")},
    {"unit", translatable("The unit of a column")},
    {"sensor_axes", translatable("The directions of a sensor's axes")},
    {"columns", translatable("The list of a recording's columns")},
    {"recordings", translatable("The list of recordings")},
    {"tunes", translatable("The list of kept tunes")},
    {"sources", translatable("The list of sources")},
    {"throttle_curve", translatable("The throttle curve")},
    {"blade_pass_thrust_fraction", translatable("The list of blade-pass pulses")},
};

bool isContinuation(char c)
{
    return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
}

/// Length in bytes of the well-formed character at the start of text, 0 when there is none
/// (The Unicode Standard, table 3-7).
std::size_t utf8Length(std::string_view text)
{
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

}  // namespace

PhraseArgument withUnit(Number value, const char* unit)
{
    const std::string_view text(unit);
    if (text.empty())
        return value;
    return text == "°" ? phrase("%1°", value) : phrase("%1 %2", value, phrase(unit));
}

Phrase rangeText(double min, double max, const char* unit)
{
    return phrase("%1 to %2", exact(min), withUnit(exact(max), unit));
}

Phrase rangeText(CountRange range)
{
    return phrase("%1 to %2", whole(range.min), whole(range.max));
}

Phrase outOfRange(const char* label, PhraseArgument value, Phrase range)
{
    return phrase("%1 is %2, allowed %3", phrase(label), std::move(value), std::move(range));
}

Phrase labelOf(std::string_view key)
{
    for (const KeyLabel& named : kKeyLabels)
        if (named.key == key)
            return phrase(named.label);
    check(false, "every text and list of the setup has a label");
    return {};
}

Phrase listLabelOf(std::string_view key)
{
    return key == "notes" ? phrase("The list of flight notes") : labelOf(key);
}

std::string shorten(std::string_view text)
{
    std::string shown;
    for (const char c : text) {
        if (shown.size() >= kLongestShown && !isContinuation(c))
            return shown + "…";
        const auto code = static_cast<unsigned char>(c);
        shown += code < 0x20 || code == 0x7F ? '?' : c;
    }
    return shown;
}

std::string quote(std::string_view text)
{
    return '"' + shorten(text) + '"';
}

std::string quotedWords(const Choice& choice)
{
    std::string words;
    for (const char* const word : choice.words)
        words += (words.empty() ? "" : ", ") + quote(word);
    return words;
}

std::string joinPath(std::string_view parent, std::string_view key)
{
    std::string path(parent);
    if (!path.empty())
        path += '.';
    return path.append(key);
}

std::string joinPath(std::string_view parent, std::size_t index)
{
    return std::string(parent).append("[").append(std::to_string(index)).append("]");
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

}  // namespace stillbay
