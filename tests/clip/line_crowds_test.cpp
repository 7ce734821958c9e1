// SPDX-License-Identifier: MIT
#include "core/clip/line_crowds.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stillbay {
namespace {

FilmLine lineAt(double f_hz, double size)
{
    return {.frequency_hz = f_hz,
            .uncertainty_hz = 0.001,
            .across_px = 2 * size,
            .up_px = 3 * size,
            .roll_rad = 0.01 * size,
            .wobble_px = size,
            .wobbleUncertainty_px = 0.1 * size,
            .frameShake_px = 0.5 * size};
}

// Oracle: by hand: powers of 9, 16 and 144 are 169 in all, at 99, 100 and 101 Hz: their mean lies
// 135/169 above 100 Hz, their rms about it is √(153/169 − (135/169)²), and a mean of three is known
// to that over √3. What beats against 30 frames a second as 101 Hz does moves up and down with it,
// what is as far below a multiple moves against it.
TEST(LineCrowds, AreOneLineThatWanders)
{
    FilmLine strongest = lineAt(101, 12);
    strongest.aliases_hz = {131, 109, 41, 19};
    const std::vector<FilmLine> lines =
        withCrowdsMerged({lineAt(99, 3), strongest, lineAt(100, 4)}, 1.2, 30);
    ASSERT_EQ(lines.size(), 1U);
    const FilmLine& line = lines[0];
    EXPECT_NEAR(line.frequency_hz, 100 + 135.0 / 169, 1e-9);
    const double wander_hz = std::sqrt(153.0 / 169 - std::pow(135.0 / 169, 2));
    EXPECT_NEAR(line.wander_hz, wander_hz, 1e-9);
    EXPECT_NEAR(line.uncertainty_hz, wander_hz / std::sqrt(3.0), 1e-9);
    EXPECT_NEAR(line.wobble_px, 13, 1e-9);
    EXPECT_NEAR(line.across_px, 26, 1e-9);
    EXPECT_NEAR(line.up_px, 39, 1e-9);
    EXPECT_NEAR(line.roll_rad, 0.13, 1e-9);
    EXPECT_NEAR(line.wobbleUncertainty_px, 1.3, 1e-9);
    EXPECT_NEAR(line.frameShake_px, 6.5, 1e-9);
    const double down_hz = 1 - 135.0 / 169;
    ASSERT_EQ(line.aliases_hz.size(), 4U);
    EXPECT_NEAR(line.aliases_hz[0], 131 - down_hz, 1e-9);
    EXPECT_NEAR(line.aliases_hz[1], 109 + down_hz, 1e-9);
    EXPECT_NEAR(line.aliases_hz[2], 41 - down_hz, 1e-9);
    EXPECT_NEAR(line.aliases_hz[3], 19 + down_hz, 1e-9);
}

// Oracle: the header's words: two are no crowd, and what lies beyond the reach is none of it.
TEST(LineCrowds, AreThreeOrMoreWithinReach)
{
    const auto merged = [](std::vector<FilmLine> lines) {
        std::vector<double> f_hz;
        for (const FilmLine& line : withCrowdsMerged(std::move(lines), 1.0, 30))
            f_hz.push_back(line.frequency_hz);
        return f_hz;
    };
    using Frequencies = std::vector<double>;
    EXPECT_EQ(merged({lineAt(50, 1), lineAt(50.5, 2)}), Frequencies({50.5, 50}));
    EXPECT_EQ(merged({lineAt(50, 1), lineAt(50.5, 2), lineAt(52, 3)}), Frequencies({52, 50.5, 50}));
    EXPECT_EQ(merged({lineAt(50, 1), lineAt(51, 1), lineAt(52, 1), lineAt(80, 9)}).size(), 2U);
    EXPECT_TRUE(merged({}).empty());
}

}  // namespace
}  // namespace stillbay
