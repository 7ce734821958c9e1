// SPDX-License-Identifier: MIT
#pragma once

#include <cmath>
#include <cstdint>
#include <numbers>
#include <random>

namespace stillbay::test {

/// Numbers that look random and are the same on every machine, which the library's own
/// distributions do not promise.
class Noise {
public:
    explicit Noise(std::uint64_t seed) : m_bits(seed) {}

    /// Above 0, below 1.
    double even() { return (static_cast<double>(m_bits() >> 11) + 0.5) * 0x1p-53; }

    /// [rad] anywhere on the circle.
    double phase() { return 2 * std::numbers::pi * even(); }

    /// Of mean 0 and standard deviation 1, by Box and Muller.
    double normal()
    {
        const double radius = std::sqrt(-2 * std::log(even()));
        return radius * std::cos(phase());
    }

private:
    std::mt19937_64 m_bits;
};

}  // namespace stillbay::test
