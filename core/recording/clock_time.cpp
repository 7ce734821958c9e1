// SPDX-License-Identifier: MIT
#include "core/recording/clock_time.h"

#include <charconv>
#include <chrono>

namespace stillbay {
namespace {

// Takes so many digits off the front.
std::optional<int> takeDigits(std::string_view& text, std::size_t count)
{
    int value = 0;
    if (text.size() < count)
        return std::nullopt;
    const auto [stop, code] = std::from_chars(text.data(), text.data() + count, value);
    if (code != std::errc() || stop != text.data() + count || value < 0)
        return std::nullopt;
    text.remove_prefix(count);
    return value;
}

bool take(std::string_view& text, std::string_view anyOf)
{
    if (text.empty() || anyOf.find(text.front()) == std::string_view::npos)
        return false;
    text.remove_prefix(1);
    return true;
}

// [s] from 1970 to the date's midnight, and the text behind it.
std::optional<double> takeDate(std::string_view& text)
{
    std::string_view rest = text;
    const auto year = takeDigits(rest, 4);
    if (!year || !take(rest, "-/"))
        return std::nullopt;
    const auto month = takeDigits(rest, 2);
    if (!month || !take(rest, "-/"))
        return std::nullopt;
    const auto day = takeDigits(rest, 2);
    if (!day || !take(rest, "T "))
        return std::nullopt;
    const std::chrono::year_month_day date{std::chrono::year(*year),
                                           std::chrono::month(static_cast<unsigned>(*month)),
                                           std::chrono::day(static_cast<unsigned>(*day))};
    if (!date.ok())
        return std::nullopt;
    text = rest;
    const std::chrono::seconds since = std::chrono::sys_days(date).time_since_epoch();
    return static_cast<double>(since.count());
}

}  // namespace

std::optional<double> clockTime(std::string_view cell)
{
    const double date = takeDate(cell).value_or(0.0);
    const auto hour = takeDigits(cell, 2);
    if (!hour || *hour > 23 || !take(cell, ":"))
        return std::nullopt;
    const auto minute = takeDigits(cell, 2);
    if (!minute || *minute > 59 || !take(cell, ":"))
        return std::nullopt;
    const auto second = takeDigits(cell, 2);
    if (!second || *second > 60)
        return std::nullopt;
    double fraction = 0.0;
    if (take(cell, ".,")) {
        double place = 0.1;
        for (; !cell.empty() && cell.front() >= '0' && cell.front() <= '9'; place *= 0.1) {
            fraction += place * (cell.front() - '0');
            cell.remove_prefix(1);
        }
    }
    return date + 3600.0 * *hour + 60.0 * *minute + *second + fraction;
}

}  // namespace stillbay
