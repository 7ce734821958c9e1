// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <cstdio>
#include <string>

namespace stillbay::test {

/// Appends x with so many digits behind the decimal sign, whatever the environment's language. No
/// negative zero.
inline void appendNumber(std::string& text, double x, int digits, char decimal = '.')
{
    char number[40];
    std::snprintf(number, sizeof number, "%.*f", digits, x);
    std::string written = number;
    if (written.find_first_of("123456789") == std::string::npos && written.front() == '-')
        written.erase(0, 1);
    if (const std::size_t point = written.find_first_of(".,"); point != std::string::npos)
        written[point] = decimal;
    text += written;
}

}  // namespace stillbay::test
