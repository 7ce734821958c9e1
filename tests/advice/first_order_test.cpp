// SPDX-License-Identifier: MIT
#include "core/advice/first_order.h"

#include <gtest/gtest.h>

#include <atomic>
#include <cmath>
#include <limits>
#include <numbers>
#include <numeric>
#include <random>

namespace stillbay {
namespace {

using Cube = std::span<const double>;

std::vector<double> column(const CubeSample& sample, std::size_t output = 0)
{
    std::vector<double> values;
    for (const std::vector<double>& row : sample.outputs)
        values.push_back(row.at(output));
    return values;
}

std::vector<std::vector<std::size_t>> eachAlone(std::size_t inputs)
{
    std::vector<std::vector<std::size_t>> groups;
    for (std::size_t i = 0; i < inputs; ++i)
        groups.push_back({i});
    return groups;
}

std::vector<VarianceShare> sharesOf(std::size_t dimensions, const CubeFunction& function,
                                    std::uint64_t seed = 1, std::size_t count = 512)
{
    const auto sample = sampleCube(dimensions, function, {count, seed});
    const auto shares =
        firstOrderShares(sample.value().points, column(*sample), eachAlone(dimensions));
    EXPECT_TRUE(shares);
    return shares.value_or(std::vector<VarianceShare>(dimensions));
}

// Within three standard errors, and within the 5 points that are promised. What polynomials of
// degree 8 cannot follow is below 1 point for both functions.
void expectShares(const std::vector<VarianceShare>& shares, const std::vector<double>& exact)
{
    constexpr double kTruncated = 0.01;
    for (std::size_t i = 0; i < exact.size(); ++i) {
        EXPECT_NEAR(shares[i].share, exact[i], 3 * shares[i].standard_error + kTruncated) << i;
        EXPECT_NEAR(shares[i].share, exact[i], 0.05) << i;
        EXPECT_LT(shares[i].standard_error, 0.06) << i;
    }
}

double ishigami(double x, double y, double z)
{
    return std::sin(x) + 7 * std::pow(std::sin(y), 2) + 0.1 * std::pow(z, 4) * std::sin(x);
}

// Oracle: T. Ishigami & T. Homma, "An importance quantification technique in uncertainty analysis
// for computer models" (1990); closed forms of its variance for a = 7, b = 0.1 in A. Saltelli et
// al., Global Sensitivity Analysis: The Primer (2008), from memory: V = a²/8 + bπ⁴/5 + b²π⁸/18 + ½,
// V₁ = ½(1 + bπ⁴/5)², V₂ = a²/8, V₃ = 0. Twelve inputs that do nothing stand beside them.
TEST(FirstOrderShares, OfIshigamisFunction)
{
    constexpr double kPi = std::numbers::pi, kA = 7, kB = 0.1;
    const double pi4 = std::pow(kPi, 4);
    const double V = kA * kA / 8 + kB * pi4 / 5 + kB * kB * pi4 * pi4 / 18 + 0.5;
    std::vector<double> exact{0.5 * std::pow(1 + kB * pi4 / 5, 2) / V, kA * kA / 8 / V, 0};
    for (const std::size_t idle : {0U, 12U}) {
        exact.resize(3 + idle, 0.0);
        for (const std::uint64_t seed : {1U, 2U, 3U})
            expectShares(sharesOf(
                             3 + idle,
                             [](Cube u) {
                                 const auto angle = [&](std::size_t i) {
                                     return kPi * (2 * u[i] - 1);
                                 };
                                 return std::vector{ishigami(angle(0), angle(1), angle(2))};
                             },
                             seed),
                         exact);
    }
}

// Oracle: I. M. Sobol's g function with a = 0, 1, 4.5, 9, 99, 99, 99, 99, Saltelli et al. (2008),
// from memory: Vᵢ = 1/(3(1 + aᵢ)²), V = Π(1 + Vᵢ) − 1.
TEST(FirstOrderShares, OfSobolsFunction)
{
    const std::vector<double> a{0, 1, 4.5, 9, 99, 99, 99, 99};
    std::vector<double> exact;
    double V = 1;
    for (const double ai : a) {
        exact.push_back(1 / (3 * (1 + ai) * (1 + ai)));
        V *= 1 + exact.back();
    }
    for (double& share : exact)
        share /= V - 1;
    expectShares(sharesOf(a.size(),
                          [&](Cube u) {
                              double product = 1;
                              for (std::size_t i = 0; i < a.size(); ++i)
                                  product *= (std::abs(4 * u[i] - 2) + a[i]) / (1 + a[i]);
                              return std::vector{product};
                          }),
                 exact);
}

// Logarithm of the hysteretic single axis' transmissibility |T|² = (1 + η²)/((1 − r²)² + η²), from
// stiff to soft tubes and over a range of speeds: skew, with a resonance inside.
double hysteretic(double stiffness, double loss, double speed)
{
    const double r2 = std::pow(1 + speed, 2) / std::exp(1.2 * (stiffness - 0.3));
    const double eta = 0.05 * std::pow(4, loss);
    return 0.5 * std::log((1 + eta * eta) / (std::pow(1 - r2, 2) + eta * eta));
}

// Oracle: brute force, a double loop of 1e5 evaluations an input: the variance of the means at 316
// fixed values of it, less what the scatter of 316 draws of the others leaves in each mean. By
// random draws the share is known to √(2/316) of itself, at most 0.06 for one of 0.8.
TEST(FirstOrderShares, OfASingleAxisAreThoseOfADoubleLoop)
{
    constexpr int kLoop = 316;
    std::mt19937_64 random(5);
    std::uniform_real_distribution<double> draw(0, 1);
    const auto shares =
        sharesOf(3, [](Cube u) { return std::vector{hysteretic(u[0], u[1], u[2])}; });
    double sum = 0;
    for (std::size_t input = 0; input < 3; ++input) {
        double all = 0, allSquare = 0, meanSquare = 0, within = 0;
        for (int i = 0; i < kLoop; ++i) {
            const double fixed = (i + draw(random)) / kLoop;  // one in each stratum
            double mean = 0, square = 0;
            for (int j = 0; j < kLoop; ++j) {
                std::array<double, 3> u{draw(random), draw(random), draw(random)};
                u.at(input) = fixed;
                const double y = hysteretic(u[0], u[1], u[2]);
                mean += y / kLoop;
                square += y * y / kLoop;
            }
            all += mean / kLoop;
            allSquare += square / kLoop;
            meanSquare += mean * mean / kLoop;
            within += (square - mean * mean) / (kLoop - 1) / kLoop;
        }
        const double exact = (meanSquare - all * all - within) / (allSquare - all * all);
        EXPECT_NEAR(shares[input].share, exact, 0.05) << input;
        sum += exact;
    }
    EXPECT_LT(sum, 0.98);  // they act together as well
}

// Oracle: definition. Half of the output's variance is a sum of the inputs, the other half no input
// explains: over many small samples the estimates of the half lie evenly around it, for what a fit
// takes of the noise is taken off again. Eight points an input leave 77 of 104 to the noise.
TEST(FirstOrderShares, OfFewNoisyPointsAreRightOnAverage)
{
    constexpr std::size_t kInputs = 13, kPoints = 8 * kInputs;
    constexpr int kTimes = 200;
    std::vector<std::size_t> all(kInputs);
    std::iota(all.begin(), all.end(), 0U);
    std::mt19937_64 random(11);
    std::uniform_real_distribution<double> evenly(-1, 1);
    double sum = 0, square = 0;
    for (int time = 0; time < kTimes; ++time) {
        std::vector<std::vector<double>> points;
        std::vector<double> output;
        for (std::size_t i = 0; i < kPoints; ++i) {
            points.emplace_back();
            double explained = 0;
            for (std::size_t input = 0; input < kInputs; ++input) {
                const double x = evenly(random);
                points.back().push_back(0.5 * (x + 1));
                explained += x;
            }
            const double noise = evenly(random);
            output.push_back(explained + std::sqrt(double{kInputs}) * noise);
        }
        const auto shares = firstOrderShares(points, output, {all});
        ASSERT_TRUE(shares);
        sum += shares->front().share;
        square += shares->front().share * shares->front().share;
    }
    const double mean = sum / kTimes;
    const double ofMean = std::sqrt((square / kTimes - mean * mean) / kTimes);
    EXPECT_LT(ofMean, 0.01);
    EXPECT_NEAR(mean, 0.5, 3 * ofMean + 0.005);  // the jackknife leaves less than that
}

// Oracle: definition. A sum's shares are its terms' variances, 1, 4 and 9 of 14, but for what the
// coordinates of these points have in common, about 1 % (at random it would be 1/√512 = 4 %).
TEST(FirstOrderShares, OfGroupsAreTheSumOfTheirs)
{
    const auto sample =
        sampleCube(3, [](Cube u) { return std::vector{u[0] + 2 * u[1] - 3 * u[2]}; }, {});
    const auto shares = firstOrderShares(sample->points, column(*sample), {{2}, {0, 1}, {}});
    ASSERT_TRUE(shares);
    EXPECT_NEAR((*shares)[0].share, 9.0 / 14, 0.02);
    EXPECT_NEAR((*shares)[1].share, 5.0 / 14, 0.02);
    EXPECT_EQ((*shares)[2].share, 0.0);
}

// Oracle: definition. Half of the points without a value leave half as many.
TEST(FirstOrderShares, LeaveOutWhatHasNoValue)
{
    const auto half = sampleCube(
        2,
        [](Cube u) {
            return std::vector{u[0] < 0.5 ? std::numeric_limits<double>::quiet_NaN() : u[1]};
        },
        {});
    const auto shares = firstOrderShares(half->points, column(*half), eachAlone(2));
    ASSERT_TRUE(shares);
    EXPECT_NEAR((*shares)[1].share, 1, 0.02);
    for (const double value : {0.0, 3.25, std::numeric_limits<double>::quiet_NaN()})
        EXPECT_FALSE(
            firstOrderShares(half->points, std::vector(half->points.size(), value), eachAlone(2)))
            << value;
    const auto few = sampleCube(5, [](Cube u) { return std::vector{u[0]}; }, {.count = 39});
    EXPECT_FALSE(firstOrderShares(few->points, column(*few), eachAlone(5)));
}

// Oracle: definition.
TEST(SampleCube, IsTheSameOnAnyNumberOfThreads)
{
    const CubeFunction function = [](Cube u) {
        return std::vector{std::sin(9 * u[0]) * u[3], u[1] - u[2]};
    };
    const auto one = sampleCube(4, function, {.count = 100, .seed = 3, .threads = 1});
    const auto many = sampleCube(4, function, {.count = 100, .seed = 3, .threads = 5});
    EXPECT_EQ(one->points, many->points);
    EXPECT_EQ(one->outputs, many->outputs);
    EXPECT_NE(one->points, sampleCube(4, function, {.count = 100, .seed = 4})->points);
}

// Oracle: definition. Each thread may have begun one evaluation.
TEST(SampleCube, StopsWithinOneEvaluationOfEachThread)
{
    constexpr std::size_t kThreads = 3, kBefore = 10;
    std::stop_source stop;
    std::atomic<std::size_t> calls = 0;
    const auto sample = sampleCube(
        2,
        [&](Cube u) {
            if (++calls == kBefore)
                stop.request_stop();
            return std::vector{u[0]};
        },
        {.count = 10000, .threads = kThreads}, stop.get_token());
    EXPECT_FALSE(sample);
    EXPECT_LT(calls, kBefore + kThreads);
}

}  // namespace
}  // namespace stillbay
