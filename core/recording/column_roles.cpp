// SPDX-License-Identifier: MIT
#include "core/recording/column_roles.h"

#include "core/base/check.h"
#include "core/base/units.h"

#include <algorithm>
#include <array>
#include <initializer_list>
#include <utility>
#include <vector>

namespace stillbay {
namespace {

constexpr std::array kAccelerationUnits{UnitChoice{"m/s²", 1.0}, UnitChoice{"g", kGravity},
                                        UnitChoice{"mg", 1e-3 * kGravity},
                                        UnitChoice{"mm/s²", 1e-3}, UnitChoice{"cm/s²", 1e-2}};
constexpr std::array kAngularRateUnits{UnitChoice{"rad/s", 1.0}, UnitChoice{"°/s", unit::deg},
                                       UnitChoice{"m°/s", 1e-3 * unit::deg}};
constexpr std::array kSoundUnits{UnitChoice{"of full scale", 1.0}};
constexpr std::array kThrottleUnits{UnitChoice{"0…1", 1.0}, UnitChoice{"%", 1e-2},
                                    UnitChoice{"0…1000", 1e-3}};
constexpr std::array kRotorSpeedUnits{UnitChoice{"1/s", 1.0}, UnitChoice{"1/min", unit::rpm}};
constexpr std::array kOtherUnits{UnitChoice{"", 1.0}};
constexpr std::array kTimeUnits{UnitChoice{"s", 1.0}, UnitChoice{"ms", 1e-3},
                                UnitChoice{"µs", 1e-6}, UnitChoice{"ns", 1e-9},
                                UnitChoice{"min", 60.0}};

/// One way of writing a unit, as plainUnit() leaves it.
struct WrittenUnit {
    std::string_view plain;
    Quantity quantity;
    double scale;
};

constexpr std::array kWrittenUnits{
    WrittenUnit{"m/s2", Quantity::Acceleration, 1.0},
    WrittenUnit{"m/s/s", Quantity::Acceleration, 1.0},
    WrittenUnit{"m/sec2", Quantity::Acceleration, 1.0},
    WrittenUnit{"ms-2", Quantity::Acceleration, 1.0},
    WrittenUnit{"mps2", Quantity::Acceleration, 1.0},
    WrittenUnit{"mm/s2", Quantity::Acceleration, 1e-3},
    WrittenUnit{"cm/s2", Quantity::Acceleration, 1e-2},
    WrittenUnit{"g", Quantity::Acceleration, kGravity},
    WrittenUnit{"gs", Quantity::Acceleration, kGravity},
    WrittenUnit{"gn", Quantity::Acceleration, kGravity},
    WrittenUnit{"g0", Quantity::Acceleration, kGravity},
    WrittenUnit{"mg", Quantity::Acceleration, 1e-3 * kGravity},
    WrittenUnit{"milli-g", Quantity::Acceleration, 1e-3 * kGravity},
    WrittenUnit{"rad/s", Quantity::AngularRate, 1.0},
    WrittenUnit{"rad/sec", Quantity::AngularRate, 1.0},
    WrittenUnit{"rads-1", Quantity::AngularRate, 1.0},
    WrittenUnit{"rads", Quantity::AngularRate, 1.0},
    WrittenUnit{"deg/s", Quantity::AngularRate, unit::deg},
    WrittenUnit{"deg/sec", Quantity::AngularRate, unit::deg},
    WrittenUnit{"degs-1", Quantity::AngularRate, unit::deg},
    WrittenUnit{"degs", Quantity::AngularRate, unit::deg},
    WrittenUnit{"dps", Quantity::AngularRate, unit::deg},
    WrittenUnit{"grad/s", Quantity::AngularRate, unit::deg},
    WrittenUnit{"mdeg/s", Quantity::AngularRate, 1e-3 * unit::deg},
    WrittenUnit{"mdps", Quantity::AngularRate, 1e-3 * unit::deg},
    WrittenUnit{"rpm", Quantity::RotorSpeed, unit::rpm},
    WrittenUnit{"1/min", Quantity::RotorSpeed, unit::rpm},
    WrittenUnit{"u/min", Quantity::RotorSpeed, unit::rpm},
    WrittenUnit{"r/min", Quantity::RotorSpeed, unit::rpm},
    WrittenUnit{"rev/min", Quantity::RotorSpeed, unit::rpm},
    WrittenUnit{"min-1", Quantity::RotorSpeed, unit::rpm},
    WrittenUnit{"rev/s", Quantity::RotorSpeed, 1.0},
    WrittenUnit{"u/s", Quantity::RotorSpeed, 1.0},
    WrittenUnit{"rps", Quantity::RotorSpeed, 1.0},
};

constexpr std::array<std::pair<std::string_view, double>, 20> kWrittenTimes{{
    {"s", 1.0},       {"sec", 1.0},     {"secs", 1.0},          {"second", 1.0},
    {"seconds", 1.0}, {"sek", 1.0},     {"sekunden", 1.0},      {"ms", 1e-3},
    {"msec", 1e-3},   {"millis", 1e-3}, {"milliseconds", 1e-3}, {"us", 1e-6},
    {"usec", 1e-6},   {"micros", 1e-6}, {"microseconds", 1e-6}, {"ns", 1e-9},
    {"nsec", 1e-9},   {"nanos", 1e-9},  {"nanoseconds", 1e-9},  {"min", 60.0},
}};

// Signs beyond ASCII that units are written with, and what stands for them here.
constexpr std::array<std::pair<std::string_view, std::string_view>, 12> kUnitSigns{{
    {"\xC2\xB2", "2"},      // ²
    {"\xC2\xB9", "1"},      // ¹
    {"\xE2\x81\xBB", "-"},  // ⁻
    {"\xE2\x88\x92", "-"},  // −
    {"\xC2\xB0", "deg"},    // °
    {"\xC2\xBA", "deg"},    // º
    {"\xC2\xB5", "u"},      // µ
    {"\xCE\xBC", "u"},      // μ
    {"\xC2\xB7", ""},       // ·
    {"\xE2\x8B\x85", ""},   // ⋅
    {"\xC2\xA0", ""},       // no-break space
    {"\xE2\x80\xAF", ""},   // narrow one
}};

std::string loweredAscii(std::string_view text)
{
    std::string lower(text);
    for (char& c : lower)
        if (c >= 'A' && c <= 'Z')
            c = static_cast<char>(c - 'A' + 'a');
    return lower;
}

// "m / s^2" and "m/s²" alike.
std::string plainUnit(std::string_view unit)
{
    std::string plain = loweredAscii(unit);
    for (const auto& [sign, instead] : kUnitSigns)
        for (std::size_t at = plain.find(sign); at != std::string::npos; at = plain.find(sign, at))
            plain.replace(at, sign.size(), instead);
    std::erase_if(plain, [](char c) {
        return c == ' ' || c == '^' || c == '*' || c == '(' || c == ')' || c == '[' || c == ']' ||
               c == '.';
    });
    return plain;
}

std::string_view withoutSpaces(std::string_view text)
{
    while (!text.empty() && text.front() == ' ')
        text.remove_prefix(1);
    while (!text.empty() && text.back() == ' ')
        text.remove_suffix(1);
    return text;
}

bool isLetter(char c)
{
    return (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80;
}

// "accel_x[0]" and "AccelX" give accel, x; figures are left out.
std::vector<std::string> wordsOf(std::string_view name)
{
    std::vector<std::string> words(1);
    char before = ' ';
    for (const char c : name) {
        const bool isCapital = c >= 'A' && c <= 'Z';
        const char lower = isCapital ? static_cast<char>(c - 'A' + 'a') : c;
        const bool isHump = isCapital && before >= 'a' && before <= 'z';
        if ((!isLetter(lower) || isHump) && !words.back().empty())
            words.emplace_back();
        if (isLetter(lower))
            words.back() += lower;
        before = c;
    }
    if (words.back().empty())
        words.pop_back();
    return words;
}

bool isOneOf(const std::string& word, std::initializer_list<std::string_view> list)
{
    return std::find(list.begin(), list.end(), word) != list.end();
}

bool beginsAny(const std::vector<std::string>& words, std::initializer_list<std::string_view> list)
{
    return std::any_of(words.begin(), words.end(), [&](const std::string& word) {
        return std::any_of(list.begin(), list.end(), [&](std::string_view beginning) {
            return std::string_view(word).starts_with(beginning);
        });
    });
}

std::string joined(const std::vector<std::string>& words)
{
    std::string all;
    for (const std::string& word : words)
        all += word;
    return all;
}

bool isKnownUnit(std::string_view unit)
{
    return secondsOf(unit) || meaningOfUnit(unit, {}) || plainUnit(unit) == "%";
}

}  // namespace

std::span<const UnitChoice> unitsOf(Quantity quantity)
{
    switch (quantity) {
        case Quantity::Acceleration:
            return kAccelerationUnits;
        case Quantity::AngularRate:
            return kAngularRateUnits;
        case Quantity::Sound:
            return kSoundUnits;
        case Quantity::Throttle:
            return kThrottleUnits;
        case Quantity::RotorSpeed:
            return kRotorSpeedUnits;
        case Quantity::Other:
            break;
    }
    return kOtherUnits;
}

std::span<const UnitChoice> unitsOfTime()
{
    return kTimeUnits;
}

void setUnit(ColumnPlan& column, Quantity quantity, std::string_view unit)
{
    const auto units = unitsOf(quantity);
    const auto found = std::find_if(units.begin(), units.end(),
                                    [&](const UnitChoice& choice) { return choice.unit == unit; });
    check(found != units.end(), "a unit of that quantity");
    column.quantity = quantity;
    column.unit = found->unit;
    column.scale = found->scale;
    column.isUnitGuessed = false;
}

ColumnHeading columnHeading(std::string_view heading)
{
    heading = withoutSpaces(heading);
    for (const auto& [open, close] : {std::pair{'(', ')'}, std::pair{'[', ']'}}) {
        const std::size_t at = heading.rfind(open);
        if (!heading.ends_with(close) || at == std::string_view::npos)
            continue;
        const std::string_view unit = heading.substr(at + 1, heading.size() - at - 2);
        if (isKnownUnit(unit))
            return {std::string(withoutSpaces(heading.substr(0, at))), std::string(unit)};
    }
    for (const std::string_view sign : {", ", " in ", "_", " "}) {
        const std::size_t at = heading.rfind(sign);
        if (at == std::string_view::npos || at == 0)
            continue;
        const std::string_view unit = heading.substr(at + sign.size());
        if (isKnownUnit(unit))
            return {std::string(heading), std::string(unit)};
    }
    if (isKnownUnit(heading) && !heading.empty() && loweredAscii(heading) != "g")
        return {std::string(heading), std::string(heading)};
    return {std::string(heading), {}};
}

std::optional<UnitMeaning> meaningOfUnit(std::string_view unit, std::string_view name)
{
    const std::string plain = plainUnit(unit);
    const Quantity named = quantityOfName(name);
    if (plain == "%" && named == Quantity::Throttle)
        return UnitMeaning{Quantity::Throttle, 1e-2};
    if ((plain == "hz" || plain == "1/s") && named == Quantity::RotorSpeed)
        return UnitMeaning{Quantity::RotorSpeed, 1.0};
    const auto found =
        std::find_if(kWrittenUnits.begin(), kWrittenUnits.end(),
                     [&](const WrittenUnit& written) { return written.plain == plain; });
    if (found == kWrittenUnits.end())
        return std::nullopt;
    const bool isGram = (plain == "g" || plain == "mg") &&
                        beginsAny(wordsOf(name), {"thrust", "schub", "mass", "weight", "gewicht",
                                                  "load", "force", "kraft"});
    if (isGram)
        return std::nullopt;
    return UnitMeaning{found->quantity, found->scale};
}

std::optional<double> secondsOf(std::string_view unit)
{
    const std::string plain = plainUnit(unit);
    for (const auto& [written, seconds] : kWrittenTimes)
        if (written == plain)
            return seconds;
    return std::nullopt;
}

Quantity quantityOfName(std::string_view name)
{
    const std::vector<std::string> words = wordsOf(name);
    const std::string whole = joined(words);
    if (beginsAny(words, {"acc", "beschl"}) || isOneOf(whole, {"ax", "ay", "az"}))
        return Quantity::Acceleration;
    if (beginsAny(words, {"gyr", "angular", "angvel", "omega", "drehrat", "winkelg"}) ||
        isOneOf(whole, {"gx", "gy", "gz", "wx", "wy", "wz"}))
        return Quantity::AngularRate;
    if (beginsAny(words, {"rpm", "drehzahl", "rotorspeed", "revs"}) ||
        isOneOf(whole, {"speed", "rotorspeed", "motorspeed"}))
        return Quantity::RotorSpeed;
    if (beginsAny(words, {"throttle", "gas", "stick", "duty"}) || isOneOf(whole, {"thr"}))
        return Quantity::Throttle;
    if (beginsAny(words, {"sound", "mic", "mikro", "audio", "schall"}))
        return Quantity::Sound;
    return Quantity::Other;
}

bool isNameOfTime(std::string_view name)
{
    const std::vector<std::string> words = wordsOf(name);
    return beginsAny(words, {"time", "zeit", "stamp", "elapsed", "uhrzeit", "sekunde", "second"}) ||
           (!words.empty() && isOneOf(words.front(), {"t", "ts", "s", "ms", "us", "µs", "ns"}) &&
            quantityOfName(name) == Quantity::Other);
}

bool isNameOfCount(std::string_view name)
{
    const std::vector<std::string> words = wordsOf(name);
    return name == "#" || (!words.empty() &&
                           isOneOf(words.front(), {"index", "idx", "n", "nr", "no", "count",
                                                   "counter", "sample", "samples", "row", "zeile",
                                                   "nummer", "number", "frame", "iteration"}));
}

}  // namespace stillbay
