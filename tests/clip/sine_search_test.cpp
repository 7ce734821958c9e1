// SPDX-License-Identifier: MIT
#include "core/clip/sine_search.h"

#include "core/clip/line_of_sine.h"
#include "core/clip/unclaimed_motion.h"
#include "tests/clip/row_grids.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

namespace stillbay {
namespace {

constexpr double kWholeTurn = 2 * std::numbers::pi;
const FilmReadingOptions kAroundLine{.readout_s = 0.018, .lowest_hz = 64, .highest_hz = 86};
const Sine kTrueSine{.frequency_hz = 74.3,
                     .amplitude = {Complex(0.12, -0.1), Complex(-0.1, 0.08), Complex(0.2, 0.17)}};

// Each frame as a whole moved by chance, so much in each axis [px rms].
void shakeFrames(RowGrid& grid, const std::array<double, 3>& sizes_px, std::uint64_t seed)
{
    std::mt19937_64 random(seed);
    std::normal_distribution<double> normal;
    for (std::size_t n = 0; n < grid.frames(); ++n)
        for (std::size_t axis = 0; axis < 3; ++axis) {
            const double shift = sizes_px[axis] * normal(random);
            for (std::size_t r = 0; r < grid.rows(); ++r)
                grid.value[axis][n * grid.rows() + r] += shift;
        }
}

struct TrueShake {
    double wobble_px, frameShake_px;
};

// By brute force over rows and columns: where pixels stand, as a complex amplitude, straight lines
// down the frame left out of what moves rows, and the mean turn of how far they are tilted; and
// where they stand on average over the frame.
TrueShake shakeOf(const Sine& sine, const RowGrid& grid, double readout_s)
{
    constexpr int kPlaces = 400;
    const double aspect = grid.width_px / grid.height_px;
    std::vector<double> row;
    std::vector<Complex> across, up, turn;
    for (int k = 0; k < kPlaces; ++k) {
        row.push_back((k + 0.5) / kPlaces - 0.5);
        const Complex e = std::polar(1.0, kWholeTurn * sine.frequency_hz * readout_s * row.back());
        turn.push_back(e * sine.amplitude[kRoll]);
        across.push_back(e * sine.amplitude[kAcross] + row.back() * turn.back());
        up.push_back(e * sine.amplitude[kUp]);
    }
    const auto meanOf = [](const std::vector<Complex>& x) {
        Complex sum = 0;
        for (const Complex& each : x)
            sum += each / double(kPlaces);
        return sum;
    };
    // Of power ½ |x|² on average over a turn.
    const auto left2 = [&](const std::vector<Complex>& x, bool isSkewOut) {
        const Complex mean = meanOf(x);
        Complex skew = 0;
        double square = 0, sum = 0;
        for (std::size_t k = 0; k < row.size(); ++k) {
            skew += x[k] * row[k];
            square += row[k] * row[k];
        }
        for (std::size_t k = 0; k < row.size(); ++k)
            sum += std::norm(x[k] - mean - (isSkewOut ? skew / square * row[k] : 0.0)) / 2;
        return sum / kPlaces;
    };
    const auto shift2 = [&](std::size_t axis) {
        std::vector<Complex> x;
        for (const double r : row)
            x.push_back(std::polar(1.0, kWholeTurn * sine.frequency_hz * readout_s * r) *
                        sine.amplitude[axis]);
        return std::norm(meanOf(x)) / 2;
    };
    return {std::sqrt(left2(across, true) + left2(up, true) +
                      aspect * aspect / 12 * left2(turn, false)),
            std::sqrt(shift2(kAcross) + shift2(kUp) + shift2(kRoll) * (aspect * aspect + 1) / 12)};
}

// Oracle: Monte Carlo: 40 clips of one sine with the noise that spreads promise. What is told is
// right on average, to three standard errors; it scatters as is told, which 40 tell to 11 %; a
// spread of the frequency that is the larger of two is a fifth too wide. The wobble that is told is
// of all three axes with their own phases, the truth by brute force over pixels.
TEST(LineOfSine, IsRightAndKnowsHowFar)
{
    constexpr int kClips = 40;
    const RowGrid still = gridOf({.frames = 76, .rows = 9, .spread_px = 0.06});
    const TrueShake truth = shakeOf(kTrueSine, still, kAroundLine.readout_s);
    double wobble = 0, wobble2 = 0, f = 0, f2 = 0, shake = 0, across = 0, roll = 0, toldWobble2 = 0,
           toldF2 = 0;
    for (int clip = 0; clip < kClips; ++clip) {
        RowGrid grid = still;
        addNoise(grid, 100 + std::uint64_t(clip));
        addSine(grid, kAroundLine.readout_s, kTrueSine, 1.0, grid.value);
        SineSearch search(grid, kAroundLine, {});
        ASSERT_TRUE(search.run({}));
        ASSERT_EQ(search.sines().size(), 1U) << clip;
        const FilmLine line = lineOfSine(search, 0);
        wobble += line.wobble_px / kClips;
        wobble2 += line.wobble_px * line.wobble_px / kClips;
        f += (line.frequency_hz - 74.3) / kClips;
        f2 += std::pow(line.frequency_hz - 74.3, 2) / kClips;
        shake += line.frameShake_px / kClips;
        across += line.across_px / kClips;
        roll += line.roll_rad * 1080 / kClips;
        toldWobble2 += std::pow(line.wobbleUncertainty_px, 2) / kClips;
        toldF2 += std::pow(line.uncertainty_hz, 2) / kClips;
    }
    const double scatter = std::sqrt(wobble2 - wobble * wobble), scatterF = std::sqrt(f2 - f * f);
    EXPECT_NEAR(wobble, truth.wobble_px, 3 * scatter / std::sqrt(kClips) + 0.02 * wobble);
    EXPECT_NEAR(shake, truth.frameShake_px, 0.04 * shake);
    EXPECT_NEAR(across, std::abs(kTrueSine.amplitude[kAcross]) / std::numbers::sqrt2,
                0.04 * across);
    EXPECT_NEAR(roll, std::abs(kTrueSine.amplitude[kRoll]) / std::numbers::sqrt2, 0.04 * roll);
    EXPECT_NEAR(f, 0.0, 3 * scatterF / std::sqrt(kClips));
    EXPECT_NEAR(std::sqrt(toldWobble2) / scatter, 1.0, 0.2);
    EXPECT_NEAR(std::sqrt(toldF2) / scatterF, 1.2, 0.3);
}

// Oracle: a textbook's standard error of a slope: the phases of eight parts of the clip stand 0.1
// rad before or behind those of a sine, so its frequency is known no better than a line through
// them is, whatever the noise promises.
TEST(LineOfSine, KnowsHowItsPhaseWanders)
{
    constexpr std::array<double, 8> kPhase{0.1, -0.1, -0.1, 0.1, 0.1, -0.1, 0.1, -0.1};
    RowGrid grid = gridOf({.frames = 80, .rows = 9, .spread_px = 0.02});
    for (RowTable& weights : grid.weight)
        std::fill(weights.begin(), weights.end(), weights[0]);
    for (std::size_t part = 0; part < 8; ++part) {
        Sine sine = kTrueSine;
        for (Complex& amplitude : sine.amplitude)
            amplitude *= std::polar(1.0, kPhase[part]);
        RowTables all = grid.value;
        for (RowTable& table : all)
            std::fill(table.begin(), table.end(), 0.0);
        addSine(grid, kAroundLine.readout_s, sine, 1.0, all);
        for (std::size_t axis = 0; axis < 3; ++axis)
            std::copy_n(all[axis].begin() + std::ptrdiff_t(part * 90), 90,
                        grid.value[axis].begin() + std::ptrdiff_t(part * 90));
    }
    addNoise(grid, 7, 0.1);
    // So narrow that nothing is found beside it.
    const FilmReadingOptions options{.readout_s = 0.018, .lowest_hz = 73.5, .highest_hz = 75.1};
    SineSearch search(grid, options, {});
    ASSERT_TRUE(search.run({}));
    ASSERT_EQ(search.sines().size(), 1U);
    double slope = 0, spread2 = 0, left2 = 0;
    for (int k = 0; k < 8; ++k) {
        const double t = (k - 3.5) * 10 / 30.0;
        slope += kPhase[std::size_t(k)] * t;
        spread2 += t * t;
    }
    slope /= spread2;
    for (int k = 0; k < 8; ++k)
        left2 += std::pow(kPhase[std::size_t(k)] - slope * (k - 3.5) * 10 / 30.0, 2);
    const double expected = std::sqrt(left2 / 6 / spread2) / kWholeTurn;
    EXPECT_NEAR(lineOfSine(search, 0).uncertainty_hz, expected, 0.08 * expected);
}

// Oracle: Simpson's rule over the density of χ² of 6, x² e^{−x/2}/16: of three trials a hertz and
// second one in a thousand clips has one above the threshold, a seventh of that for the level.
TEST(SineSearch, ClaimsALineOfNoiseOnceInAThousandClips)
{
    RowGrid grid = gridOf({.frames = 91, .rows = 6});  // 3 s
    const SineSearch search(grid, kAroundLine, {});
    const double from = search.threshold() / 1.15;
    double chance = 0;
    constexpr double kStep = 0.01;
    for (double x = from; x < 200; x += kStep) {
        const auto density = [](double at) {
            return at * at * std::exp(-at / 2) / 16;
        };
        chance += kStep / 6 * (density(x) + 4 * density(x + kStep / 2) + density(x + kStep));
    }
    EXPECT_NEAR(chance * 3 * 22 * 3, 1e-3, 2e-5);
    EXPECT_NEAR(search.width_hz(), 1.0 / 3, 1e-12);
}

// Oracle: by hand: up, rows stand to either side by turns, all by one sine that no vibration makes,
// so all squares that it has over noise are there beside any line: half its amplitude's square
// times the weights of all used frames, without the straight line down the rows; each axis has two
// degrees of freedom a row but two rows, of noise alone one each.
TEST(SineSearch, KnowsWhatRowsHaveThatIsNoVibration)
{
    constexpr std::size_t kRows = 12, kFrames = 94;
    constexpr double kSize_px = 0.05, kRows_hz = 79;
    RowGrid grid = gridOf({.frames = kFrames, .rows = kRows});
    for (RowTable& weights : grid.weight)
        std::fill(weights.begin(), weights.end(), 400.0);
    addNoise(grid, 13);
    double mean = 0, skew = 0, square = 0, left = 0;
    const auto side = [](std::size_t r) {
        return r % 2 == 0 ? 1.0 : -1.0;
    };
    for (std::size_t r = 0; r < kRows; ++r) {
        mean += side(r) / kRows;
        skew += side(r) * grid.row[r];
        square += grid.row[r] * grid.row[r];
    }
    for (std::size_t r = 0; r < kRows; ++r)
        left += std::pow(side(r) - mean - skew / square * grid.row[r], 2);
    for (std::size_t k = 0; k < kFrames * kRows; ++k)
        grid.value[kUp][k] +=
            kSize_px * side(k % kRows) * std::cos(kWholeTurn * kRows_hz * grid.time[k / kRows]);
    const FilmReadingOptions options{.readout_s = 0.018, .lowest_hz = 62, .highest_hz = 76};
    SineSearch search(grid, options, {});
    ASSERT_TRUE(search.run({}));
    const double degrees = 3 * 2 * (kRows - 2);
    const double squares = kSize_px * kSize_px / 2 * 400 * (kFrames - 4) * left;
    const double expected = (squares + degrees) / (degrees - 6);
    EXPECT_GT(expected, 5);
    EXPECT_NEAR(search.levelBeside(kRows_hz, 0.0), expected, 0.15 * expected);
    EXPECT_NEAR(search.levelBeside(kRows_hz, 0.0) - search.levelBeside(kRows_hz, 54), 1.0, 1e-9);

    // Four times as strong, it explains more as a vibration than noise ever does, and is none.
    for (std::size_t k = 0; k < kFrames * kRows; ++k)
        grid.value[kUp][k] +=
            3 * kSize_px * side(k % kRows) * std::cos(kWholeTurn * kRows_hz * grid.time[k / kRows]);
    const FilmReadingOptions within{.readout_s = 0.018, .lowest_hz = 62, .highest_hz = 86};
    SineSearch second(grid, within, {});
    ASSERT_TRUE(second.run({}));
    EXPECT_GT(*std::ranges::max_element(second.spectrum().explained), 2 * second.threshold());
    EXPECT_TRUE(second.sines().empty());
}

// Oracle: by hand: 74.3 Hz beats at 14.3 Hz against 30 frames a second, as do these; the sine
// itself explains all that there is of it.
TEST(SineSearch, RanksTheAliasesOfASine)
{
    RowGrid grid = gridOf({.frames = 70, .rows = 9, .spread_px = 0.02});
    addSine(grid, 0.018, kTrueSine, 1.0, grid.value);
    const FilmReadingOptions options{.readout_s = 0.018, .lowest_hz = 15, .highest_hz = 134};
    const SineSearch search(grid, options, {});
    RowTables data = grid.value;
    search.slow().takeOut(data);
    auto aliases = search.aliases(105.7, data);
    ASSERT_EQ(aliases.size(), 7U);
    EXPECT_NEAR(aliases[0].f_hz, 74.3, 1e-9);
    EXPECT_NEAR(aliases[0].explained, squaresOf(grid, data), 0.002 * aliases[0].explained);
    EXPECT_GT(aliases[0].explained, 1.2 * aliases[1].explained);
    std::ranges::sort(aliases, {}, &SineSearch::Alias::f_hz);
    const double expected[] = {15.7, 44.3, 45.7, 74.3, 75.7, 104.3, 105.7};
    for (std::size_t k = 0; k < 7; ++k)
        EXPECT_NEAR(aliases[k].f_hz, expected[k], 1e-9);
}

// Oracle: by hand: bands that have three times their spread leave nine times what they should, two
// degrees of freedom a frame gone with shift and skew; what is above that is unexplained, over the
// weights; a tenth too much is none.
TEST(UnclaimedMotion, OfBandsIsWhatIsAboveNoise)
{
    EXPECT_NEAR((BandSums{.weight = 50, .left = 300, .degrees = 200}.unexplained2()), 2, 1e-12);
    EXPECT_EQ((BandSums{.weight = 50, .left = 219, .degrees = 200}.unexplained2()), 0);
    EXPECT_GT((BandSums{.weight = 50, .left = 221, .degrees = 200}.unexplained2()), 0);
    EXPECT_EQ(BandSums{}.unexplained2(), 0);

    RowGrid grid = gridOf({.frames = 404, .rows = 12, .spread_px = 0.1});
    addNoise(grid, 3, 3.0);
    for (std::size_t n = 0; n < grid.frames(); ++n)
        grid.weight[kUp][n * 12 + 5] = 0.0;
    const SineSearch search(grid, kAroundLine, {});
    const BandSums sums = bandSums(search, kUp);
    EXPECT_EQ(sums.degrees, 400 * (11 - 2));
    EXPECT_NEAR(sums.left / sums.degrees, 9.0, 0.6);
    double weight = 0;
    for (std::size_t k = 2 * 12; k < 402 * 12; ++k)
        weight += grid.weight[kUp][k];
    EXPECT_NEAR(sums.weight, weight, 1e-9 * weight);
}

// Oracle: the shifts that frames were given by chance, across, up, and in roll, whose pixels move
// by a twelfth of width² + height² about the middle, squared; flight lies over them, and a claimed
// sine. 1500 frames tell a power to a twentieth.
TEST(UnclaimedMotion, OfFramesIsWhatNeighboursDoNotForesee)
{
    const auto shakeOfFrames = [](const std::array<double, 3>& sizes_px, double noise) {
        RowGrid grid = gridOf({.frames = 1500, .rows = 8, .spread_px = 0.2});
        for (RowTable& weights : grid.weight)
            std::fill(weights.begin(), weights.end(), 25.0);
        addNoise(grid, 8, noise);
        shakeFrames(grid, sizes_px, 9);
        addSine(grid, kAroundLine.readout_s, kTrueSine, 3.0, grid.value);
        for (std::size_t k = 0; k < grid.value[kUp].size(); ++k)
            grid.value[kUp][k] += 20 * std::sin(2.0 * grid.time[k / 8]);
        Sine claimed = kTrueSine;
        for (Complex& amplitude : claimed.amplitude)
            amplitude *= 3;
        const SineSearch search(grid, kAroundLine, {});
        return unexplainedShake2(search, {&claimed, 1});
    };
    EXPECT_EQ(shakeOfFrames({0, 0, 0}, 1.0), 0);
    EXPECT_NEAR(shakeOfFrames({0.1, 0, 0}, 1.0), 0.01, 0.0015);
    EXPECT_NEAR(shakeOfFrames({0, 0.3, 0}, 1.0), 0.09, 0.009);
    const double aspect = 16.0 / 9;
    EXPECT_NEAR(shakeOfFrames({0, 0, 0.3}, 1.0), 0.09 * (aspect * aspect + 1) / 12, 0.0035);
}

// Oracle: Monte Carlo: frames that show seven tenths of a sine that their rows tell of; 60 clips
// scatter as is told, which they tell to a tenth.
TEST(UnclaimedMotion, TellsHowMuchFramesFollow)
{
    constexpr int kClips = 60;
    double sum = 0, squares = 0, told2 = 0;
    Sine claimed = kTrueSine;
    claimed.amplitude = {Complex(0.6, 0.3), Complex(-0.2, 0.9), Complex(0, 0)};
    for (int clip = 0; clip < kClips; ++clip) {
        RowGrid grid = gridOf({.frames = 80, .rows = 8, .spread_px = 0.5});
        addSine(grid, kAroundLine.readout_s, claimed, 0.7, grid.value);
        for (std::size_t k = 0; k < grid.value[kUp].size(); ++k)
            grid.value[kUp][k] += 20 * std::sin(2.0 * grid.time[k / 8]);
        shakeFrames(grid, {0.1, 0.3, 0}, 50 + std::uint64_t(clip));
        const SineSearch search(grid, kAroundLine, {});
        const auto follow = framesFollow(search, {&claimed, 1});
        ASSERT_TRUE(follow);
        sum += follow->share / kClips;
        squares += follow->share * follow->share / kClips;
        told2 += follow->spread * follow->spread / kClips;
    }
    const double scatter = std::sqrt(squares - sum * sum);
    EXPECT_NEAR(sum, 0.7, 3 * scatter / std::sqrt(kClips));
    EXPECT_NEAR(std::sqrt(told2) / scatter, 1.0, 0.2);
    // A twentieth of it tells nothing.
    for (Complex& amplitude : claimed.amplitude)
        amplitude /= 20;
    RowGrid grid = gridOf({.frames = 80, .rows = 8, .spread_px = 0.5});
    addSine(grid, kAroundLine.readout_s, claimed, 1.0, grid.value);
    shakeFrames(grid, {0.1, 0.3, 0}, 50);
    EXPECT_FALSE(framesFollow(SineSearch(grid, kAroundLine, {}), {&claimed, 1}));
}

}  // namespace
}  // namespace stillbay
