// SPDX-License-Identifier: MIT
#pragma once

#include <clocale>
#include <cstdio>
#include <string>

namespace stillbay {

/// While one lives, the C library on this thread writes numbers as in the C locale, whatever the
/// desktop's language has set for the process (a window does, with its application).
class PlainNumbers final {
public:
    PlainNumbers();
    ~PlainNumbers();
    PlainNumbers(const PlainNumbers&) = delete;
    PlainNumbers& operator=(const PlainNumbers&) = delete;

private:
    locale_t m_before;
};

/// printf into a string, with a decimal point in every language.
template <class... Args>
[[gnu::format(printf, 1, 0)]] std::string formatted(const char* format, Args... args)
{
    const PlainNumbers plain;
    const int size = std::snprintf(nullptr, 0, format, args...);
    std::string text(static_cast<std::size_t>(size), '\0');
    std::snprintf(text.data(), text.size() + 1, format, args...);
    return text;
}

/// Shortest decimals that read back to the same double: "180", "0.7", "1e+300", "nan".
std::string toText(double value);

}  // namespace stillbay
