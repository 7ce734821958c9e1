// SPDX-License-Identifier: MIT
#include "core/response/cruise.h"

#include "core/advice/suggestions.h"
#include "core/assess/assess.h"
#include "core/assess/texts.h"
#include "core/response/at_throttle.h"
#include "core/response/wobble_curve.h"
#include "tests/assess/crafts.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace stillbay {
namespace {

using Craft = Setup;  // inside TEST the name Setup is taken

const Grid kFewFrequencies{1.0, 1.0, 1.0};  // the wobble does not look at the curves over frequency

Craft reedbedAt(double from, double to)
{
    Craft craft = test::sampleCraft("reedbed");
    craft.flight.cruise_throttle = {from, to};
    return craft;
}

std::vector<double> throttlesIn(const Assessment& assessment, double from, double to)
{
    std::vector<double> inside;
    for (const ThrottlePoint& point : assessment.throttle)
        if (point.throttle >= from && point.throttle <= to)
            inside.push_back(point.throttle);
    return inside;
}

// The same craft asked for these throttles alone: the largest of its points, and the mean of the
// lines between them.
CruiseWobble asked(const Craft& craft, const Grid& throttle)
{
    const Assessment answer =
        assess(craft, {.throttle = throttle, .frequency_hz = kFewFrequencies}).value();
    CruiseWobble wobble;
    const std::vector<ThrottlePoint>& points = answer.throttle;
    double area = 0;
    for (std::size_t i = 0; i < points.size(); ++i) {
        wobble.worst_px = std::max(wobble.worst_px, points[i].wobble_px);
        if (i > 0)
            area += (points[i].throttle - points[i - 1].throttle) *
                    (points[i].wobble_px + points[i - 1].wobble_px) / 2;
    }
    wobble.mean_px = area / (points.back().throttle - points.front().throttle);
    return wobble;
}

constexpr double kMean = 0.02;  // lines between coarse points against those between finer ones
constexpr double kPeak = 0.01;  // the promise: a worst wobble is true to 1 %

void expectAgrees(const std::optional<CruiseFigures>& have, const CruiseWobble& want)
{
    ASSERT_TRUE(have);
    EXPECT_GT(want.worst_px, 0);
    EXPECT_NEAR(have->full.worst_px, want.worst_px, kPeak * want.worst_px);
    EXPECT_NEAR(have->full.mean_px, want.mean_px, kMean * want.mean_px);
}

// Oracle: definition. A window whose ends lie on the steps of half a percent needs no more points.
TEST(Cruise, AWindowOnTheStepsLeavesThePlainGrid)
{
    for (const char* sample : {"reedbed", "saltmarsh", "quarry"})
        EXPECT_EQ(CruiseWindow(test::sampleCraft(sample).flight).sweep(),
                  (Grid{0.10, 1.00, 0.005}.values()))
            << sample;
}

// Oracle: the same craft asked for the window's ends alone.
TEST(Cruise, AWindowBetweenTwoStepsIsSeenAtItsEnds)
{
    const Craft craft = reedbedAt(0.301, 0.304);
    const Assessment assessment = assess(craft, {.frequency_hz = kFewFrequencies}).value();
    EXPECT_EQ(throttlesIn(assessment, 0.3005, 0.3045), (std::vector<double>{0.301, 0.304}));
    EXPECT_TRUE(std::is_sorted(
        assessment.throttle.begin(), assessment.throttle.end(),
        [](const ThrottlePoint& a, const ThrottlePoint& b) { return a.throttle < b.throttle; }));
    expectAgrees(assessment.cruise, asked(craft, {0.301, 0.304, 0.003}));
}

// Oracle: the same craft asked for those throttles alone.
TEST(Cruise, AWindowBelowTheUsualThrottlesIsSweptToo)
{
    const Craft craft = reedbedAt(0.02, 0.08);
    const Assessment assessment = assess(craft, {.frequency_hz = kFewFrequencies}).value();
    EXPECT_EQ(assessment.throttle.front().throttle, 0.02);
    EXPECT_EQ(assessment.ranges.front().from, 0.02);
    expectAgrees(assessment.cruise, asked(craft, {0.02, 0.08, 0.005}));
    // Nowhere in steps wider than half a percent, and each throttle once.
    for (const double from : {0.02, 0.0337, 0.0964}) {
        const std::vector<double> sweep = CruiseWindow(reedbedAt(from, 0.5).flight).sweep();
        EXPECT_EQ(sweep.front(), from);
        EXPECT_EQ(sweep.back(), 1);
        for (std::size_t i = 1; i < sweep.size(); ++i) {
            EXPECT_GT(sweep[i], sweep[i - 1] + 1e-6) << from;
            EXPECT_LT(sweep[i], sweep[i - 1] + 0.005 + 1e-9) << from;
        }
    }
}

// Oracle: definition. A sweep that ends before the window or begins behind it says nothing about
// it; one that strides over it does, whatever its steps.
TEST(Cruise, ASweepThatMissesTheWindowHasNoFigure)
{
    const Craft craft = reedbedAt(0.25, 0.6);
    const AssessOptions options{.throttle = Grid{0.7, 1.0, 0.1}, .frequency_hz = kFewFrequencies};
    EXPECT_FALSE(assess(craft, options).value().cruise);
    const Suggestions suggestions = findSuggestions(craft, options).value();
    EXPECT_FALSE(suggestions.before_px);
    EXPECT_TRUE(suggestions.best(5).empty());
    EXPECT_TRUE(assess(craft, {.throttle = Grid{0.1, 1.0, 0.9}}).value().cruise);
}

// Oracle: definition. The curve is finer than what was asked for.
TEST(Cruise, ThePointsAreThoseAskedFor)
{
    const Grid grid{0.1, 1.0, 0.025};
    const Assessment answer =
        assess(reedbedAt(0.26, 0.6), {.throttle = grid, .frequency_hz = kFewFrequencies}).value();
    EXPECT_EQ(throttlesIn(answer, 0, 1), grid.values());
    EXPECT_GT(answer.curve.size(), 2 * answer.throttle.size());
}

// Crafts whose arms ring in cruise: hardly damped and well damped, on soft and on stiff tubes, with
// rigid and with soft roots, with and without symmetry.
std::vector<Craft> ringingCrafts()
{
    std::vector<Craft> crafts;
    for (const char* sample : {"reedbed", "saltmarsh", "quarry"}) {
        const Craft craft = test::sampleCraft(sample);
        for (const double loss : {0.005, 0.01, 0.03})
            for (const double hardness : {35.0, 75.0}) {
                crafts.push_back(craft);
                crafts.back().airframe.arm.loss_factor = loss;
                crafts.back().tube.hardness_shore_a = hardness;
                crafts.back().flight.cruise_throttle = {0.2, 0.7};
            }
        crafts.push_back(craft);
        crafts.back().airframe.arm.root_stiffness_nm_per_rad = 300;
    }
    for (unsigned seed = 1; seed <= 12; ++seed)
        crafts.push_back(test::skewCraft(seed));
    return crafts;
}

// Oracle: brute force, the window in steps of a fiftieth of the usual ones.
TEST(Cruise, TheWorstIsTheTrueMaximumWhateverTheGrid)
{
    constexpr double kBruteStep = 1e-4;
    int narrow = 0;
    for (const Craft& craft : ringingCrafts()) {
        const auto& [from, to] = craft.flight.cruise_throttle;
        const auto brute = assess(
            craft, {.throttle = Grid{from, to, kBruteStep}, .frequency_hz = kFewFrequencies});
        if (!brute)
            continue;
        double want_px = 0, onGrid_px = 0;
        for (const ThrottlePoint& point : brute->throttle)
            want_px = std::max(want_px, point.wobble_px);
        for (const Grid& grid : {Grid{0.1, 1.0, 0.005}, Grid{0.1, 1.0, 0.3}}) {
            const Assessment answer =
                assess(craft, {.throttle = grid, .frequency_hz = kFewFrequencies}).value();
            EXPECT_NEAR(answer.cruise->full.worst_px, want_px, kPeak * want_px)
                << craft.name << ", loss " << craft.airframe.arm.loss_factor << ", hardness "
                << craft.tube.hardness_shore_a << ", step " << grid.step;
            double curve_px = 0;
            for (const WobbleAt& at : answer.curve)
                if (at.throttle >= from && at.throttle <= to)
                    curve_px = std::max(curve_px, at.wobble_px);
            EXPECT_NEAR(curve_px, want_px, kPeak * want_px);
        }
        const Assessment plain = assess(craft, {.frequency_hz = kFewFrequencies}).value();
        for (const ThrottlePoint& point : plain.throttle)
            if (point.throttle >= from && point.throttle <= to)
                onGrid_px = std::max(onGrid_px, point.wobble_px);
        narrow += static_cast<int>(onGrid_px < (1 - 2 * kPeak) * want_px);
    }
    EXPECT_GT(narrow, 3);  // where a plain grid would miss it
}

// Oracle: the same craft with a pack that is empty from the start.
TEST(Cruise, TheEmptyPackIsThatOfAnEmptyPack)
{
    for (const char* sample : {"reedbed", "saltmarsh", "quarry"}) {
        const Craft craft = test::sampleCraft(sample);
        Craft emptied = craft;
        emptied.drive.battery.full_v_per_cell = craft.drive.battery.empty_v_per_cell;
        const CruiseFigures have = *assess(craft, {.frequency_hz = kFewFrequencies}).value().cruise;
        const CruiseFigures want =
            *assess(emptied, {.frequency_hz = kFewFrequencies}).value().cruise;
        EXPECT_NEAR(have.empty.worst_px, want.full.worst_px, kPeak * want.full.worst_px);
        EXPECT_NEAR(have.empty.mean_px, want.full.mean_px, kPeak * want.full.mean_px);
        EXPECT_EQ(have.worst_px(), std::max(have.full.worst_px, have.empty.worst_px));
    }
}

// Oracle: by hand. Three points of 1/√((x − 0.3)² + 0.01²) give back its peak of 100 at 0.3.
TEST(PeakAt, OfALonelyResonanceIsExact)
{
    const std::vector<double> throttle{0.285, 0.297, 0.312};
    std::vector<double> wobble_px;
    for (const double u : throttle)
        wobble_px.push_back(1 / std::hypot(u - 0.3, 0.01));
    const auto peak = peakAt(throttle, wobble_px, 1);
    ASSERT_TRUE(peak);
    EXPECT_NEAR(peak->throttle, 0.3, 1e-12);
    EXPECT_NEAR(peak->wobble_px, 100, 1e-9);
    EXPECT_FALSE(peakAt(throttle, wobble_px, 0));
    EXPECT_FALSE(peakAt(throttle, wobble_px, 2));
}

// Oracle: the ranges of the assessment, cut to the cruise window.
TEST(CauseText, NamesTheBadThrottlesOfTheCruiseWindowAndWhatMakesThem)
{
    const Craft setup = test::sampleCraft("reedbed");
    const Assessment a = assess(setup).value();
    ASSERT_EQ(a.status.grade, Grade::Bad);
    const std::string text = english(causeText(setup, a));
    std::size_t bad = 0;
    for (const ThrottleRange& range : a.ranges) {
        const double from = std::max(range.from, setup.flight.cruise_throttle[0]);
        const double to = std::min(range.to, setup.flight.cruise_throttle[1]);
        if (range.grade != Grade::Bad || from > to)
            continue;
        ++bad;
        EXPECT_NE(text.find(std::to_string(std::lround(100 * from))), std::string::npos) << text;
        EXPECT_NE(text.find(std::to_string(std::lround(100 * to))), std::string::npos) << text;
    }
    EXPECT_EQ(bad, 1u);
    EXPECT_NE(text.find("order 1 (unbalance) meets 67"), std::string::npos) << text;
}

// Oracle: the definition. Where the full pack is better than the verdict, the empty one is named.
TEST(CauseText, NamesTheEmptyPackWhereOnlyThatIsSoBad)
{
    Craft setup = test::sampleCraft("reedbed");
    Assessment a = assess(setup).value();
    const CruiseFigures cruise = *a.cruise;
    setup.flight.cruise_throttle = {cruise.full.worst_throttle + 0.02,
                                    cruise.empty.worst_throttle + 0.02};
    a = assess(setup).value();
    ASSERT_GT(a.cruise->empty.worst_px, a.cruise->full.worst_px);
    ASSERT_NE(gradeOf(a.cruise->full.worst_px, setup.limits.faint_px, setup.limits.bad_px),
              *a.status.grade);
    const std::string text = english(causeText(setup, a));
    EXPECT_EQ(text.find("With the empty pack"), 0u) << text;
    EXPECT_NE(text.find("67"), std::string::npos) << text;

    setup.limits = {.faint_px = 90, .bad_px = 100};
    EXPECT_TRUE(causeText(setup, assess(setup).value()).pattern.empty());
}

}  // namespace
}  // namespace stillbay
