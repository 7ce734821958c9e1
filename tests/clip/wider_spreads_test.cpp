// SPDX-License-Identifier: MIT
#include "core/clip/wider_spreads.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstddef>
#include <random>

namespace stillbay {
namespace {

// Twelve bands a frame that stand up and down by turns, whose fourth difference is 16 times as
// much: by so many times more than spreads of 0.05 px allow, on a shift, skew and bend that fourth
// differences do not see. One size a frame, across; half of it up, none in roll.
RowShifts zigzags(const std::vector<double>& sizes)
{
    RowShifts shifts{.width = 640, .height = 360, .bandHeight = 0.08};
    for (unsigned f = 0; f < sizes.size(); ++f)
        for (int k = 0; k < 12; ++k) {
            const double row = 0.08 * (k - 5.5), turn = k % 2 == 0 ? 1.0 : -1.0;
            const double unit = 0.05 * std::sqrt(70.0) / 16;  // of the fourth difference's spread
            shifts.bands.push_back(
                {.frame = f,
                 .row = row,
                 .across_px = 3 + 20 * row - 50 * row * row + turn * unit * sizes[f],
                 .up_px = 7 * row * row * row + turn * unit * sizes[f] / 2,
                 .acrossSpread_px = 0.05,
                 .upSpread_px = 0.05,
                 .rollSpread_rad = 1e-4});
        }
    return shifts;
}

// Oracle: by hand: of a standard normal number the square's median is 0.45494 (Φ⁻¹(¾)²), so fourth
// differences of √0.45494 · 4 spreads are 16 times too large, squared, and spreads grow by 4. In a
// film of frames of 1 and 16 times, most of them of 16, a frame goes half way to the others: 17/2.
TEST(WiderSpreads, AreWhatNeighboursDifferBy)
{
    const double usual = std::sqrt(0.45494);
    RowShifts shifts = zigzags({4 * usual, 4 * usual, usual, 4 * usual});
    widenSpreads(shifts);
    for (const BandShift& band : shifts.bands) {
        const double across2 = band.frame == 2 ? 8.5 : 16.0, up2 = band.frame == 2 ? 2.125 : 4.0;
        EXPECT_NEAR(band.acrossSpread_px, 0.05 * std::sqrt(across2), 1e-4) << band.frame;
        EXPECT_NEAR(band.upSpread_px, 0.05 * std::sqrt(up2), 1e-4) << band.frame;
        EXPECT_EQ(band.rollSpread_rad, 1e-4);
    }
}

// Oracle: by hand: a film that is 1.2 times too large all in all is by chance, so each of its
// frames is widened by that; spreads are never made smaller; a band that is missing makes no
// difference.
TEST(WiderSpreads, AreNotMadeOfChance)
{
    const double usual = std::sqrt(0.45494);
    RowShifts shifts = zigzags(
        {std::sqrt(1.2) * usual, std::sqrt(1.2) * usual, 3 * usual, std::sqrt(1.2) * usual});
    widenSpreads(shifts);
    for (const BandShift& band : shifts.bands) {
        EXPECT_NEAR(band.acrossSpread_px, 0.05 * std::sqrt(1.2), 1e-5) << band.frame;
        EXPECT_EQ(band.upSpread_px, 0.05);
    }
    RowShifts holed = zigzags({9 * usual, 9 * usual});
    for (BandShift& band : holed.bands)
        band.across_px = 100 * std::pow(band.row, 4);
    for (const std::ptrdiff_t missing : {19, 15, 7, 3})  // five in a row are left nowhere
        holed.bands.erase(holed.bands.begin() + missing);
    const RowShifts before = holed;
    widenSpreads(holed);
    for (std::size_t k = 0; k < holed.bands.size(); ++k)
        EXPECT_EQ(holed.bands[k].acrossSpread_px, before.bands[k].acrossSpread_px);
    RowShifts none;
    widenSpreads(none);
    EXPECT_TRUE(none.bands.empty());
}

}  // namespace
}  // namespace stillbay
