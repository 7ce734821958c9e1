// SPDX-License-Identifier: MIT
#pragma once

#include "tests/recordings/noise.h"

#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>

namespace stillbay::test {

/// Slow and quick changes of a speed, together nothing, −1 … 1.
struct Wander {
    std::array<double, 3> frequency_hz{0.37, 0.83, 1.9}, phase{};

    explicit Wander(Noise& noise)
    {
        for (double& each : phase)
            each = noise.phase();
    }

    double at(double t) const
    {
        double sum = 0;
        for (std::size_t k = 0; k < phase.size(); ++k)
            sum += std::sin(2 * std::numbers::pi * frequency_hz[k] * t + phase[k]);
        return sum / static_cast<double>(phase.size());
    }

    /// [s] its integral from the time 0.
    double until(double t) const
    {
        double sum = 0;
        for (std::size_t k = 0; k < phase.size(); ++k) {
            const double omega = 2 * std::numbers::pi * frequency_hz[k];
            sum += (std::cos(phase[k]) - std::cos(omega * t + phase[k])) / omega;
        }
        return sum / static_cast<double>(phase.size());
    }
};

}  // namespace stillbay::test
