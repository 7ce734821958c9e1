// SPDX-License-Identifier: MIT
#include "core/clip/line_fit.h"

#include "tests/clip/row_grids.h"

#include <Eigen/Dense>
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

constexpr double kLateRow_s = 0.02;  // first row to last
const Sine kSkewSine{.frequency_hz = 74.3,
                     .amplitude = {Complex(0.3, -0.5), Complex(-0.2, 0.4), Complex(0.6, 0.25)}};

RowTables emptyTables(const RowGrid& grid)
{
    RowTables tables;
    for (RowTable& table : tables)
        table.assign(grid.frames() * grid.rows(), 0.0);
    return tables;
}

// Noise and a sine under flight, spreads of all sizes, two bands that show nothing.
RowGrid shakenGrid(double noise)
{
    RowGrid grid = gridOf({.frames = 43, .rows = 9});
    addNoise(grid, 5, noise);
    addSine(grid, kLateRow_s, kSkewSine, 1.0, grid.value);
    for (std::size_t axis = 0; axis < 3; ++axis)
        for (std::size_t k = 0; k < grid.value[axis].size(); ++k) {
            grid.value[axis][k] += 30 * std::sin(0.05 * double(k / 9));
            if (k % 97 == 31)
                grid.weight[axis][k] = 0.0;
        }
    return grid;
}

// Oracle: definition, by brute force: the mean of Re(A e^{iωt}) over the rows that a band has, each
// read in its turn; a roll moves the band across by the height of its middle.
TEST(LineFit, AddsWhatBandsSeeOfASine)
{
    const RowGrid grid = gridOf({.frames = 6, .rows = 5});
    RowTables tables = emptyTables(grid);
    addSine(grid, kLateRow_s, kSkewSine, 0.7, tables);
    for (std::size_t n = 0; n < 6; ++n)
        for (std::size_t r = 0; r < 5; ++r) {
            std::array<double, 3> mean{};
            constexpr int kParts = 400;
            for (int i = 0; i < kParts; ++i) {
                const double row = grid.row[r] + ((i + 0.5) / kParts - 0.5) / 5;
                const double phase =
                    2 * std::numbers::pi * 74.3 * (grid.time[n] + kLateRow_s * row);
                for (std::size_t axis = 0; axis < 3; ++axis) {
                    const Complex& size = kSkewSine.amplitude[axis];
                    mean[axis] += 0.7 *
                                  (size.real() * std::cos(phase) - size.imag() * std::sin(phase)) /
                                  kParts;
                }
            }
            EXPECT_NEAR(tables[kAcross][n * 5 + r], mean[kAcross] + grid.row[r] * mean[kRoll],
                        1e-5);
            EXPECT_NEAR(tables[kUp][n * 5 + r], mean[kUp], 1e-5);
            EXPECT_NEAR(tables[kRoll][n * 5 + r], mean[kRoll], 1e-5);
        }
}

// Oracle: an independent path: six columns, made by addSine() and takeOut(), through Householder's
// weighted least squares: amplitudes, the sum of squares that they take away, and what noise adds
// to |amplitude|², the two variances of each.
TEST(LineFit, IsLeastSquares)
{
    const RowGrid grid = shakenGrid(1.0);
    const SlowMotion slow(grid, kLateRow_s);
    RowTables data = grid.value;
    slow.takeOut(data);
    const auto stacked = [&](const RowTables& tables) {
        const std::size_t count = grid.frames() * grid.rows();
        Eigen::VectorXd all(Eigen::Index(3 * count));
        for (std::size_t axis = 0; axis < 3; ++axis)
            for (std::size_t k = 0; k < count; ++k)
                all(Eigen::Index(axis * count + k)) =
                    std::sqrt(grid.weight[axis][k]) * tables[axis][k];
        return all;
    };
    Eigen::MatrixXd columns(Eigen::Index(3 * grid.frames() * grid.rows()), 6);
    for (int i = 0; i < 6; ++i) {
        Sine unit{.frequency_hz = kSkewSine.frequency_hz};
        unit.amplitude[std::size_t(i / 2)] = i % 2 == 0 ? Complex(1, 0) : Complex(0, 1);
        RowTables column = emptyTables(grid);
        addSine(grid, kLateRow_s, unit, 1.0, column);
        slow.takeOut(column);
        columns.col(i) = stacked(column);
    }
    const Eigen::VectorXd right = stacked(data);
    const Eigen::VectorXd best = columns.householderQr().solve(right);
    const Eigen::MatrixXd covariance = (columns.transpose() * columns).inverse();

    const SineColumns sine(grid, slow, kLateRow_s, kSkewSine.frequency_hz);
    const SineColumns::Fit fit = sine.fit(data);
    for (int axis = 0; axis < 3; ++axis) {
        const auto at = std::size_t(axis);
        EXPECT_NEAR(fit.amplitude[at].real(), best(2 * axis), 1e-9);
        EXPECT_NEAR(fit.amplitude[at].imag(), best(2 * axis + 1), 1e-9);
        const double noise2 =
            covariance(2 * axis, 2 * axis) + covariance(2 * axis + 1, 2 * axis + 1);
        EXPECT_NEAR(fit.noise2[at], noise2, 1e-6 * noise2);
    }
    const double left = (right - columns * best).squaredNorm();
    EXPECT_NEAR(fit.explained, right.squaredNorm() - left, 1e-6 * fit.explained);
    sine.addTo(data, fit.amplitude, -1.0);
    EXPECT_NEAR(squaresOf(grid, data), left, 1e-6 * left);
}

// Oracle: the frequency and amplitudes that were put in, and the bound of Cramér and Rao: one over
// the curve with which what is left rises beside the true frequency, by differences.
TEST(LineFit, MovesToTheFrequencyAndTellsItsSpread)
{
    const RowGrid grid = shakenGrid(0.0);
    const SlowMotion slow(grid, kLateRow_s);
    RowTables data = grid.value;
    slow.takeOut(data);
    Sine found{.frequency_hz = kSkewSine.frequency_hz + 0.2};
    refineSine(grid, slow, kLateRow_s, data, 0.6, found);
    EXPECT_NEAR(found.frequency_hz, kSkewSine.frequency_hz, 0.005);
    const auto explainedAt = [&](double f_hz) {
        return SineColumns(grid, slow, kLateRow_s, f_hz).fit(data).explained;
    };
    constexpr double kAside_hz = 0.02;
    const double f_hz = found.frequency_hz;
    const double bend =
        (explainedAt(f_hz - kAside_hz) - 2 * explainedAt(f_hz) + explainedAt(f_hz + kAside_hz)) /
        (kAside_hz * kAside_hz);
    EXPECT_NEAR(found.variance_hz2, -2 / bend, -0.02 * 2 / bend);
    for (std::size_t axis = 0; axis < 3; ++axis)
        EXPECT_NEAR(std::abs(found.amplitude[axis] - kSkewSine.amplitude[axis]), 0.0, 0.02);
    // No farther than its reach.
    Sine held{.frequency_hz = kSkewSine.frequency_hz - 0.3};
    refineSine(grid, slow, kLateRow_s, data, 0.1, held);
    EXPECT_NEAR(held.frequency_hz, kSkewSine.frequency_hz - 0.2, 1e-9);
}

// Oracle: definition: what a small change of the frequency changes, by differences of addSine().
// Bands without height: how they soften a sine changes with frequency, too, which is left out.
TEST(LineFit, TellsWhatAChangeOfFrequencyDoes)
{
    RowGrid grid = shakenGrid(1.0);
    grid.bandHeight = 1e-4;
    const SlowMotion slow(grid, kLateRow_s);
    RowTables change = emptyTables(grid);
    constexpr double kAside_hz = 1e-3;
    for (const double sign : {1.0, -1.0}) {
        Sine aside = kSkewSine;
        aside.frequency_hz += sign * kAside_hz;
        addSine(grid, kLateRow_s, aside, sign / (2 * kAside_hz), change);
    }
    slow.takeOut(change);
    const SineColumns columns(grid, slow, kLateRow_s, kSkewSine.frequency_hz);
    const auto told = columns.change(kSkewSine.amplitude, grid.value);
    EXPECT_NEAR(told.square, squaresOf(grid, change), 1e-4 * told.square);
    RowTables column = emptyTables(grid);
    double product = 0;
    for (std::size_t axis = 0; axis < 3; ++axis)
        for (std::size_t k = 0; k < change[axis].size(); ++k)
            product += grid.weight[axis][k] * change[axis][k] * grid.value[axis][k];
    EXPECT_NEAR(told.withData, product, 1e-4 * std::abs(product));
    columns.addTo(column, {Complex(0, 0), Complex(0, 1), Complex(0, 0)}, 1.0);
    product = 0;
    for (std::size_t k = 0; k < change[kUp].size(); ++k)
        product += grid.weight[kUp][k] * change[kUp][k] * column[kUp][k];
    EXPECT_NEAR(told.withColumns(3), product, 1e-4 * std::abs(product));
}

}  // namespace
}  // namespace stillbay
