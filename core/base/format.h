// SPDX-License-Identifier: MIT
#pragma once

#include <cstdio>
#include <string>

namespace stillbay {

/// printf into a string, C locale numbers.
template <class... Args>
[[gnu::format(printf, 1, 0)]] std::string formatted(const char* format, Args... args)
{
    const int size = std::snprintf(nullptr, 0, format, args...);
    std::string text(static_cast<std::size_t>(size), '\0');
    std::snprintf(text.data(), text.size() + 1, format, args...);
    return text;
}

/// Shortest decimals that read back to the same double: "180", "0.7", "1e+300", "nan".
std::string toText(double value);

}  // namespace stillbay
