// SPDX-License-Identifier: MIT
#include "core/recording/interpolate.h"

#include "core/base/check.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

// Kaiser, "Nonrecursive digital filter design using the I0-sinh window function" (1974): a ripple
// of A dB takes β = 0.1102 (A − 8.7) and a transition of Δω = (A − 8) / (2.285 · 2W) with W
// crossings either side. For A = 96 and a transition of a fifth of the band, π/5, W = 31.
constexpr double kRipple_db = 96;
constexpr double kBeta = 0.1102 * (kRipple_db - 8.7);
constexpr double kCrossings = 32;
// Between rows of the table the weights are interpolated in a straight line, which misses
// π²/12/512² = 3e-6 of the highest tone.
constexpr double kPhases = 512;

double besselI0(double x)
{
    double term = 1, sum = 1;
    for (int k = 1; term > 1e-17 * sum; ++k) {
        term *= x * x / (4.0 * k * k);
        sum += term;
    }
    return sum;
}

double kernel(double t, double cutoff, double half)
{
    const double r = t / half;
    if (std::abs(r) >= 1)
        return 0;
    const double angle = std::numbers::pi * cutoff * t;
    const double sinc = std::abs(angle) < 1e-9 ? 1 : std::sin(angle) / angle;
    return cutoff * sinc * besselI0(kBeta * std::sqrt(1 - r * r)) / besselI0(kBeta);
}

// Continued by reflection through the value at the end, as far as that reaches.
double continued(std::span<const double> x, std::ptrdiff_t n)
{
    const auto last = static_cast<std::ptrdiff_t>(x.size()) - 1;
    const auto at = [&](std::ptrdiff_t k) {
        return x[static_cast<std::size_t>(std::clamp<std::ptrdiff_t>(k, 0, last))];
    };
    if (n < 0)
        return 2 * at(0) - at(-n);
    return n > last ? 2 * at(last) - at(2 * last - n) : at(n);
}

}  // namespace

Interpolator::Interpolator(double cutoff)
{
    check(cutoff > 0 && cutoff <= 1, "interpolate: cutoff");
    const double half = kCrossings / cutoff;
    m_half = static_cast<std::size_t>(std::ceil(half));
    m_phases = static_cast<std::size_t>(std::ceil(std::max(kPhases * cutoff, 8.0)));
    const std::size_t taps = 2 * m_half;
    m_table.resize((m_phases + 1) * taps);
    for (std::size_t phase = 0; phase <= m_phases; ++phase) {
        double* const row = m_table.data() + phase * taps;
        double sum = 0;
        for (std::size_t k = 0; k < taps; ++k) {
            const double t = static_cast<double>(k) - static_cast<double>(m_half) + 1 -
                             static_cast<double>(phase) / static_cast<double>(m_phases);
            sum += row[k] = kernel(t, cutoff, half);
        }
        for (std::size_t k = 0; k < taps; ++k)
            row[k] /= sum;  // a constant stays what it is
    }
}

double Interpolator::at(std::span<const double> x, double position) const
{
    check(!x.empty(), "interpolate: an empty series");
    const double place = std::clamp(position, 0.0, static_cast<double>(x.size() - 1));
    const double below = std::floor(place);
    const double phase = (place - below) * static_cast<double>(m_phases);
    const auto row = std::min(static_cast<std::size_t>(phase), m_phases - 1);
    const double share = phase - static_cast<double>(row);
    const std::size_t taps = 2 * m_half;
    const double* const lower = m_table.data() + row * taps;
    const double* const upper = lower + taps;
    const auto first = static_cast<std::ptrdiff_t>(below) - static_cast<std::ptrdiff_t>(m_half) + 1;
    double sums[2] = {};
    if (first >= 0 && static_cast<std::size_t>(first) + taps <= x.size()) {
        const double* const part = x.data() + first;
        for (std::size_t k = 0; k < taps; ++k) {
            sums[0] += lower[k] * part[k];
            sums[1] += upper[k] * part[k];
        }
    } else {
        for (std::size_t k = 0; k < taps; ++k) {
            const double value = continued(x, first + static_cast<std::ptrdiff_t>(k));
            sums[0] += lower[k] * value;
            sums[1] += upper[k] * value;
        }
    }
    return (1 - share) * sums[0] + share * sums[1];
}

std::vector<double> resampled(std::span<const double> x, double rate, double newRate)
{
    check(rate > 0 && newRate > 0, "interpolate: rate");
    if (x.empty())
        return {};
    const Interpolator interpolator(std::min(1.0, newRate / rate));
    const double step = rate / newRate;
    // A last sample may lie beyond the end by rounding only.
    const auto count =
        static_cast<std::size_t>(std::floor(static_cast<double>(x.size() - 1) / step + 1e-9)) + 1;
    std::vector<double> result(count);
    for (std::size_t n = 0; n < count; ++n)
        result[n] = interpolator.at(x, static_cast<double>(n) * step);
    return result;
}

}  // namespace stillbay
