// SPDX-License-Identifier: MIT
#include "core/base/proportional_fit.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <vector>

namespace stillbay {
namespace {

// Oracle: by hand. With x = 3, 4, 12 the shapes are √(x² + 1.2²); weights and sums below are
// written out.
TEST(ProportionalFit, IsTheWeightedMeanOfTheRatios)
{
    const std::vector<double> x{3, 4, 12}, y{6.3, 7.8, 24.6};
    double W = 0, mean = 0;
    for (std::size_t i = 0; i < 3; ++i) {
        const double weight = x[i] * x[i] / (x[i] * x[i] + 1.44);
        W += weight;
        mean += weight * y[i] / x[i];
    }
    const ProportionalFit fit = fitProportional(x, y);
    EXPECT_NEAR(fit.slope, mean / W, 1e-14);
    EXPECT_EQ(fit.points, 3u);
    EXPECT_FALSE(fit.trend);
    const ProportionalFit exact = fitProportional(x, std::vector<double>{6, 8, 24});
    EXPECT_DOUBLE_EQ(exact.slope, 2);
    EXPECT_LT(exact.standardError, 1e-15);
}

// Oracle: own derivation, brute force. Of 4000 random tables with three to twelve points the true
// slope lies within one standard error in 68.3 %; chance moves that by √(0.683·0.317/4000) = 0.7 %,
// taken threefold, and the widening for few points is a series cut at 1 % for two degrees of
// freedom. The square of the scatter is right on average: that of one point at the largest x, whose
// error is √1.01 of its share of x.
TEST(ProportionalFit, StandardErrorHoldsTwoOfThree)
{
    std::mt19937 random(7);
    std::normal_distribution<double> normal;
    for (const std::size_t points : {3u, 4u, 7u, 12u}) {
        int inside = 0;
        double scatter2 = 0;
        constexpr int kTables = 4000;
        for (int table = 0; table < kTables; ++table) {
            std::vector<double> x, y;
            for (std::size_t i = 0; i < points; ++i) {
                x.push_back(std::exp(0.8 * normal(random)));
                y.push_back(0);
            }
            const double floor = 0.1 * *std::max_element(x.begin(), x.end());
            for (std::size_t i = 0; i < points; ++i)
                y[i] = 1.7 * x[i] + 0.03 * std::hypot(x[i], floor) * normal(random);
            const ProportionalFit fit = fitProportional(x, y);
            inside += std::abs(fit.slope / 1.7 - 1) < fit.standardError ? 1 : 0;
            scatter2 += fit.scatter * fit.scatter / kTables;
        }
        const double given = 0.03 * std::sqrt(1.01) / 1.7;
        EXPECT_NEAR(std::sqrt(scatter2) / given, 1, 0.04) << points;
        EXPECT_NEAR(inside / double{kTables}, 0.683, 0.021 + 0.01) << points;
    }
}

// Oracle: own derivation. y = x^1.1 runs with x: y/x at the ends is x^0.1, and along a straight run
// over ln x the ends are met within its curvature, 0.1² ln²(x/x₀)/2.
TEST(ProportionalFit, TellsARunAndNotChance)
{
    std::vector<double> x, y;
    for (int i = 0; i < 12; ++i) {
        x.push_back(1 + 0.5 * i);
        y.push_back(std::pow(x.back(), 1.1));
    }
    const ProportionalFit fit = fitProportional(x, y);
    ASSERT_TRUE(fit.trend);
    EXPECT_NEAR(fit.trend->slopeAtLeast, 1, 0.012);
    EXPECT_NEAR(fit.trend->slopeAtMost, std::pow(6.5, 0.1), 0.012);
    EXPECT_GT(fit.trend->rms, 0.02);
    EXPECT_LT(fit.trend->rms, 0.06);
    std::mt19937 random(3);
    std::normal_distribution<double> normal;
    int told = 0;
    for (int table = 0; table < 500; ++table) {
        for (std::size_t i = 0; i < x.size(); ++i)
            y[i] = x[i] * (1 + 0.02 * normal(random));
        told += fitProportional(x, y).trend ? 1 : 0;
    }
    EXPECT_LT(told, 20);  // 2 % of 500 beyond three standard errors, Student's t of ten
}

// Oracle: by hand. Where y/x is a straight line over ln x it is met at both ends, whatever the
// weights, and the rms of the run is the weighted deviation of y/x.
TEST(ProportionalFit, FollowsAStraightRunToItsEnds)
{
    std::vector<double> x, y;
    for (int i = 0; i < 9; ++i) {
        x.push_back(std::exp(0.4 * i - 1));
        y.push_back(x.back() * (2 - 0.1 * (0.4 * i - 1)));
    }
    double W = 0, mean = 0, square = 0;
    for (std::size_t i = 0; i < x.size(); ++i) {
        const double w = 1 / (1 + std::pow(0.1 * x.back() / x[i], 2));
        W += w;
        mean += w * y[i] / x[i];
        square += w * y[i] * y[i] / (x[i] * x[i]);
    }
    mean /= W;
    const ProportionalFit fit = fitProportional(x, y);
    ASSERT_TRUE(fit.trend);
    EXPECT_NEAR(fit.trend->slopeAtLeast, 2.1, 1e-12);
    EXPECT_NEAR(fit.trend->slopeAtMost, 2 - 0.1 * 2.2, 1e-12);
    EXPECT_NEAR(fit.trend->rms, std::sqrt(square / W - mean * mean) / mean, 1e-12);
}

// A misread point is found, wherever it stands; scatter, few points and a bent line have none.
TEST(ProportionalFit, FindsWhatLiesFarOff)
{
    std::mt19937 random(5);
    std::normal_distribution<double> normal;
    std::vector<double> x, y;
    for (int i = 1; i <= 9; ++i)
        x.push_back(i * i);
    for (const double misread : {1.4, 0.6})
        for (std::size_t wrong = 2; wrong < x.size(); ++wrong) {
            y.clear();
            for (std::size_t i = 0; i < x.size(); ++i)
                y.push_back(0.1 * x[i] * (1 + 0.01 * std::cos(2.0 * static_cast<double>(i))));
            y[wrong] *= misread;
            const std::vector<bool> far = farOff(x, y);
            for (std::size_t i = 0; i < x.size(); ++i)
                EXPECT_EQ(far[i], i == wrong) << misread << ' ' << wrong << ' ' << i;
        }
    y = {1, 4, 90, 16, 25};
    EXPECT_EQ(farOff(std::span(x).first(5), y), std::vector<bool>(5, false));
    int lost = 0;
    for (int table = 0; table < 400; ++table) {
        y.clear();
        for (const double value : x)
            y.push_back(0.1 * value + 0.002 * std::hypot(value, 8.1) * normal(random));
        for (const bool far : farOff(x, y))
            lost += far ? 1 : 0;
    }
    EXPECT_LT(lost,
              400 * 9 / 50);  // a fiftieth of good points: the median of nine is a rough measure
}

}  // namespace
}  // namespace stillbay
