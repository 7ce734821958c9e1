// SPDX-License-Identifier: MIT
#include "core/recording/resample_uneven.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <numbers>
#include <random>
#include <vector>

namespace stillbay {
namespace {

constexpr double kRate = 1000.0;  // [Hz] on average

// Sines up to a frequency, each with its own phase, over an offset like gravity's.
double signalAt(double time, double highest_hz)
{
    double sum = 9.81;
    for (int k = 0; k < 9; ++k) {
        const double f = highest_hz * (1.0 - 0.1093 * k);
        sum += std::cos(2.0 * std::numbers::pi * f * time + 0.7 * k * k) / (1.0 + 0.2 * k);
    }
    return sum;
}

std::vector<double> stampsWithJitter(std::size_t count, double jitter, unsigned seed)
{
    std::mt19937 random(seed);
    std::uniform_real_distribution<double> shift(-jitter, jitter);
    std::vector<double> stamps;
    for (std::size_t i = 0; i < count; ++i)
        stamps.push_back(12.5 + (static_cast<double>(i) + shift(random)) / kRate);
    return stamps;
}

// Signal over error, both as root mean squares without the offset, away from the ends.
double fidelity_db(const std::vector<double>& stamps, double highest_hz, double rate)
{
    std::vector<double> values;
    for (const double time : stamps)
        values.push_back(signalAt(time, highest_hz));
    const EvenTimes times{12.5, rate, static_cast<std::size_t>((stamps.back() - 12.5) * rate)};
    const std::array<std::span<const double>, 1> channels{values};
    const auto even = resampleUneven(stamps, channels, times);
    double signal = 0.0, error = 0.0;
    const auto margin = static_cast<std::size_t>(30 * rate / kRate);
    for (std::size_t k = margin; k + margin < times.samples; ++k) {
        const double time = times.start + static_cast<double>(k) / rate;
        const double truth = signalAt(time, highest_hz);
        signal += std::pow(truth - 9.81, 2.0);
        error += std::pow(even->front()[k] - truth, 2.0);
    }
    return 10.0 * std::log10(signal / error);
}

// Oracle: the signal in closed form. 80 dB is what is promised below 0.4 of the rate.
TEST(ResampleUneven, ABandLimitedSignalComesBackWithin80Db)
{
    for (const double highest_hz : {50.0, 200.0, 400.0})
        for (const double jitter : {0.02, 0.1, 0.3})
            for (const double rate : {1000.0, 1137.3, 2000.0}) {
                const double db = fidelity_db(stampsWithJitter(1500, jitter, 7), highest_hz, rate);
                EXPECT_GT(db, 80.0) << highest_hz << " Hz, jitter " << jitter << ", at " << rate;
            }
}

}  // namespace
}  // namespace stillbay
