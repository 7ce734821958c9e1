// SPDX-License-Identifier: MIT
#include "core/clip/ghost_lines.h"

#include <gtest/gtest.h>

#include <cmath>
#include <complex>
#include <numbers>

namespace stillbay {
namespace {

FilmLine lineOf(double f_hz, double across_px)
{
    return {.frequency_hz = f_hz,
            .uncertainty_hz = 0.002,
            .across_px = across_px,
            .wobble_px = 0.8 * across_px};
}

std::vector<double> frequenciesLeft(std::vector<FilmLine> lines)
{
    takeGhosts(lines, 30.0, 0.25, 1080.0);
    std::vector<double> left;
    for (const FilmLine& line : lines)
        left.push_back(line.frequency_hz);
    return left;
}

// Oracle: brute force: two sines of 73.4 and 131 Hz through a characteristic that leaves a part of
// what is small out, as a coder does; what a Fourier sum over 4 s finds at each frequency. Of what
// it makes all that is above 0.01 px is told as a ghost, and both sines stay.
TEST(GhostLines, AreWhatABentCharacteristicMakes)
{
    using Complex = std::complex<double>;
    constexpr double rate = 2000, seconds = 5, turn = 2 * std::numbers::pi;
    std::vector<double> filmed;
    for (int n = 0; n < rate * seconds; ++n) {
        const double t = n / rate;
        const double x = 0.9 * std::cos(turn * 73.4 * t) + 0.7 * std::cos(turn * 131.0 * t + 1);
        filmed.push_back(x - 0.2 * std::tanh(x / 0.3));
    }
    std::vector<FilmLine> lines;
    for (double f_hz = 1; f_hz < 400; f_hz += 0.2) {
        Complex sum = 0, now = std::sqrt(2.0) / (rate * seconds);
        const Complex step = std::polar(1.0, -turn * f_hz / rate);
        for (const double value : filmed) {
            sum += value * now;
            now *= step;
        }
        if (std::abs(sum) > 0.01)
            lines.push_back(lineOf(f_hz, std::abs(sum)));
    }
    ASSERT_GE(lines.size(), 5U);
    const FilmDistortion distortion = takeGhosts(lines, 30.0, 1 / seconds, 1080.0);
    ASSERT_EQ(lines.size(), 2U);
    EXPECT_NEAR(lines[0].frequency_hz, 73.4, 1e-9);
    EXPECT_NEAR(lines[1].frequency_hz, 131.0, 1e-9);
    EXPECT_GT(distortion.share, 0.01);
    EXPECT_GT(distortion.ghost_px, 0.01);
}

// Oracle: the rule's own words: true lines at such places stay where they are too strong for a
// ghost, and faint ones where no combination lies. 4 s: a ghost's place is known to 0.04 Hz.
TEST(GhostLines, AreNotTrueLines)
{
    using Lines = std::vector<double>;
    const FilmLine first = lineOf(73.4, 1.0);
    EXPECT_EQ(frequenciesLeft({first, lineOf(220.2, 0.02)}), Lines({73.4}));
    EXPECT_EQ(frequenciesLeft({first, lineOf(220.2, 0.08)}), Lines({73.4, 220.2}));
    EXPECT_EQ(frequenciesLeft({first, lineOf(146.8, 0.02)}), Lines({73.4, 146.8}));
    EXPECT_EQ(frequenciesLeft({first, lineOf(103.4, 0.1)}), Lines({73.4}));  // beats alike
    EXPECT_EQ(frequenciesLeft({first, lineOf(103.5, 0.1)}), Lines({73.4, 103.5}));
    EXPECT_EQ(frequenciesLeft({first, lineOf(75.6, 0.3)}), Lines({73.4, 75.6}));  // a pair
    EXPECT_EQ(frequenciesLeft({first, lineOf(76.4, 0.1)}), Lines({73.4, 76.4}));
    EXPECT_EQ(frequenciesLeft({first, lineOf(76.4, 0.1), lineOf(70.4, 0.09)}), Lines({73.4}));
    // Once a turn, the blade pass of two blades, and twice that: 2a + b, too, and true.
    EXPECT_EQ(frequenciesLeft({first, lineOf(146.8, 0.5), lineOf(293.6, 0.08)}),
              Lines({73.4, 146.8, 293.6}));
    // Of a parent twice as strong twice as much may be one.
    EXPECT_EQ(frequenciesLeft({lineOf(73.4, 2.0), lineOf(76.4, 0.3), lineOf(70.4, 0.29)}),
              Lines({73.4}));
    EXPECT_EQ(frequenciesLeft({lineOf(73.4, 0.5), lineOf(76.4, 0.12), lineOf(70.4, 0.11)}),
              Lines({73.4, 76.4, 70.4}));
    std::vector<FilmLine> none;
    EXPECT_EQ(takeGhosts(none, 30.0, 0.25, 1080.0).share, 0);
}

// Oracle: by hand: shares of the parent's motion, which is that of the picture's upper edge where
// it turns: 0.004 rad of half of 1080 px are 2.16 px.
TEST(GhostLines, TellTheirShare)
{
    const auto distortionOf = [](std::vector<FilmLine> lines) {
        return takeGhosts(lines, 30.0, 0.25, 1080.0);
    };
    const FilmLine turning{.frequency_hz = 73.4, .uncertainty_hz = 0.002, .roll_rad = 0.004};
    FilmDistortion found = distortionOf({turning, lineOf(103.4, 0.3)});  // beats alike
    EXPECT_NEAR(found.share, 0.3 / 2.16, 1e-9);
    EXPECT_NEAR(found.ghost_px, 0.24, 1e-9);
    found = distortionOf({lineOf(73.4, 2.0), lineOf(74.4, 0.1)});  // a sideband
    EXPECT_NEAR(found.share, 0.05, 1e-9);
    found = distortionOf({lineOf(73.4, 2.0), lineOf(74.4, 0.1), lineOf(103.4, 0.4)});
    EXPECT_NEAR(found.share, 0.2, 1e-9);
    EXPECT_NEAR(found.ghost_px, 0.32, 1e-9);
}

}  // namespace
}  // namespace stillbay
