// SPDX-License-Identifier: MIT
#include "core/setup/wording.h"

#include "core/base/check.h"
#include "core/base/printable.h"

#include <algorithm>
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
    while (!text.empty()) {
        if (shown.size() >= kLongestShown)
            return shown + "…";
        const std::size_t length = std::max<std::size_t>(1, utf8Length(text));
        shown += printable(text.substr(0, length));
        text.remove_prefix(length);
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

}  // namespace stillbay
