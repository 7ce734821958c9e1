// SPDX-License-Identifier: MIT
#include "core/clip/readout.h"

#include "tests/clip/band_motion.h"

#include <gtest/gtest.h>

#include <cmath>

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

// Oracle: own derivation: a still clip holds no line, a multiple of the frame rate no motion.
TEST(Readout, IsNotGuessed)
{
    const RowShifts still = rowShiftsOf({.seconds = 2, .bands = 16});
    EXPECT_FALSE(estimateReadout(still, 73.4, 1.0));
    EXPECT_FALSE(estimateReadout(still, 60.4, 1.0));
    EXPECT_FALSE(estimateReadout(still, 73.4, 9.0));
    EXPECT_FALSE(estimateReadout(still, std::nan(""), 1.0));
    EXPECT_FALSE(estimateReadout({}, 73.4, 1.0));
}

}  // namespace
}  // namespace stillbay
