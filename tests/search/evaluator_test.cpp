// SPDX-License-Identifier: MIT
#include "core/search/evaluator.h"

#include "core/assess/assess.h"
#include "core/search/map.h"
#include "core/setup/mount_layout.h"
#include "tests/assess/crafts.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <functional>
#include <set>
#include <string>

namespace stillbay {
namespace {

using Craft = Setup;  // inside TEST the name Setup is taken

constexpr double kRounding = 1e-9;  // relative: other order of summation, another solver

// The warnings of an assessment that put a design out of the question, in the order of Constraint.
const std::array<std::string, 9> kBinding{"tube-buckled", "tube-slack",        "rest-shift",
                                          "tube-bent",    "over-stretched",    "no-rest-3g",
                                          "travel",       "over-stretched-3g", "swings-with-craft"};

std::set<std::string> bindingCodes(const Assessment& assessment)
{
    std::set<std::string> found;
    for (const Warning& warning : assessment.warnings)
        if (std::count(kBinding.begin(), kBinding.end(), warning.code) > 0)
            found.insert(warning.code);
    return found;
}

void expectAgrees(const CruiseWobble& have, const CruiseWobble& want, const char* pack)
{
    EXPECT_NEAR(have.worst_px, want.worst_px, kRounding * want.worst_px) << pack;
    EXPECT_NEAR(have.mean_px, want.mean_px, kRounding * want.mean_px) << pack;
}

void expectAgrees(const CruiseFigures& have, const CruiseFigures& want)
{
    expectAgrees(have.full, want.full, "full");
    expectAgrees(have.empty, want.empty, "empty");
}

// Every design of a coarse map against the whole assessment of the same design.
void expectAgreesOverAMap(const Craft& craft, const MapAxis& x, const MapAxis& y)
{
    const Evaluator evaluator(craft);
    const DesignMap map = mapDesigns(evaluator, wholeDesignOf(craft), x, y, 2).value();
    for (std::size_t i = 0; i < x.count; ++i)
        for (std::size_t j = 0; j < y.count; ++j) {
            SCOPED_TRACE(std::to_string(x.at(i)) + ", " + std::to_string(y.at(j)));
            const Craft at = withDesign(craft, map.design(wholeDesignOf(craft), i, j));
            const auto assessment = assess(at);
            const Evaluation& evaluation = map.at(i, j);
            if (!assessment) {
                EXPECT_FALSE(evaluation.feasible()) << english(assessment.error().what);
                EXPECT_EQ(evaluation.violated == Constraint::OutsideLimits,
                          assessment.error().code == Errc::BadInput);
                continue;
            }
            const auto codes = bindingCodes(*assessment);
            EXPECT_EQ(evaluation.feasible(), codes.empty());
            if (evaluation.violated)
                EXPECT_EQ(codes.count(std::string(constraintCode(*evaluation.violated))), 1U)
                    << constraintCode(*evaluation.violated);
            else
                expectAgrees(evaluation.cruise, *assessment->cruise);
        }
}

// Oracle: assess(), whose figures and warnings have oracles of their own.
TEST(Evaluator, AgreesWithTheAssessmentOfEveryDesign)
{
    expectAgreesOverAMap(test::sampleCraft("reedbed"), {Variable::FreeLength, 1, 71, 6},
                         {Variable::Stretch, 0.9, 1.8, 5});
    expectAgreesOverAMap(test::sampleCraft("saltmarsh"), {Variable::Elevation, -60, 60, 5},
                         {Variable::Stretch, 0.95, 1.7, 5});
    expectAgreesOverAMap(test::sampleCraft("quarry"), {Variable::FreeLength, 16, 44, 6},
                         {Variable::Hardness, 10, 90, 5});
    expectAgreesOverAMap(test::sampleCraft("quarry"), {Variable::OuterDiameter, 5, 14, 4},
                         {Variable::Hardness, 30, 70, 2});
    expectAgreesOverAMap(test::sampleCraft("reedbed"), {Variable::Height, -50, -20, 4},
                         {Variable::Direction, 5, 85, 4});
    expectAgreesOverAMap(test::sampleCraft("saltmarsh"), {Variable::SpreadX, 20, 60, 3},
                         {Variable::SpreadY, 15, 50, 3});
    expectAgreesOverAMap(test::sampleCraft("quarry"), {Variable::BalanceX, -30, 30, 3},
                         {Variable::BalanceZ, -60, 0, 3});
}

// Oracle: assess() of a craft without any symmetry.
TEST(Evaluator, AgreesOnASkewCraft)
{
    for (const unsigned seed : {3U, 8U}) {
        Craft craft = test::skewCraft(seed);
        craft.bay.travel_mm = 100;  // its bay is none that anybody would fly
        const Evaluation evaluation = Evaluator(craft).evaluate(designOf(craft));
        const Assessment assessment = assess(craft).value();
        ASSERT_EQ(evaluation.feasible(), bindingCodes(assessment).empty());
        if (evaluation.feasible())
            expectAgrees(evaluation.cruise, *assessment.cruise);
    }
}

struct Refusal {
    Constraint violated;
    std::function<void(Craft&)> change;
};

std::ostream& operator<<(std::ostream& out, const Refusal& refusal)
{
    return out << constraintCode(refusal.violated);
}

class Refused : public ::testing::TestWithParam<Refusal> {};

// Oracle: mechanics; each craft is the quiet sample with one thing spoilt.
TEST_P(Refused, ByTheReasonThatIsThere)
{
    Craft craft = test::steepReedbed();
    ASSERT_TRUE(Evaluator(craft).evaluate(designOf(craft)).feasible());
    GetParam().change(craft);
    const Evaluation evaluation = Evaluator(craft).evaluate(designOf(craft));
    ASSERT_FALSE(evaluation.feasible());
    EXPECT_EQ(constraintCode(*evaluation.violated), constraintCode(GetParam().violated));
    EXPECT_FALSE(english(violationText(*evaluation.violated)).empty());
}

void setElevation(Craft& craft, double elevation_deg)
{
    for (MountPoint& point : craft.mounts.points)
        point.elevation_deg = elevation_deg;
}

INSTANTIATE_TEST_SUITE_P(
    OneByOne, Refused,
    ::testing::Values(
        // 4δ = 0.3 √(8² − 5²) mm = 1.87 mm
        Refusal{Constraint::OutsideLimits,
                [](Craft& c) {
                    c.mounts.free_length_mm = 1.8;
                }},
        Refusal{Constraint::OutsideLimits,
                [](Craft& c) {
                    c.tube.bore_mm = 8.0;
                }},
        // Posts below a heavy bay.
        Refusal{Constraint::NoRest,
                [](Craft& c) {
                    c.mounts.stretch = 1.0;
                    c.bay.parts[0].mass_g = 9000;
                    setElevation(c, -90);
                }},
        // Pushed together by the drawing already; long and thin, so that Euler's load is small.
        Refusal{Constraint::Buckled,
                [](Craft& c) {
                    c.mounts.free_length_mm = 60;
                    c.mounts.stretch = 0.9;
                    setElevation(c, 0);
                }},
        // The bay stands on its tubes.
        Refusal{Constraint::Slack,
                [](Craft& c) {
                    c.mounts.stretch = 1.0;
                    setElevation(c, -20);
                }},
        // A bay on one tube swings down to hang from it.
        Refusal{Constraint::Bent,
                [](Craft& c) {
                    c.mounts.points.resize(1);
                    c.bay.travel_mm = 1000;
                }},
        // Its tubes let it rise 2 mm.
        Refusal{Constraint::RestShift,
                [](Craft& c) {
                    c.bay.travel_mm = 1;
                }},
        Refusal{Constraint::OverStretched,
                [](Craft& c) {
                    c.mounts.stretch = 1.7;
                }},
        Refusal{Constraint::OverStretchedAt3g,
                [](Craft& c) {
                    c.mounts.free_length_mm = 12;
                    c.mounts.stretch = 0.95;
                    c.tube.hardness_shore_a = 25;
                    c.bay.parts[0].mass_g = 1200;
                    setElevation(c, 34);
                }},
        // Held between tubes above and below it, of which 3 g crushes those below.
        Refusal{Constraint::NoRestAt3g,
                [](Craft& c) {
                    c.mounts.free_length_mm = 12;
                    c.mounts.stretch = 1.2;
                    c.tube.hardness_shore_a = 25;
                    c.bay.parts[0].mass_g = 1200;
                    setElevation(c, 68);
                    c.mounts.points[1].elevation_deg = -68;
                    c.mounts.points[3].elevation_deg = -68;
                }},
        Refusal{Constraint::HitsTravel,
                [](Craft& c) {
                    c = test::sampleCraft("reedbed");  // rests where it is drawn
                    c.bay.travel_mm = 0.5;
                }},
        Refusal{Constraint::SwingsWithCraft, [](Craft& c) {
                    c.mounts.free_length_mm = 50;
                    c.bay.travel_mm = 100;
                }}));

// Oracle: assess() of the craft as that build has it; a drilled craft, so that a longer tube on the
// same holes is one that the setup file can hold.
TEST(Evaluator, BuildsAreWhatTheCraftWouldBe)
{
    const Craft plan = test::sampleCraft("quarry");
    ToleranceSample build{.cuts_mm = std::vector<double>(plan.mounts.points.size(), 0.4),
                          .modulus = 1.1,
                          .bay = 0.95,
                          .battery = 1.2,
                          .unbalance = 1.5};
    Craft built = plan;
    built.mounts.free_length_mm += 0.4;
    built.tube.youngs_modulus_mpa = 1.1 * *plan.tube.youngs_modulus_mpa;
    const auto heaviest =
        std::max_element(built.bay.parts.begin(), built.bay.parts.end(),
                         [](const Part& a, const Part& b) { return a.mass_g < b.mass_g; });
    heaviest->mass_g *= 1.2;
    for (Part& part : built.bay.parts)
        part.mass_g *= 0.95;
    built.drive.unbalance_g_mm *= 1.5;

    const Evaluator evaluator(plan, {}, Throttles::All);
    const SampleWobble wobble = evaluator.wobbleOf(designOf(plan), build);
    const Assessment expected = assess(built).value();
    ASSERT_FALSE(wobble.violated);
    const std::vector<double>& full_px = wobble.flight.full.wobble_px;
    ASSERT_EQ(full_px.size(), evaluator.throttle().size());
    std::size_t k = 0;
    for (const ThrottlePoint& point : expected.throttle) {  // finer ones stand between
        while (k < evaluator.throttle().size() && evaluator.throttle()[k] < point.throttle)
            ++k;
        ASSERT_LT(k, evaluator.throttle().size());
        ASSERT_EQ(evaluator.throttle()[k], point.throttle);
        EXPECT_NEAR(full_px[k], point.wobble_px, kRounding * point.wobble_px);
    }
    expectAgrees(evaluator.overCruise(wobble.flight), *expected.cruise);
}

// Oracle: assess() of the planned craft whose points and directions are where that build has them.
TEST(Evaluator, BuildsHoldTheBayWhereTheyDo)
{
    const Craft plan = test::steepReedbed();
    const ToleranceSample build{.holes_mm = {{1, 0, -1}, {0.5, -1, 0}, {0, 0, 1}, {-1, 1, 0.2}},
                                .directions_deg = {2, -1, 0, 1.5}};
    Craft built = plan;
    for (std::size_t i = 0; i < 4; ++i) {
        MountPoint& point = built.mounts.points[i];
        for (std::size_t axis = 0; axis < 3; ++axis)
            point.bay_mm.at(axis) += build.holes_mm[i].at(axis);
        point.azimuth_deg += build.directions_deg[i];
    }
    const Evaluator evaluator(plan);
    const SampleWobble wobble = evaluator.wobbleOf(designOf(plan), build);
    ASSERT_FALSE(wobble.violated);
    expectAgrees(evaluator.overCruise(wobble.flight), *assess(built).value().cruise);
}

// Oracle: mirror symmetry; left and right exchanged, every variable does the same.
TEST(Evaluator, MirroredCraftsAnswerAlike)
{
    for (const char* name : {"reedbed", "quarry"}) {
        const Craft craft = test::sampleCraft(name), twin = test::mirrored(craft);
        const Evaluator evaluator(craft), mirrored(twin);
        for (const Variable variable : kVariables) {
            if (!canSet(craft.mounts, variable))
                continue;
            Design a = wholeDesignOf(craft), b = wholeDesignOf(twin);
            const double value = valueOf(a, variable) + 2 * grainOf(variable);
            EXPECT_NEAR(valueOf(b, variable), valueOf(a, variable), 1e-9);
            setValue(a, variable, value);
            setValue(b, variable, value);
            const Evaluation here = evaluator.evaluate(a), there = mirrored.evaluate(b);
            EXPECT_EQ(here.violated, there.violated) << fieldOf(variable).key;
            if (here.feasible()) {
                EXPECT_NEAR(here.cruise.worst_px(), there.cruise.worst_px(),
                            1e-5 * here.cruise.worst_px())
                    << name << fieldOf(variable).key;
            }
        }
    }
}

// Oracle: symmetry; exchanging left and right exchanges the cuts of the tubes.
TEST(Evaluator, EachTubeHasItsOwnCut)
{
    const Craft craft = test::sampleCraft("reedbed");  // points: left, left, right, right
    const Evaluator evaluator(craft);
    const auto worst = [&](std::vector<double> cuts_mm) {
        const SampleWobble wobble =
            evaluator.wobbleOf(designOf(craft), {.cuts_mm = std::move(cuts_mm)});
        EXPECT_FALSE(wobble.violated);
        return evaluator.overCruise(wobble.flight).full.worst_px;
    };
    const double planned = worst({}), left = worst({1, 0, 0, 0}), right = worst({0, 0, 0, 1});
    EXPECT_EQ(worst({0, 0, 0, 0}), planned);
    EXPECT_NEAR(left, right, 1e-6 * left);
    EXPECT_GT(std::abs(left - planned), 1e-3 * planned);
}

// Oracle: mechanics; tubes that are barely stretched hold the bay all the same. The energy of such
// tubes must keep its digits, or the search for the rest goes astray at single places.
TEST(Evaluator, FindsARestWhereTubesAreBarelyStretched)
{
    const Craft craft = test::sampleCraft("quarry");
    const Evaluator evaluator(craft, {.throttle = Grid{0.3, 0.5, 0.1}});
    const DesignMap map =
        mapDesigns(evaluator, designOf(craft), {Variable::FreeLength, 29.5, 31, 31},
                   {Variable::Hardness, 60, 90, 31})
            .value();
    for (const Evaluation& evaluation : map.cells)
        EXPECT_NE(evaluation.violated, Constraint::NoRest);
}

// Oracle: definition; a window between two grid points is seen at its ends.
TEST(Evaluator, SeesANarrowCruiseWindow)
{
    Craft craft = test::sampleCraft("reedbed");
    craft.flight.cruise_throttle = {0.301, 0.304};
    const Evaluator evaluator(craft);
    const std::vector<double> wanted{0.3, 0.301, 0.304, 0.305};  // a step beyond either end
    ASSERT_EQ(evaluator.throttle().size(), wanted.size());
    for (std::size_t i = 0; i < wanted.size(); ++i)
        EXPECT_NEAR(evaluator.throttle()[i], wanted[i], 1e-12);
    const Evaluation evaluation = evaluator.evaluate(designOf(craft));
    const Assessment there =
        assess(craft, {.throttle = Grid{0.301, 0.304, 0.003}, .frequency_hz = {1, 1, 1}}).value();
    EXPECT_NEAR(evaluation.cruise.full.worst_px,
                std::max(there.throttle[0].wobble_px, there.throttle[1].wobble_px),
                kRounding * evaluation.cruise.full.worst_px);
}

// Oracle: definition.
TEST(Evaluation, FeasibleFirstThenWorstThenMean)
{
    const auto evaluation = [](double full_px, double fullMean_px, double empty_px,
                               double emptyMean_px) {
        return Evaluation{{}, {{full_px, 0.3, fullMean_px}, {empty_px, 0.3, emptyMean_px}}};
    };
    const Evaluation a = evaluation(1.0, 0.5, 0.5, 0.1), worse = evaluation(0.2, 0.1, 1.1, 0.1),
                     sameWorst = evaluation(1.0, 0.4, 0.9, 0.3), refused{Constraint::Slack, {}};
    EXPECT_TRUE(a.isBetterThan(worse));
    EXPECT_FALSE(worse.isBetterThan(a));
    EXPECT_TRUE(a.isBetterThan(sameWorst));  // means 0.3 and 0.35
    EXPECT_FALSE(sameWorst.isBetterThan(a));
    EXPECT_TRUE(worse.isBetterThan(refused));
    EXPECT_FALSE(refused.isBetterThan(refused));
    EXPECT_FALSE(a.isBetterThan(a));
}

}  // namespace
}  // namespace stillbay
