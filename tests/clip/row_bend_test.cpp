// SPDX-License-Identifier: MIT
#include "core/clip/row_bend.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stillbay {
namespace {

// Nine bands a frame; each frame has a shift and a skew of its own, the reference a bend that all
// frames show, and the frame a parabola in turn up and down.
RowShifts bentFilm(unsigned frames)
{
    RowShifts shifts;
    for (unsigned f = 0; f < frames; ++f)
        for (int k = -4; k <= 4; ++k) {
            BandShift band;
            band.frame = f;
            band.frameTime_s = f / 30.0;
            band.row = k / 9.0;
            const double bend = (f % 2 == 0 ? 1.0 : -1.0) * (band.row * band.row - 20.0 / 243.0);
            band.across_px = 3.0 + f + (0.5 * f - 2.0) * band.row + std::cos(9.0 * band.row) + bend;
            band.up_px = -7.0 * f + 4.0 * band.row + 0.4 * std::cos(7.0 * band.row) - 2.0 * bend;
            band.acrossSpread_px = band.upSpread_px = 0.01;
            shifts.bands.push_back(band);
        }
    return shifts;
}

// Oracle: the parabola that was put in. Its mean over the nine rows, 20/243, is taken out with the
// shift, and no skew is in it.
TEST(RowBends, AreWhatNoStraightLineExplains)
{
    const std::vector<FrameBend> bends = rowBends(bentFilm(6));
    ASSERT_EQ(bends.size(), 6U);
    for (const FrameBend& frame : bends) {
        ASSERT_EQ(frame.rows.size(), 9U);
        double power = 0.0;
        for (const RowBend& row : frame.rows) {
            const double bend =
                (frame.frame % 2 == 0 ? 1.0 : -1.0) * (row.row * row.row - 20.0 / 243.0);
            EXPECT_NEAR(row.across_px, bend, 1e-12);
            EXPECT_NEAR(row.up_px, -2.0 * bend, 1e-12);
            power += 5.0 * bend * bend;
        }
        EXPECT_NEAR(frame.rms_px, std::sqrt(power / 9.0), 1e-12);
        EXPECT_DOUBLE_EQ(frame.time_s, frame.frame / 30.0);
    }
}

// Oracle: definition of weighted least squares: what is left of a frame is at right angles to shift
// and skew, by its own spreads in each axis, and what went is a straight line; bands above the
// middle are missing. The second frame is the first turned about, so the reference takes nothing.
TEST(RowBends, GoByHowWellEachBandIsKnown)
{
    RowShifts shifts;
    for (const double sign : {1.0, -1.0})
        for (int k = -1; k <= 4; ++k)
            shifts.bands.push_back({.frame = sign > 0 ? 0U : 1U,
                                    .row = k / 9.0,
                                    .across_px = sign * (2.0 + std::sin(3.7 * k)),
                                    .up_px = sign * (0.3 * k + std::cos(2.9 * k)),
                                    .acrossSpread_px = 0.02 * (1 + (k + 4) % 3),
                                    .upSpread_px = 0.03 * (1 + (2 * k + 8) % 5)});
    const std::vector<FrameBend> bends = rowBends(shifts);
    ASSERT_EQ(bends.size(), 2U);
    const auto isFit = [&](double RowBend::*left, double BandShift::*was,
                           double BandShift::*spread) {
        double shift = 0.0, skew = 0.0;
        std::vector<double> line;
        for (std::size_t k = 0; k < 6; ++k) {
            const BandShift& band = shifts.bands[k];
            const double weight = 1e-4 / (band.*spread * band.*spread);
            shift += weight * bends[0].rows[k].*left;
            skew += weight * bends[0].rows[k].*left * band.row;
            line.push_back(band.*was - bends[0].rows[k].*left);
        }
        EXPECT_NEAR(shift, 0.0, 1e-12);
        EXPECT_NEAR(skew, 0.0, 1e-12);
        for (std::size_t k = 0; k + 2 < 6; ++k)
            EXPECT_NEAR(line[k] - 2 * line[k + 1] + line[k + 2], 0.0, 1e-12) << k;
        EXPECT_GT(std::abs(line[1] - line[0]), 1e-3);
    };
    isFit(&RowBend::across_px, &BandShift::across_px, &BandShift::acrossSpread_px);
    isFit(&RowBend::up_px, &BandShift::up_px, &BandShift::upSpread_px);
}

TEST(RowBends, LeaveOutFramesThatSayTooLittle)
{
    RowShifts shifts = bentFilm(3);
    shifts.bands.erase(shifts.bands.begin() + 11, shifts.bands.begin() + 18);  // two of the second
    const std::vector<FrameBend> bends = rowBends(shifts);
    ASSERT_EQ(bends.size(), 2U);
    EXPECT_EQ(bends[0].frame, 0U);
    EXPECT_EQ(bends[1].frame, 2U);
    EXPECT_TRUE(rowBends({}).empty());
}

}  // namespace
}  // namespace stillbay
