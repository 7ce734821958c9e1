// SPDX-License-Identifier: MIT
#include "core/calibrate/decay_curve.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <vector>

namespace stillbay {
namespace {

// Two damped swings of a mode's frequency and loss factor, written out: ω₀ is |pole|, and half of
// the loss factor the damping ratio.
double swing(double t, double frequency_hz, double lossFactor, double amplitude, double phase)
{
    const double omega = 2 * std::numbers::pi * frequency_hz, damping = lossFactor / 2;
    return amplitude * std::exp(-damping * omega * t) *
           std::cos(omega * std::sqrt(1 - damping * damping) * t + phase);
}

// Oracle: the samples are such swings about an offset, and nothing else: the curve goes through
// them. An alternating sign on them, which no slow mode makes, stays beside it but for its own
// share, 1/200 of each sample at most.
TEST(DecayCurve, GoesThroughWhatItsModesMake)
{
    const std::vector<DecayingMode> modes{{.frequency_hz = 7.3, .lossFactor = 0.12},
                                          {.frequency_hz = 11.9, .lossFactor = 0.3}};
    std::vector<double> samples;
    for (int k = 0; k < 400; ++k) {
        const double t = k / 200.0;
        samples.push_back(0.7 + swing(t, 7.3, 0.12, 2.0, 0.4) + swing(t, 11.9, 0.3, -1.1, 1.3));
    }
    const std::vector<double> curve = decayCurve(samples, 200, modes);
    ASSERT_EQ(curve.size(), samples.size());
    for (std::size_t k = 0; k < curve.size(); ++k)
        EXPECT_NEAR(curve[k], samples[k], 1e-8) << k;
    std::vector<double> noisy = samples;
    for (std::size_t k = 0; k < noisy.size(); ++k)
        noisy[k] += k % 2 == 0 ? 0.1 : -0.1;
    const std::vector<double> through = decayCurve(noisy, 200, modes);
    for (std::size_t k = 0; k < curve.size(); ++k)
        EXPECT_NEAR(through[k], samples[k], 0.02) << k;
}

// Oracle: the mean, by hand.
TEST(DecayCurve, IsTheMeanWithoutModes)
{
    const std::vector<double> curve = decayCurve(std::vector{1.0, 2.0, 6.0}, 100, {});
    ASSERT_EQ(curve.size(), 3U);
    for (const double value : curve)
        EXPECT_NEAR(value, 3.0, 1e-10);
}

}  // namespace
}  // namespace stillbay
