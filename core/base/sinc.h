// SPDX-License-Identifier: MIT
#pragma once

#include <cmath>

namespace stillbay {

/// sin(x)/x, 1 at 0.
inline double sinc(double x)
{
    return std::abs(x) < 1e-4 ? 1 - x * x / 6 : std::sin(x) / x;
}

}  // namespace stillbay
