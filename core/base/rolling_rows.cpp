// SPDX-License-Identifier: MIT
#include "core/base/rolling_rows.h"

#include "core/base/sinc.h"

#include <array>
#include <cmath>
#include <cstddef>

namespace stillbay {
namespace {

// jₙ(x), n = 0 … N−1, for 0 ≤ x ≤ 1: downwards by r_n = jₙ/jₙ₋₁ = x/(2n + 1 − x r_{n+1}),
// DLMF 10.51.1, from far enough that the ratio left out of the last does not count.
template <std::size_t N>
std::array<double, N> smallBessel(double x)
{
    std::array<double, N> ratio{};
    double next = 0.0;
    for (std::size_t n = N + 3; n > 0; --n) {
        next = x / (2.0 * static_cast<double>(n) + 1 - x * next);
        if (n < N)
            ratio[n] = next;
    }
    std::array<double, N> j{sinc(x)};
    for (std::size_t n = 1; n < N; ++n)
        j[n] = j[n - 1] * ratio[n];
    return j;
}

// In the Legendre series of e^{ias} and s e^{ias}, what is left is everything from P₂ on: Σ (2n+1)
// jₙ² and Σ (n jₙ₋₁ − (n+1) jₙ₊₁)²/(2n + 1). Sums of squares keep their digits where a is small.
LeftInRows seriesInRows(double a)
{
    const auto j = smallBessel<12>(a);
    LeftInRows left{.turn = 3 * j[1] * j[1]};
    for (std::size_t n = 2; n + 1 < j.size(); ++n) {
        const auto degree = static_cast<double>(n);
        const double place = degree * j[n - 1] - (degree + 1) * j[n + 1];
        left.sine += (2 * degree + 1) * j[n] * j[n];
        left.place += place * place / (2 * degree + 1);
    }
    left.turn += left.sine;
    return left;
}

// The same as the whole less P₀ and P₁.
LeftInRows closedInRows(double a)
{
    const double j0 = std::sin(a) / a, j1 = (j0 - std::cos(a)) / a, j2 = 3 * j1 / a - j0;
    const double line = j0 - 2 * j2;
    return {.sine = 1 - j0 * j0 - 3 * j1 * j1,
            .place = (1 - line * line) / 3 - j1 * j1,
            .turn = 1 - j0 * j0};
}

}  // namespace

LeftInRows leftInRows(double a)
{
    return a < 1 ? seriesInRows(a) : closedInRows(a);
}

}  // namespace stillbay
