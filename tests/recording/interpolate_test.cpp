// SPDX-License-Identifier: MIT
#include "core/recording/interpolate.h"

#include "tests/recording/noise.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

// A band-limited signal in closed form: tones from 0 up to a share of half the rate, with an
// offset. t in samples.
struct Tones {
    explicit Tones(double highest)
    {
        const std::vector<double> random = noise(11, 90);
        for (std::size_t k = 0; k < 30; ++k)
            tones.push_back({highest * (static_cast<double>(k) + 0.5 + 0.4 * random[3 * k]) / 30,
                             1 + random[3 * k + 1], 7 * random[3 * k + 2]});
        tones.push_back({highest, 1, 0.3});
    }

    double at(double t) const
    {
        double sum = 3;
        for (const auto& [f, amplitude, phase] : tones)
            sum += amplitude * std::sin(std::numbers::pi * f * t + phase);
        return sum;
    }

    std::vector<double> sampled(std::size_t count) const
    {
        std::vector<double> x(count);
        for (std::size_t n = 0; n < count; ++n)
            x[n] = at(static_cast<double>(n));
        return x;
    }

    double rms() const
    {
        double squares = 0;
        for (const auto& tone : tones)
            squares += tone.amplitude * tone.amplitude / 2;
        return std::sqrt(squares);
    }

    struct Tone {
        double f, amplitude, phase;
    };
    std::vector<Tone> tones;
};

// Oracle: closed form, a sum of tones up to nine tenths of half the rate, between its samples.
// 80 dB is what is promised.
TEST(Interpolate, IsCloserThan80Decibels)
{
    const Tones signal(0.9);
    const std::vector<double> x = signal.sampled(700);
    const Interpolator interpolator;
    double squares = 0, count = 0;
    for (double t = 80; t < 620; t += 0.3137, ++count)
        squares += std::pow(interpolator.at(x, t) - signal.at(t), 2);
    EXPECT_LT(20 * std::log10(std::sqrt(squares / count) / signal.rms()), -80);
}

// Oracle: closed form. To a lower rate: what it can hold stays to 80 dB, and a tone that would fold
// back into its lower nine tenths leaves nothing of 80 dB; once to an odd ratio, once far down.
TEST(Interpolate, TakesOutWhatALowerRateCannotHold)
{
    for (const double ratio : {0.731, 0.11}) {
        const Tones signal(0.9 * ratio);
        std::vector<double> x = signal.sampled(9000);
        for (std::size_t n = 0; n < x.size(); ++n)
            x[n] += 5 * std::sin(std::numbers::pi * 1.12 * ratio * static_cast<double>(n));
        const std::vector<double> y = resampled(x, 1000, 1000 * ratio);
        EXPECT_EQ(y.size(), static_cast<std::size_t>(8999 * ratio) + 1);
        double squares = 0, count = 0;
        for (std::size_t n = 60; n + 60 < y.size(); ++n, ++count)
            squares += std::pow(y[n] - signal.at(static_cast<double>(n) / ratio), 2);
        EXPECT_LT(20 * std::log10(std::sqrt(squares / count) / signal.rms()), -80) << ratio;
    }
}

// Oracle: a straight line is what its reflection through the end's value continues; a kernel whose
// weights add up to 1 and are the same both ways keeps it, to the ripple of 96 dB over its steps.
TEST(Interpolate, KeepsALineToItsEnds)
{
    std::vector<double> x(100);
    for (std::size_t n = 0; n < x.size(); ++n)
        x[n] = 2 + 0.01 * static_cast<double>(n);
    const Interpolator interpolator;
    for (const double t : {0.0, 0.4, 31.7, 98.9, 99.0})
        EXPECT_NEAR(interpolator.at(x, t), 2 + 0.01 * t, 1e-5) << t;
    EXPECT_NEAR(interpolator.at(x, -3), 2, 1e-5);
    EXPECT_NEAR(interpolator.at(x, 300), 2.99, 1e-5);
}

}  // namespace
}  // namespace stillbay
