// SPDX-License-Identifier: MIT
#include "core/clip/readout.h"

#include "tests/clip/band_motion.h"

#include <gtest/gtest.h>

#include <cmath>
#include <string>

namespace stillbay {
namespace {

// Oracle: the readout that the rows were made with. Half a per cent, as the spread told says; it is
// told by the noise alone, so four of them.
TEST(Readout, ComesBackFromAKnownFrequency)
{
    struct Case {
        double readout_s, f_hz;
    };
    for (const Case& c : {Case{0.0112, 131.7}, Case{0.0196, 74.2}}) {
        ShakenBands motion{.readout_s = c.readout_s, .seconds = 3, .bands = 24};
        motion.lines = {{.frequency_hz = c.f_hz,
                         .across_px = 0.4,
                         .up_px = 0.5,
                         .roll_rad = 2e-4,
                         .upPhase = 1.0},
                        {.frequency_hz = 2.02 * c.f_hz, .across_px = 0.1}};
        const auto found = estimateReadout(rowShiftsOf(motion), c.f_hz + 0.5, 1.0);
        ASSERT_TRUE(found) << found.error().what.pattern;
        EXPECT_NEAR(found->readout_s, c.readout_s, 0.005 * c.readout_s);
        EXPECT_NEAR(found->readout_s, c.readout_s, 4 * found->spread_s);
        EXPECT_NEAR(found->frequency_hz, c.f_hz, 0.02);
    }
}

// Oracle: the shifts are the same, only told to be known half as well or better: what they scatter
// is in the film.
TEST(Readout, KnowsItsSpreadWhateverBandsPromise)
{
    ShakenBands motion{.readout_s = 0.0162, .seconds = 2, .bands = 12, .noise_px = 0.1, .pan = 0};
    motion.lines = {{.frequency_hz = 101.3, .across_px = 0.4, .up_px = 0.5, .upPhase = 1.0}};
    const auto honest = estimateReadout(rowShiftsOf(motion), 101.3, 1.0);
    ASSERT_TRUE(honest);
    EXPECT_GT(honest->spread_s, 6e-3 * honest->readout_s);  // so noise leads
    for (const double told : {0.4, 2.5}) {
        motion.spreadsTold = told;
        const auto found = estimateReadout(rowShiftsOf(motion), 101.3, 1.0);
        ASSERT_TRUE(found) << told;
        EXPECT_NEAR(found->spread_s, honest->spread_s, 0.03 * honest->spread_s) << told;
    }
}

// Oracle: own derivation: a still clip holds no line, a multiple of the frame rate no motion, here
// half a hertz, one over the clip's length, and the tolerance beside it; at 9 Hz rows hardly bend.
TEST(Readout, IsNotGuessed)
{
    const RowShifts still = rowShiftsOf({.seconds = 2.05, .bands = 16});
    const auto refusal = [](const RowShifts& shifts, double f_hz, double tolerance_hz) {
        const auto found = estimateReadout(shifts, f_hz, tolerance_hz);
        return found ? std::string() : english(found.error().what);
    };
    EXPECT_EQ(refusal(still, 73.4, 1.0), "no line stands out at 73.4 Hz");
    EXPECT_EQ(refusal(still, 61.7, 1.0), "no line stands out at 61.7 Hz");
    const std::string tooClose =
        " Hz is too close to a multiple of the frame rate: in every frame "
        "the same, it cannot be told from the scene";
    EXPECT_EQ(refusal(still, 61.4, 1.0), "61.4" + tooClose);
    EXPECT_EQ(refusal(still, 118.7, 1.0), "118.7" + tooClose);
    const std::string unknown = "a known frequency must be known to a quarter of the frame rate";
    EXPECT_EQ(refusal(still, 73.4, 9.0), unknown);
    EXPECT_EQ(refusal(still, std::nan(""), 1.0), unknown);
    EXPECT_FALSE(estimateReadout({}, 73.4, 1.0));
    ShakenBands slow{.seconds = 2, .bands = 16, .pan = 0};
    slow.lines = {{.frequency_hz = 9.3, .across_px = 3.0}};
    EXPECT_EQ(refusal(rowShiftsOf(slow), 9.3, 0.5),
              "at 9.3 Hz the frame moves as one and does not tell its readout");
}

}  // namespace
}  // namespace stillbay
