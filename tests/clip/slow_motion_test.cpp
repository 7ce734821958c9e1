// SPDX-License-Identifier: MIT
#include "core/clip/slow_motion.h"

#include "tests/clip/row_grids.h"

#include <Eigen/Dense>
#include <gtest/gtest.h>

#include <cmath>
#include <complex>
#include <numbers>
#include <random>

namespace stillbay {
namespace {

double worstOf(const RowTable& table)
{
    double worst = 0;
    for (const double value : table)
        if (!(std::abs(value) <= worst))  // also what is no number
            worst = std::abs(value);
    return worst;
}

// Oracle: definition: rows read one after the other of a flight that is a cubic in time, across, up
// and in roll, whose turn leans each row by its height. A cubic's derivatives come exactly out of
// five frames, evenly spaced or not; over less than a second a pattern only stands, so nothing
// else takes its bend. Of 1.2 px of bend nothing is left.
TEST(SlowMotion, IsTakenOutWithItsBendAndTwist)
{
    constexpr double kLate = 0.02;
    RowGrid grid = gridOf({.frames = 27, .rows = 9});
    for (std::size_t n = 0; n < grid.frames(); ++n)
        grid.time[n] += 0.002 * static_cast<double>((5 * n) % 3);
    const auto across = [](double t) {
        return 700 + t * (90 + t * (3000 - 40'000 * t));
    };
    const auto up = [](double t) {
        return -30 + t * (400 + t * (-9000 + 20'000 * t));
    };
    const auto roll = [](double t) {
        return 11 + t * (-50 + t * (700 + 60'000 * t));
    };
    double bent = 0;
    for (std::size_t n = 0; n < grid.frames(); ++n)
        for (std::size_t r = 0; r < grid.rows(); ++r) {
            const double row = grid.row[r], t = grid.time[n] + kLate * row;
            const std::size_t k = n * grid.rows() + r;
            grid.value[kAcross][k] = across(t) + row * roll(t) + std::cos(20 * row);
            grid.value[kUp][k] = up(t) + 0.3 * std::sin(15 * row);
            grid.value[kRoll][k] = roll(t);
            bent = std::max(bent, std::abs(across(t) - 2 * across(grid.time[n]) +
                                           across(grid.time[n] - kLate * row)));
        }
    EXPECT_GT(bent, 1.0);
    const SlowMotion slow(grid, kLate);
    RowTables left = grid.value;
    slow.takeOut(left);
    EXPECT_LT(worstOf(left[kAcross]), 1e-6);
    EXPECT_LT(worstOf(left[kUp]), 1e-6);
    // Without the roll's table nothing tells of its turn.
    RowTables alone{grid.value[kAcross], grid.value[kUp], {}};
    slow.takeOut(alone);
    EXPECT_GT(worstOf(alone[kAcross]), 0.1);
    EXPECT_LT(worstOf(alone[kUp]), 1e-6);
}

// Oracle: the patterns that were put in, other ones under each of two references: under one second
// they stand, up to two they drift, then they bend as well. What is quicker than that stays.
TEST(SlowMotion, TakesOutPatternsThatDrift)
{
    struct Case {
        std::size_t frames, terms;
    };
    for (const Case& c : {Case{28, 1}, Case{58, 2}, Case{92, 3}}) {
        const auto leftOf = [&](std::size_t power) {
            RowGrid grid = gridOf({.frames = 2 * c.frames, .rows = 10});
            for (std::size_t n = c.frames; n < grid.frames(); ++n)
                grid.run[n] = grid.reference[n] = 1;
            for (std::size_t axis = 0; axis < 3; ++axis)
                for (std::size_t n = 0; n < grid.frames(); ++n)
                    for (std::size_t r = 0; r < grid.rows(); ++r) {
                        const std::size_t k = n * grid.rows() + r;
                        const double row = 2.0 * double(r * r) + double(axis + grid.reference[n]);
                        grid.value[axis][k] =
                            3.0 * std::sin(row) * std::pow(grid.time[n] + 0.3, double(power));
                    }
            const SlowMotion slow(grid, 0.016);
            RowTables left = grid.value;
            slow.takeOut(left);
            return std::max({worstOf(left[kAcross]), worstOf(left[kUp]), worstOf(left[kRoll])});
        };
        for (std::size_t power = 0; power < 4; ++power)
            if (power < c.terms)
                EXPECT_LT(leftOf(power), 1e-9) << c.frames << ' ' << power;
            else
                EXPECT_GT(leftOf(power), 0.05) << c.frames << ' ' << power;
    }
}

// Oracle: definition of least squares: what is left of a row is at right angles, weighted, to what
// the pattern may do, for spreads that differ from band to band without any order.
TEST(SlowMotion, TakesPatternsByTheirWeights)
{
    RowGrid grid = gridOf({.frames = 92, .rows = 8});
    std::mt19937_64 random(3);
    std::uniform_real_distribution<double> uniform(0.5, 2.0);
    for (RowTable& weights : grid.weight)
        for (double& weight : weights)
            weight *= uniform(random);
    addNoise(grid, 4);
    for (std::size_t k = 0; k < grid.value[kUp].size(); ++k)
        grid.value[kUp][k] += 0.3 * std::cos(2.0 * double(k % 8)) * (1.0 + 0.02 * double(k / 8));
    const SlowMotion slow(grid, 0.016);
    RowTables left = grid.value;
    slow.takeOut(left);
    for (std::size_t r = 0; r < 8; ++r)
        for (int power = 0; power < 3; ++power) {
            double product = 0, size = 0;
            for (std::size_t n = 2; n < 90; ++n) {
                const std::size_t k = n * 8 + r;
                const double w = grid.weight[kUp][k], p = std::pow(grid.time[n], power);
                product += w * left[kUp][k] * p;
                size += w * p * p;
            }
            EXPECT_NEAR(product / std::sqrt(size), 0.0, 0.05) << r << ' ' << power;  // in spreads
        }
}

// Oracle: by hand: the cubic through two frames either side has weights −1/6, 2/3, 2/3, −1/6 in
// the middle, so of one frame that stands out by itself all is unforeseen there; a cubic is none.
TEST(SlowMotion, ForeseesFramesByTheirNeighbours)
{
    const RowGrid grid = gridOf({.frames = 11, .rows = 6});
    const SlowMotion slow(grid, 0.016);
    std::vector<double> shifts(11, 0.0);
    shifts[5] = 6.0;
    const std::vector<double> left = slow.unforeseen(shifts);
    const double expected[] = {0, 0, 0, 1, -4, 6, -4, 1, 0, 0, 0};
    for (std::size_t n = 0; n < 11; ++n)
        EXPECT_NEAR(left[n], expected[n], 1e-9) << n;
    for (std::size_t n = 0; n < 11; ++n)
        shifts[n] = 2 + grid.time[n] * (30 + grid.time[n] * (-500 + 3000 * grid.time[n]));
    EXPECT_LT(worstOf(slow.unforeseen(shifts)), 1e-9);
}

// Oracle: the shift and the skew that were put in, and the frames counted by hand: two at either
// end of each run say nothing.
TEST(SlowMotion, TellsShiftsAndTheTimeThatIsUsed)
{
    RowGrid grid = gridOf({.frames = 20, .rows = 7, .rate_hz = 25});
    for (std::size_t n = 9; n < 20; ++n)
        grid.run[n] = 1;
    for (std::size_t n = 0; n < 20; ++n)
        for (std::size_t r = 0; r < 7; ++r) {
            if (r > 4)
                grid.weight[kUp][n * 7 + r] = 0.0;  // so the seen rows lie about no middle
            grid.value[kUp][n * 7 + r] = 0.5 * double(n) - 3.0 + 40.0 * grid.row[r];
        }
    const SlowMotion slow(grid, 0.016);
    EXPECT_NEAR(slow.usedTime(), (5 + 7) / 25.0, 1e-12);
    const std::vector<double> shifts = slow.shifts(grid.value[kUp], kUp);
    for (std::size_t n = 0; n < 20; ++n)
        EXPECT_NEAR(shifts[n], 0.5 * double(n) - 3.0, 1e-9);
}

// Oracle: an independent path: how much of a sine at the times of the used frames polynomials of
// second degree in time take, one under each of two references, by Householder's least squares. The
// program's Legendre's are at right angles over all frames, two per cent short of the used ones.
TEST(SlowMotion, TellsWhatAPatternEats)
{
    constexpr int kCount = 320;  // half of them under each reference
    RowGrid grid = gridOf({.frames = kCount, .rows = 6});
    for (std::size_t n = kCount / 2; n < kCount; ++n)
        grid.run[n] = grid.reference[n] = 1;
    const SlowMotion slow(grid, 0.016);
    Eigen::MatrixXd powers = Eigen::MatrixXd::Zero(kCount, 6);
    for (int n = 0; n < kCount; ++n)
        for (int k = 0; k < 3; ++k)
            if (n % (kCount / 2) >= 2 && n % (kCount / 2) < kCount / 2 - 2)
                powers(n, 2 * k + 2 * n / kCount) = std::pow(grid.time[std::size_t(n)], k);
    const auto qr = powers.householderQr();
    for (const double f_hz : {0.05, 0.1, 0.15, 0.2, 0.3, 30.12, 59.85}) {
        Eigen::MatrixXd wave = Eigen::MatrixXd::Zero(kCount, 2);
        for (int n = 0; n < kCount; ++n) {
            const double phase = 2 * std::numbers::pi * f_hz * grid.time[std::size_t(n)];
            if (!powers.row(n).isZero())
                wave.row(n) << std::cos(phase), std::sin(phase);
        }
        const double left = (wave - powers * qr.solve(wave)).squaredNorm();
        EXPECT_NEAR(slow.eatenByPattern(f_hz), 1 - left / wave.squaredNorm(), 0.03) << f_hz;
    }
}

// Oracle: an independent path: tables of a sine with only its shifts and skews out, and with all
// slow motion out; how much of its power the second leaves of the first. Of a clip so long that a
// pattern eats next to nothing.
TEST(SlowMotion, TellsWhatItsBendEats)
{
    constexpr double kLate = 0.025;
    RowGrid grid = gridOf({.frames = 240, .rows = 64});
    for (RowTable& weights : grid.weight)
        std::fill(weights.begin(), weights.end(), 100.0);
    const SlowMotion slow(grid, kLate);
    Eigen::MatrixXd line(64, 2);
    for (int r = 0; r < 64; ++r)
        line.row(r) << 1.0, grid.row[std::size_t(r)];
    const auto qr = line.householderQr();
    for (const double f_hz : {1.7, 4.3, 7.1, 10.3, 13.9}) {
        RowTables tables{RowTable{}, RowTable(240 * 64), RowTable{}};
        double before = 0, after = 0;
        for (std::size_t n = 0; n < 240; ++n)
            for (std::size_t r = 0; r < 64; ++r)
                tables[kUp][n * 64 + r] =
                    std::cos(2 * std::numbers::pi * f_hz * (grid.time[n] + kLate * grid.row[r]));
        RowTables left = tables;
        slow.takeOut(left);
        for (std::size_t n = 2; n < 238; ++n) {
            const Eigen::Map<const Eigen::VectorXd> rows(&tables[kUp][n * 64], 64);
            before += (rows - line * qr.solve(rows)).squaredNorm();
            after += Eigen::Map<const Eigen::VectorXd>(&left[kUp][n * 64], 64).squaredNorm();
        }
        EXPECT_NEAR(slow.eatenByBend(f_hz), 1 - after / before, 0.02) << f_hz;
    }
}

}  // namespace
}  // namespace stillbay
