// SPDX-License-Identifier: MIT
#include "core/clip/row_spectrum.h"

#include "core/base/quantile.h"
#include "core/clip/line_fit.h"
#include "tests/clip/row_grids.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stillbay {
namespace {

// Oracle: an independent path: the full fit of a sine of that frequency to the same tables. The
// spectrum counts a sine's own power without what patterns and bends eat of it, which of 4 s is 2 %
// at most. Noise, and a sine that leads it, over a block's whole width of 2 × 12.6 Hz and beyond.
TEST(RowSpectrum, IsWhatAFitExplains)
{
    RowGrid grid = gridOf({.frames = 120, .rows = 9});
    grid.bandHeight = 1e-6;
    addNoise(grid, 11);
    addSine(grid, 0.0126,
            {.frequency_hz = 67.2,
             .amplitude = {Complex(0.03, 0), Complex(0, 0.02), Complex(0.04, 0.04)}},
            1.0, grid.value);
    const SlowMotion slow(grid, 0.0126);
    RowTables cleaned = grid.value;
    slow.takeOut(cleaned);
    const auto spectrum = rowSpectrum(grid, slow, cleaned, 0.0126, 50, 99, {});
    ASSERT_GT(spectrum.told.size(), 700U);
    for (std::size_t k = 0; k < spectrum.told.size(); k += 7) {
        const double f_hz = spectrum.frequency_hz(k);
        if (std::abs(f_hz - 60) < 2 || std::abs(f_hz - 90) < 2)
            continue;  // standing
        const double fit = SineColumns(grid, slow, 0.0126, f_hz).fit(cleaned).explained;
        EXPECT_NEAR(spectrum.told[k], fit, 0.02 * fit + 0.05) << f_hz;
    }
}

// Oracle: the noise itself: bands that scatter by twice their spread show four times what they
// should, each axis by itself; so corrected nothing is left, the median of χ² of 6 where it
// belongs.
TEST(RowSpectrum, KnowsHowMuchMoreNoiseThereIs)
{
    RowGrid grid = gridOf({.frames = 240, .rows = 7});
    addNoise(grid, 12);
    for (double& value : grid.value[kUp])
        value *= 2;
    for (double& value : grid.value[kRoll])
        value *= 0.5;
    const SlowMotion slow(grid, 0.02);
    RowTables cleaned = grid.value;
    slow.takeOut(cleaned);
    const auto spectrum = rowSpectrum(grid, slow, cleaned, 0.02, 35, 235, {});
    EXPECT_NEAR(spectrum.scale[kAcross], 1.0, 0.15);
    EXPECT_NEAR(spectrum.scale[kUp], 4.0, 0.6);
    EXPECT_NEAR(median(spectrum.explained), 5.348, 0.5);
    EXPECT_NEAR(median(spectrum.level), 1.0, 0.1);
    for (const double level : spectrum.level)
        EXPECT_NEAR(level, 1.0, 0.5);
}

// Oracle: by hand: the nearest step, and the outer ones beyond.
TEST(RowSpectrum, TellsItsLevelAtAFrequency)
{
    const RowSpectrum spectrum{.first_hz = 10, .step_hz = 0.5, .level = {1, 2, 3, 4}};
    EXPECT_EQ(spectrum.levelAt(10.8), 3);
    EXPECT_EQ(spectrum.levelAt(10.7), 2);
    EXPECT_EQ(spectrum.levelAt(3), 1);
    EXPECT_EQ(spectrum.levelAt(99), 4);
}

}  // namespace
}  // namespace stillbay
