// SPDX-License-Identifier: MIT
#include "core/clip/row_grid.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stillbay {
namespace {

// Seven bands a frame at these times, all of one reference.
RowShifts shiftsAt(const std::vector<double>& times, double rate_hz)
{
    RowShifts shifts{.width = 1600, .height = 900, .frameRate_hz = rate_hz, .bandHeight = 0.1};
    for (unsigned n = 0; n < times.size(); ++n)
        for (int r = 0; r < 7; ++r)
            shifts.bands.push_back({.frameTime_s = times[n],
                                    .frame = n,
                                    .row = 0.1 * (r - 3),
                                    .across_px = n + 0.25 * r,
                                    .up_px = -1.0 * n,
                                    .roll_rad = 0.001 * r,
                                    .acrossSpread_px = 0.05 * (r + 1),
                                    .upSpread_px = 0.1,
                                    .rollSpread_rad = 2e-4});
    return shifts;
}

std::vector<double> evenTimes(std::size_t count, double first_s, double rate_hz)
{
    std::vector<double> times;
    for (std::size_t n = 0; n < count; ++n)
        times.push_back(first_s + double(n) / rate_hz);
    return times;
}

// Oracle: definition: a weight is one over a spread squared, a roll is what it moves the bottom
// edge by against the top, and so is its spread: 0.18 px of 900 rows; times count from the middle.
TEST(RowGrids, HoldBandsInPixelsByTheirWeights)
{
    const auto grid = rowGrid(shiftsAt(evenTimes(9, 4.0, 25), 25));
    ASSERT_TRUE(grid);
    ASSERT_EQ(grid->frames(), 9U);
    ASSERT_EQ(grid->rows(), 7U);
    const std::size_t k = 6 * 7 + 2;
    EXPECT_NEAR(grid->value[kAcross][k], 6.5, 1e-12);
    EXPECT_NEAR(grid->value[kUp][k], -6, 1e-12);
    EXPECT_NEAR(grid->value[kRoll][k], 1.8, 1e-12);
    EXPECT_NEAR(grid->weight[kAcross][k], 1 / (0.15 * 0.15), 1e-6);
    EXPECT_NEAR(grid->weight[kUp][k], 100, 1e-9);
    EXPECT_NEAR(grid->weight[kRoll][k], 1 / (0.18 * 0.18), 1e-6);
    EXPECT_NEAR(grid->time[0], -0.16, 1e-9);
    EXPECT_NEAR(grid->time[8], 0.16, 1e-9);
    EXPECT_NEAR(grid->span(), 0.32, 1e-9);
}

// Oracle: the even times that were rounded to milliseconds, of a rate that the file tells a little
// wrong, some frames missing: rounding errs by 0.5 ms at most, over 3 s by less than a thousandth
// of the rate. What is off by more than rounding stays where it was.
TEST(RowGrids, StraightenRoundedTimes)
{
    std::vector<double> rounded, uneven;
    for (int n = 0; n < 90; ++n) {
        if (n == 20 || n == 21 || n == 60)
            continue;
        rounded.push_back(std::round(1000 * (1.0 + n / 29.97)) / 1000);
        uneven.push_back(1.0 + n / 29.97 + (n % 2 == 0 ? 0.0 : 0.004));
    }
    const auto grid = rowGrid(shiftsAt(rounded, 30));
    ASSERT_TRUE(grid);
    EXPECT_NEAR(grid->rate_hz, 29.97, 0.003);
    double worst = 0;
    for (std::size_t n = 0; n < rounded.size(); ++n) {
        const double step = std::round((rounded[n] - rounded[0]) * 29.97);
        worst = std::max(worst, std::abs(grid->time[n] - grid->time[0] - step / 29.97));
    }
    EXPECT_LT(worst, 2e-4);
    const auto kept = rowGrid(shiftsAt(uneven, 29.97));
    ASSERT_TRUE(kept);
    for (std::size_t n = 0; n < uneven.size(); ++n)
        EXPECT_NEAR(kept->time[n] - kept->time[0], uneven[n] - uneven[0], 1e-9);
}

// Oracle: by hand, at 25 frames a second: two frames missing are no gap, three are; what follows a
// gap or has another reference is a run of its own, and fewer than five frames are none.
TEST(RowGrids, BreakAtGapsAndReferences)
{
    const auto runsOf = [](RowShifts shifts) {
        const auto grid = rowGrid(shifts);
        return grid ? grid->run : std::vector<std::size_t>{};
    };
    std::vector<double> times = evenTimes(14, 0, 25);
    for (std::size_t n = 6; n < 14; ++n)
        times[n] += 2 / 25.0;
    EXPECT_EQ(runsOf(shiftsAt(times, 25)), std::vector<std::size_t>(14, 0));
    for (std::size_t n = 6; n < 14; ++n)
        times[n] += 1 / 25.0;
    std::vector<std::size_t> two(14, 1);
    std::fill_n(two.begin(), 6, 0);
    EXPECT_EQ(runsOf(shiftsAt(times, 25)), two);
    RowShifts other = shiftsAt(evenTimes(14, 0, 25), 25);
    for (BandShift& band : other.bands)
        band.reference = band.frame < 6 ? 0 : 3;
    EXPECT_EQ(runsOf(other), two);
    EXPECT_EQ(rowGrid(other)->reference, two);
    for (BandShift& band : other.bands)
        band.reference = band.frame < 4 ? 0 : 3;
    EXPECT_EQ(runsOf(other).size(), 10U);
    EXPECT_TRUE(runsOf(shiftsAt(evenTimes(4, 0, 25), 25)).empty());
}

}  // namespace
}  // namespace stillbay
