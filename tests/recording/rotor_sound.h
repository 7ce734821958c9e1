// SPDX-License-Identifier: MIT
#pragma once

#include "tests/recording/noise.h"

#include <cmath>
#include <functional>
#include <numbers>
#include <vector>

namespace stillbay {

/// What rotors of a known speed sound like: teeth of a comb for each motor, and noise.
struct RotorSound {
    struct Tooth {
        double order, amplitude;
    };

    std::function<double(double t)> speed;  // [rev/s]
    std::vector<Tooth> teeth;
    std::vector<double> motors{1.0};  // times the speed, each with phases of its own
    double noisiness = 0.5;           // even, this wide

    std::vector<double> samples(double rate, double duration) const
    {
        std::vector<double> x = noise(5, static_cast<std::size_t>(rate * duration));
        std::vector<double> turns(motors.size());
        for (std::size_t n = 0; n < x.size(); ++n) {
            x[n] *= noisiness;
            const double now = speed((static_cast<double>(n) + 0.5) / rate) / rate;
            for (std::size_t motor = 0; motor < motors.size(); ++motor) {
                const double share = 1 / std::sqrt(static_cast<double>(motors.size()));
                const double odd = 1.7 * static_cast<double>(motor);
                for (const Tooth& tooth : teeth)
                    x[n] += share * tooth.amplitude *
                            std::sin(2 * std::numbers::pi * tooth.order * turns[motor] + odd +
                                     0.9 * tooth.order);
                turns[motor] += motors[motor] * now;
            }
        }
        return x;
    }
};

}  // namespace stillbay
