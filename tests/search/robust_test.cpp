// SPDX-License-Identifier: MIT
#include "core/search/robust.h"

#include "core/tube/rubber.h"
#include "tests/assess/crafts.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <random>

namespace stillbay {
namespace {

using Craft = Setup;  // inside TEST the name Setup is taken

constexpr Tolerances kNoTolerances{.cut_mm = 0,
                                   .hole_mm = 0,
                                   .direction_deg = 0,
                                   .hardness_shore = 0,
                                   .measuredModulus = 0,
                                   .bay = 0,
                                   .battery = 0,
                                   .coldest_c = 20,
                                   .warmest_c = 20,
                                   .unbalance = 1};

// Oracle: the ideal gas of chains, by hand: (273.15 + t) / 293.15.
TEST(Temperature, StiffensRubberInProportion)
{
    EXPECT_EQ(modulusAtTemperature(20), 1.0);
    EXPECT_NEAR(modulusAtTemperature(-5), 0.9147, 5e-5);
    EXPECT_NEAR(modulusAtTemperature(40), 1.0682, 5e-5);
}

// Oracle: I. M. Sobol', USSR Comput. Math. Math. Phys. 7 (1967) 86–112, from memory: among the
// first 2ᵏ points each of 2ᵏ equal parts of an edge holds one; a shift moves at most one to a
// neighbour.
TEST(ToleranceSamples, FillTheirRangesEvenly)
{
    const Design design = designOf(test::sampleCraft("reedbed"));
    const Tolerances tolerances;
    const std::vector<ToleranceSample> builds = toleranceSamples(design, tolerances, 256, 7);
    const auto expectEven = [&](const char* what,
                                const std::function<double(const ToleranceSample&)>& share) {
        std::array<int, 16> bins{};
        for (const ToleranceSample& build : builds) {
            const double u = share(build);
            ASSERT_GE(u, -1e-12) << what;
            ASSERT_LT(u, 1 + 1e-12) << what;
            ++bins.at(static_cast<std::size_t>(std::clamp(16 * u, 0.0, 15.0)));
        }
        for (const int count : bins)
            EXPECT_NEAR(count, 16, 1) << what;
    };
    ASSERT_EQ(builds[0].cuts_mm.size(), 4U);
    for (std::size_t tube = 0; tube < 4; ++tube)
        expectEven("cut", [&](const ToleranceSample& b) { return b.cuts_mm[tube] + 0.5; });
    for (std::size_t tube = 0; tube < 4; ++tube) {
        for (std::size_t axis = 0; axis < 3; ++axis)
            expectEven("hole", [&](const ToleranceSample& b) {
                return (b.holes_mm[tube].at(axis) + 1) / 2;
            });
        expectEven("direction",
                   [&](const ToleranceSample& b) { return (b.directions_deg[tube] + 2) / 4; });
    }
    expectEven("bay", [](const ToleranceSample& b) { return (b.bay - 0.95) / 0.1; });
    expectEven("battery", [](const ToleranceSample& b) { return (b.battery - 0.9) / 0.2; });
    expectEven("unbalance",
               [](const ToleranceSample& b) { return (std::log2(b.unbalance) + 1) / 2; });
}

// Oracle: Gent's relation and the temperature's factor at the corners, by the functions' own tests.
TEST(ToleranceSamples, ModulusFollowsHardnessAndTemperature)
{
    Design design = designOf(test::sampleCraft("reedbed"));  // Shore 60, not measured
    const auto extremes = [&] {
        const auto builds = toleranceSamples(design, {}, 4096, 1);
        const auto [low, high] = std::minmax_element(
            builds.begin(), builds.end(), [](const ToleranceSample& a, const ToleranceSample& b) {
                return a.modulus < b.modulus;
            });
        return std::pair(low->modulus, high->modulus);
    };
    const double E = youngsModulusFromShoreA(60);
    const auto [soft, hard] = extremes();
    EXPECT_NEAR(soft, youngsModulusFromShoreA(55) / E * modulusAtTemperature(-5), 0.01);
    EXPECT_NEAR(hard, youngsModulusFromShoreA(65) / E * modulusAtTemperature(40), 0.01);
    EXPECT_GE(soft, youngsModulusFromShoreA(55) / E * modulusAtTemperature(-5));
    design.tube.youngs_modulus_mpa = 3.0;
    const auto [weak, strong] = extremes();
    EXPECT_NEAR(weak, 0.95 * modulusAtTemperature(-5), 0.005);
    EXPECT_NEAR(strong, 1.05 * modulusAtTemperature(40), 0.005);
}

TEST(ToleranceSamples, SameSeedSameSamples)
{
    const Design design = designOf(test::sampleCraft("reedbed"));
    const auto a = toleranceSamples(design, {}, 20, 3), b = toleranceSamples(design, {}, 20, 3),
               c = toleranceSamples(design, {}, 20, 4);
    for (std::size_t i = 0; i < a.size(); ++i) {
        EXPECT_EQ(a[i].cuts_mm, b[i].cuts_mm);
        EXPECT_EQ(a[i].modulus, b[i].modulus);
        EXPECT_NE(a[i].modulus, c[i].modulus);
    }
}

// Oracle: counting by hand.
TEST(Quantile, IsTheSmallestThatEnoughDoNotExceed)
{
    const double none = std::numeric_limits<double>::infinity();
    std::vector<double> ten{5, 3, 9, 1, 7, 2, 10, 4, 8, 6};
    EXPECT_EQ(quantile(ten, 0.1), 1);
    EXPECT_EQ(quantile(ten, 0.5), 5);
    EXPECT_EQ(quantile(ten, 0.9), 9);
    EXPECT_EQ(quantile(ten, 0.91), 10);
    EXPECT_EQ(quantile(ten, 1.0), 10);
    ten[2] = ten[6] = none;  // 9 and 10
    EXPECT_EQ(quantile(ten, 0.8), 8);
    EXPECT_FALSE(quantile(ten, 0.9));
    EXPECT_EQ(quantile({4.0}, 0.1), 4);
}

// Oracle: every stretch of throttle tried by brute force.
TEST(CleanSpan, IsTheLongestThatEnoughBuildsFlyClean)
{
    std::mt19937 random(5);
    std::uniform_real_distribution<double> wobble(0, 1);
    const std::vector<double> throttle{0.1, 0.2, 0.3, 0.45, 0.5, 0.6, 0.8, 0.9};
    for (int round = 0; round < 200; ++round) {
        std::vector<std::vector<double>> builds(10);
        for (std::vector<double>& build : builds)
            if (wobble(random) > 0.05)
                for (std::size_t k = 0; k < throttle.size(); ++k)
                    build.push_back(wobble(random));
        double longest = -1;
        for (std::size_t a = 0; a < throttle.size(); ++a)
            for (std::size_t b = a; b < throttle.size(); ++b) {
                int clean = 0;
                for (const std::vector<double>& build : builds) {
                    bool all = !build.empty();
                    for (std::size_t k = a; all && k <= b; ++k)
                        all = build[k] < 0.9;
                    clean += all;
                }
                if (clean >= 8)
                    longest = std::max(longest, throttle[b] - throttle[a]);
            }
        const auto span = cleanSpan(throttle, builds, 0.9, 0.8);
        ASSERT_EQ(span.has_value(), longest >= 0);
        if (span) {
            EXPECT_NEAR(span->to - span->from, longest, 1e-9);
        }
    }
}

// Oracle: the once-per-turn excitation is proportional to the unbalance, which is 2^(2u − 1) times
// the craft's, u evenly spread: quantile p of the wobble is 2^(2p − 1) times that of the plan.
TEST(Robustness, OfUnbalanceAloneIsKnown)
{
    Craft craft = test::sampleCraft("reedbed");
    craft.drive.blade_pass_thrust_fraction.clear();
    Tolerances tolerances = kNoTolerances;
    tolerances.unbalance = 2;
    const Evaluator evaluator(craft, {.throttle = Grid{0.25, 0.6, 0.025}}, Throttles::All);
    const Robustness robust =
        robustness(evaluator, designOf(craft), craft.limits.faint_px, {.tolerances = tolerances})
            .value();
    const double plan = evaluator.evaluate(designOf(craft)).cruise.worst_px();
    const double grain = std::exp2(2.0 / 256) - 1;  // one build further
    EXPECT_NEAR(*robust.p10_px, plan * std::exp2(-0.8), 1.5 * grain * plan);
    EXPECT_NEAR(*robust.p50_px, plan, 1.5 * grain * plan);
    EXPECT_NEAR(*robust.p90_px, plan * std::exp2(0.8), 1.5 * grain * plan * std::exp2(0.8));
    EXPECT_EQ(robust.samples, 256U);
}

// Oracle: definition; without any spread every build is the plan.
TEST(Robustness, WithoutSpreadIsThePlan)
{
    const Craft craft = test::sampleCraft("quarry");
    const Evaluator evaluator(craft, {}, Throttles::All);
    const Robustness robust = robustness(evaluator, designOf(craft), craft.limits.faint_px,
                                         {.tolerances = kNoTolerances, .samples = 10})
                                  .value();
    const Evaluation plan = evaluator.evaluate(designOf(craft));
    EXPECT_NEAR(*robust.p10_px, plan.cruise.worst_px(), 1e-12 * plan.cruise.worst_px());
    EXPECT_NEAR(*robust.p90_px, plan.cruise.worst_px(), 1e-12 * plan.cruise.worst_px());
    EXPECT_EQ(robust.cleanCruise, plan.cruise.worst_px() < craft.limits.faint_px ? 1.0 : 0.0);
}

// Oracle: definition; a design on the edge of what holds loses the builds beyond it.
TEST(Robustness, CountsBuildsThatDoNotHold)
{
    Craft craft = test::steepReedbed();
    craft.mounts.free_length_mm = 45.5;
    craft.mounts.stretch = 1.045;
    const Evaluator evaluator(craft, {.throttle = Grid{0.25, 0.6, 0.05}}, Throttles::All);
    ASSERT_TRUE(evaluator.evaluate(designOf(craft)).feasible());
    const Robustness robust =
        robustness(evaluator, designOf(craft), craft.limits.faint_px, {.samples = 64}).value();
    const std::size_t swings =
        robust.violations[static_cast<std::size_t>(Constraint::SwingsWithCraft)];
    EXPECT_GT(swings, 16U);
    EXPECT_LT(swings, 48U);
    EXPECT_FALSE(robust.p90_px);
    EXPECT_TRUE(robust.p10_px);
    Robustness firm;
    firm.p90_px = 5.0;
    EXPECT_TRUE(firm.isBetterThan(robust));
    EXPECT_FALSE(robust.isBetterThan(firm));
}

// Oracle: definition; any number of threads, same bits; a stop is an error.
TEST(Robustness, IsTheSameOnAnyNumberOfThreads)
{
    const Craft craft = test::sampleCraft("saltmarsh");
    const Evaluator evaluator(craft, {.throttle = Grid{0.1, 1.0, 0.05}}, Throttles::All);
    const auto with = [&](std::size_t threads, std::uint64_t seed) {
        return robustness(evaluator, designOf(craft), craft.limits.faint_px,
                          {.samples = 40, .seed = seed, .threads = threads})
            .value();
    };
    const Robustness one = with(1, 1), three = with(3, 1), other = with(1, 2);
    EXPECT_EQ(one.p50_px, three.p50_px);
    EXPECT_EQ(one.p90_px, three.p90_px);
    EXPECT_EQ(one.clean, three.clean);
    EXPECT_NE(one.p50_px, other.p50_px);
    EXPECT_NEAR(*one.p50_px, *other.p50_px, 0.2 * *one.p50_px);
    std::stop_source stopped;
    stopped.request_stop();
    EXPECT_FALSE(robustness(evaluator, designOf(craft), 0.3, {.samples = 40}, stopped.get_token()));
}

TEST(Robustness, SpeaksOfTenBuilds)
{
    Robustness robust;
    robust.clean = {0.28, 0.61};
    EXPECT_EQ(english(robustText(robust)),
              "9 of 10 builds stay clean from 28\u00a0% to 61\u00a0% throttle.");
    robust.clean.reset();
    EXPECT_EQ(english(robustText(robust)), "At no throttle do 9 of 10 builds stay clean.");
}

}  // namespace
}  // namespace stillbay
