// SPDX-License-Identifier: MIT
#include "core/advice/suggestions.h"

#include "app/commands/command.h"
#include "core/design/design.h"
#include "core/response/level.h"
#include "core/setup/validate.h"
#include "core/tube/rubber.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <limits>
#include <map>
#include <set>
#include <string>
#include <tuple>

namespace stillbay {
namespace {

constexpr const char* kSamples[] = {"quarry", "reedbed", "saltmarsh"};

Setup sample(const std::string& name)
{
    return loadSetup(STILLBAY_SAMPLES_DIR "/" + name + ".stillbay").value().setup;
}

std::map<std::string, PracticalStep> stepsOf(const Setup& setup)
{
    std::map<std::string, PracticalStep> found;
    for (const PracticalStep& step : practicalSteps(setup)) {
        EXPECT_TRUE(found.emplace(step.code, step).second) << step.code << " comes twice";
        EXPECT_TRUE(validate(step.setup)) << step.code;
        EXPECT_NE(step.setup, setup) << step.code;
        EXPECT_FALSE(english(step.text).empty());
    }
    return found;
}

std::vector<std::string> codesOf(const Setup& setup)
{
    std::vector<std::string> codes;
    for (const auto& [code, step] : stepsOf(setup))
        codes.push_back(code);
    return codes;
}

std::set<std::string> warningCodes(const std::vector<Warning>& warnings)
{
    std::set<std::string> codes;
    for (const Warning& warning : warnings)
        codes.insert(warning.code);
    return codes;
}

TEST(PracticalSteps, APlanHasEveryVariableEachByItsOwnStep)
{
    const stillbay::Setup start = sample("saltmarsh");
    ASSERT_FALSE(start.mounts.drilled());
    const auto steps = stepsOf(start);
    const auto expect = [&](const char* code, const std::function<void(stillbay::Setup&)>& change) {
        stillbay::Setup wanted = start;
        change(wanted);
        ASSERT_TRUE(steps.contains(code)) << code;
        EXPECT_EQ(steps.at(code).setup, wanted) << code;
    };
    const double length = start.mounts.free_length_mm, stretch = *start.mounts.stretch;
    const auto stretched = [stretch](stillbay::Setup& s, double by) {  // own ones by as much
        s.mounts.stretch = std::round(1e4 * (stretch + by)) / 1e4;
        for (MountPoint& point : s.mounts.points)
            if (point.stretch)
                point.stretch = std::round(1e4 * (*point.stretch + by)) / 1e4;
    };
    expect("tubes-shorter", [&](stillbay::Setup& s) { s.mounts.free_length_mm = length - 5; });
    expect("tubes-longer", [&](stillbay::Setup& s) { s.mounts.free_length_mm = length + 5; });
    expect("stretch-more", [&](stillbay::Setup& s) { stretched(s, 0.05); });
    expect("stretch-less", [&](stillbay::Setup& s) { stretched(s, -0.05); });
    expect("anchors-higher", [](stillbay::Setup& s) {
        for (MountPoint& point : s.mounts.points)
            point.elevation_deg += 10;
    });
    expect("anchors-lower", [](stillbay::Setup& s) {
        for (MountPoint& point : s.mounts.points)
            point.elevation_deg -= 10;
    });
    expect("tubes-softer", [](stillbay::Setup& s) { s.tube.hardness_shore_a -= 10; });
    expect("tubes-harder", [](stillbay::Setup& s) { s.tube.hardness_shore_a += 10; });
    expect("exposure-longer", [](stillbay::Setup& s) { s.camera.exposure_ms *= 2; });
    expect("propellers-balanced", [](stillbay::Setup& s) { s.drive.unbalance_g_mm /= 2; });
    expect("arms-thicker", [](stillbay::Setup& s) {
        s.airframe.arm.width_mm += 1;
        s.airframe.arm.height_mm += 1;
    });
    expect("arm-walls-thicker", [](stillbay::Setup& s) { *s.airframe.arm.wall_mm += 1; });
    EXPECT_GE(steps.size(), 12u + 8u);  // and those of where the bay is held
}

// Oracle: definition; each step moves one variable by 5 mm or 10°, and a bay that rests as drawn
// does so afterwards wherever anything can hang it.
TEST(PracticalSteps, WhereTheBayIsHeldMovesOneVariableAndStaysLevel)
{
    const stillbay::Setup start = sample("reedbed");
    const auto steps = stepsOf(start);
    const Design before = wholeDesignOf(start);
    for (const auto& [code, variable, by] :
         {std::tuple("points-lower", Variable::Height, -5.0),
          std::tuple("points-higher", Variable::Height, 5.0),
          std::tuple("points-nearer-fore-aft", Variable::SpreadX, -5.0),
          std::tuple("points-wider-fore-aft", Variable::SpreadX, 5.0),
          std::tuple("points-nearer-sideways", Variable::SpreadY, -5.0),
          std::tuple("points-wider-sideways", Variable::SpreadY, 5.0),
          std::tuple("tubes-fore-aft", Variable::Direction, -10.0),
          std::tuple("tubes-sideways", Variable::Direction, 10.0),
          std::tuple("heaviest-back", Variable::BalanceX, -5.0),
          std::tuple("heaviest-forward", Variable::BalanceX, 5.0),
          std::tuple("heaviest-lower", Variable::BalanceZ, -5.0),
          std::tuple("heaviest-higher", Variable::BalanceZ, 5.0)}) {
        ASSERT_TRUE(steps.contains(code)) << code;
        const Design after = wholeDesignOf(steps.at(code).setup);
        for (const Variable other : kVariables)
            if (other != Variable::Elevation) {  // keeping it level decides them
                EXPECT_NEAR(valueOf(after, other),
                            valueOf(before, other) + (other == variable ? by : 0), 1e-9)
                    << code << ' ' << fieldOf(other).key;
            }
        const Levelled rest = level(steps.at(code).setup).value();
        EXPECT_FALSE(rest.why) << code;
        EXPECT_EQ(rest.mounts, steps.at(code).setup.mounts) << code;  // it is level already
    }
    const auto drilled = stepsOf(sample("quarry"));
    EXPECT_FALSE(drilled.contains("points-lower"));
    EXPECT_FALSE(drilled.contains("tubes-sideways"));
    EXPECT_TRUE(drilled.contains("heaviest-higher"));
}

// Oracle: defining equation, stretch = distance of the ends / free length, holes untouched.
TEST(PracticalSteps, DrilledHolesStayAndTheFreeLengthMakesTheStretch)
{
    const stillbay::Setup start = sample("quarry");
    ASSERT_TRUE(start.mounts.drilled());
    const auto steps = stepsOf(start);
    EXPECT_FALSE(steps.contains("tubes-shorter"));
    EXPECT_FALSE(steps.contains("anchors-higher"));
    double sum = 0.0;
    for (const MountPoint& point : start.mounts.points)
        sum += std::hypot((*point.anchor_mm)[0] - point.bay_mm[0],
                          (*point.anchor_mm)[1] - point.bay_mm[1],
                          (*point.anchor_mm)[2] - point.bay_mm[2]);
    const double mean = sum / static_cast<double>(start.mounts.points.size());
    const double before = mean / start.mounts.free_length_mm;
    for (const auto& [code, change] : {std::pair("stretch-more", 0.05), {"stretch-less", -0.05}}) {
        const Mounts& after = steps.at(code).setup.mounts;
        EXPECT_EQ(after.points, start.mounts.points);
        EXPECT_FALSE(after.stretch);
        // The knife follows a hundredth of a millimetre.
        EXPECT_NEAR(mean / after.free_length_mm, before + change,
                    0.005 * mean / (after.free_length_mm * after.free_length_mm) + 1e-9);
    }
}

// Oracle: the setups before and after, subtracted here.
TEST(PracticalSteps, SayByHowMuchAndWhereTo)
{
    const auto told = [](double number) {
        char text[32];
        std::snprintf(text, sizeof text, "%.10g", std::round(1e4 * number) / 1e4);
        return std::string(text);
    };
    const auto expect = [](const PracticalStep& step, const std::string& text) {
        EXPECT_EQ(english(step.text), text) << step.code;
    };
    const stillbay::Setup plan = sample("saltmarsh");
    auto steps = stepsOf(plan);
    for (const auto& [code, word] :
         {std::pair("tubes-shorter", "shorter"), {"tubes-longer", "longer"}}) {
        const double to = steps.at(code).setup.mounts.free_length_mm;
        expect(steps.at(code), "Tubes " + told(std::abs(to - plan.mounts.free_length_mm)) +
                                   "\u00a0mm " + word + ": " + told(to) + "\u00a0mm free");
    }
    for (const auto& [code, sign] : {std::pair("stretch-more", "+"), {"stretch-less", "−"}}) {
        const double to = *steps.at(code).setup.mounts.stretch;
        expect(steps.at(code), std::string("Stretch ") + sign +
                                   told(100 * std::abs(to - *plan.mounts.stretch)) +
                                   " points: to " + told(100 * (to - 1)) + "\u00a0%");
    }
    for (const auto& [code, word] :
         {std::pair("anchors-higher", "more"), {"anchors-lower", "less"}}) {
        const double by = steps.at(code).setup.mounts.points[0].elevation_deg -
                          plan.mounts.points[0].elevation_deg;
        expect(steps.at(code), "Elevation of the tubes " + told(std::abs(by)) + "° " + word);
    }
    for (const auto& [code, word] :
         {std::pair("tubes-softer", "softer"), {"tubes-harder", "harder"}}) {
        const double to = steps.at(code).setup.tube.hardness_shore_a;
        expect(steps.at(code), "Tubes " + told(std::abs(to - plan.tube.hardness_shore_a)) +
                                   "\u00a0Shore " + word + ": " + told(to) + "\u00a0Shore\u00a0A");
    }
    const stillbay::Setup drilled = sample("quarry");
    steps = stepsOf(drilled);
    for (const auto& [code, sign] : {std::pair("stretch-more", "+"), {"stretch-less", "−"}})
        expect(steps.at(code), std::string("Stretch ") + sign +
                                   "5 points: " + told(steps.at(code).setup.mounts.free_length_mm) +
                                   "\u00a0mm free");
}

TEST(PracticalSteps, AMeasuredModulusKeepsItsRatioToTheHardness)
{
    const stillbay::Setup start = sample("quarry");
    ASSERT_TRUE(start.tube.youngs_modulus_mpa);
    const TubeKind softer = stepsOf(start).at("tubes-softer").setup.tube;
    EXPECT_EQ(softer.hardness_shore_a, start.tube.hardness_shore_a - 10);
    EXPECT_NEAR(*softer.youngs_modulus_mpa / *start.tube.youngs_modulus_mpa,
                youngsModulusFromShoreA(softer.hardness_shore_a) /
                    youngsModulusFromShoreA(start.tube.hardness_shore_a),
                5e-5 / *start.tube.youngs_modulus_mpa);  // it is rounded to four decimals
}

TEST(PracticalSteps, WhatTheFileWouldRefuseOrChangesNothingIsLeftOut)
{
    stillbay::Setup setup = sample("reedbed");
    ASSERT_FALSE(setup.airframe.arm.wall_mm);
    setup.drive.unbalance_g_mm = 0;
    setup.camera.exposure_ms = 30;  // of a frame's 33
    setup.tube.hardness_shore_a = 90;
    setup.mounts.free_length_mm = 4;
    setup.mounts.stretch = 0.72;
    setup.mounts.points.front().elevation_deg = 85;
    std::vector<std::string> codes = codesOf(setup);
    std::erase_if(codes, [](const std::string& code) {  // of where the bay is held
        return code.starts_with("points-") || code.starts_with("heaviest-") ||
               code == "tubes-sideways" || code == "tubes-fore-aft";
    });
    EXPECT_EQ(codes, (std::vector<std::string>{"anchors-lower", "arms-thicker", "stretch-more",
                                               "tubes-longer", "tubes-softer"}));
}

// Oracle: independent path, a fresh assessment of each changed craft at the default grids.
TEST(FindSuggestions, EachNumberIsTheOneTheAssessmentShows)
{
    for (const char* name : kSamples) {
        const stillbay::Setup setup = sample(name);
        const Assessment shown = assess(setup).value();
        const Suggestions suggestions = findSuggestions(setup).value();
        EXPECT_EQ(suggestions.before_px, shown.cruise->worst_px()) << name;
        EXPECT_GE(suggestions.all.size(), 8u);
        const std::set<std::string> before = warningCodes(shown.warnings);
        for (const Suggestion& suggestion : suggestions.all) {
            const Assessment after = assess(suggestion.step.setup).value();
            EXPECT_EQ(suggestion.after_px, after.cruise->worst_px())
                << name << ' ' << suggestion.step.code;
            std::set<std::string> fresh = warningCodes(after.warnings);
            for (const std::string& code : before)
                fresh.erase(code);
            EXPECT_EQ(warningCodes(suggestion.newWarnings), fresh)
                << name << ' ' << suggestion.step.code;
        }
        EXPECT_TRUE(std::is_sorted(
            suggestions.all.begin(), suggestions.all.end(),
            [](const Suggestion& a, const Suggestion& b) { return a.after_px < b.after_px; }));
    }
}

// Oracle: the assessments' own curves; a step that makes the film worse outside of the cruise
// window than it was anywhere there says so, no other does.
TEST(FindSuggestions, TellWhereTheyOnlyMoveTheWobble)
{
    int moved = 0, quiet = 0;
    for (const char* name : kSamples) {
        const stillbay::Setup setup = sample(name);
        const auto outside = [&setup](const Assessment& assessment) {
            double worst = 0;
            for (const WobbleAt& at : assessment.curve)
                if (at.throttle < setup.flight.cruise_throttle[0] ||
                    at.throttle > setup.flight.cruise_throttle[1])
                    worst = std::max(worst, at.wobble_px);
            return worst;
        };
        const double before = outside(assess(setup).value());
        const Suggestions suggestions = findSuggestions(setup).value();
        for (const Suggestion& suggestion : suggestions.all) {
            const double after = outside(assess(suggestion.step.setup).value());
            const bool isWorse = after > 1.1 * before && after >= setup.limits.faint_px;
            EXPECT_EQ(suggestion.movedTo.has_value(), isWorse) << suggestion.step.code;
            if (suggestion.movedTo) {
                EXPECT_NEAR(suggestion.movedTo->wobble_px, after, 1e-9);
                const std::string text = english(movedText(*suggestion.movedTo));
                const long percent = std::lround(100 * suggestion.movedTo->throttle);
                EXPECT_TRUE(text.starts_with("outside of cruise")) << text;
                EXPECT_TRUE(text.ends_with(" at " + std::to_string(percent) + "\u00A0% throttle"))
                    << text;
            }
            ++(isWorse ? moved : quiet);
        }
    }
    EXPECT_GT(moved, 0);
    EXPECT_GT(quiet, 0);
}

// Oracle: closed form, the once-per-turn wobble is proportional to the unbalance.
TEST(FindSuggestions, HalfTheUnbalanceHalvesTheWobbleOfUnbalanceAlone)
{
    stillbay::Setup setup = sample("quarry");
    setup.drive.blade_pass_thrust_fraction = {0.0, 0.0};
    const Suggestions suggestions = findSuggestions(setup).value();
    const auto balanced = std::find_if(
        suggestions.all.begin(), suggestions.all.end(),
        [](const Suggestion& suggestion) { return suggestion.step.code == "propellers-balanced"; });
    ASSERT_NE(balanced, suggestions.all.end());
    EXPECT_NEAR(balanced->after_px, *suggestions.before_px / 2,
                64 * std::numeric_limits<double>::epsilon() * *suggestions.before_px);
}

// Oracle: the assessment of each craft. What lets a craft fly comes before all that leaves it on
// the ground, however quiet, and what the craft may fly with comes next.
TEST(FindSuggestions, WhatLetsTheCraftFlyComesFirst)
{
    stillbay::Setup setup = sample("reedbed");
    setup.bay.travel_mm = 3.0;
    for (MountPoint& point : setup.mounts.points)
        point.elevation_deg = -20;  // the bay hangs below its drawn place
    ASSERT_FALSE(assess(setup).value().status.flyable);
    const Suggestions suggestions = findSuggestions(setup).value();
    bool mayFly = true;
    std::size_t mending = 0;
    for (const Suggestion& suggestion : suggestions.all) {
        EXPECT_EQ(suggestion.mayFly, assess(suggestion.step.setup).value().status.flyable);
        EXPECT_EQ(suggestion.mends, suggestion.mayFly);
        EXPECT_TRUE(mayFly || !suggestion.mayFly);
        mayFly = suggestion.mayFly;
        mending += suggestion.mends ? 1 : 0;
    }
    EXPECT_GT(mending, 0u);
    ASSERT_TRUE(suggestions.next());
    EXPECT_EQ(suggestions.next()->step.code, "hang-level");

    const Suggestion quietButGrounded{{"x", {}, {}}, 0.1, {}, false, false, {}};
    EXPECT_FALSE((Suggestions{1.0, {quietButGrounded}, false}.next()));
}

TEST(FindSuggestions, TheBestAreThoseThatHelpAndNoMore)
{
    const auto suggestion = [](double after_px) {
        return Suggestion{{"x", {}, {}}, after_px, {}};
    };
    const Suggestions suggestions{
        1.0,
        {suggestion(0.2), suggestion(0.5), suggestion(0.99), suggestion(0.995), suggestion(1.5)},
        false};
    EXPECT_EQ(suggestions.best(5).size(), 3u);
    EXPECT_EQ(suggestions.best(2).size(), 2u);
    EXPECT_EQ(suggestions.best(2).back().after_px, 0.5);
    EXPECT_TRUE((Suggestions{0.0, {suggestion(0.0)}, false}.best(5).empty()));
}

TEST(FindSuggestions, AStepWithoutAnAnswerIsLeftOut)
{
    stillbay::Setup setup = sample("reedbed");
    setup.mounts.free_length_mm = 6;  // 1 mm would be too short for the model, but may be saved
    ASSERT_TRUE(stepsOf(setup).contains("tubes-shorter"));
    const Suggestions suggestions = findSuggestions(setup).value();
    EXPECT_EQ(suggestions.all.size(), practicalSteps(setup).size() - 1);
    for (const Suggestion& left : suggestions.all)
        EXPECT_NE(left.step.code, "tubes-shorter");
}

TEST(FindSuggestions, ACraftWithoutAnAnswerSaysWhy)
{
    stillbay::Setup setup = sample("reedbed");
    setup.mounts.free_length_mm = 1;
    const auto suggestions = findSuggestions(setup);
    ASSERT_FALSE(suggestions);
    EXPECT_EQ(suggestions.error(), assess(setup).error());
}

TEST(FindSuggestions, StopsWhenAskedAndCountsEveryStep)
{
    const stillbay::Setup setup = sample("reedbed");
    std::size_t calls = 0;
    std::stop_source stop;
    const auto stopped =
        findSuggestions(setup, {}, stop.get_token(), [&](std::size_t done, std::size_t) {
            ++calls;
            if (done == 3)
                stop.request_stop();
        });
    ASSERT_TRUE(stopped);
    EXPECT_TRUE(stopped->stopped);
    EXPECT_LE(stopped->all.size(), 3u);
    EXPECT_EQ(calls, 3u);

    std::vector<std::size_t> steps;
    const Suggestions whole =
        findSuggestions(setup, {}, {}, [&](std::size_t done, std::size_t total) {
            EXPECT_EQ(total, practicalSteps(setup).size());
            steps.push_back(done);
        }).value();
    EXPECT_FALSE(whole.stopped);
    ASSERT_EQ(steps.size(), practicalSteps(setup).size());
    EXPECT_EQ(steps.front(), 1u);
    EXPECT_EQ(steps.back(), steps.size());
}

TEST(FindSuggestions, ATubeThatGoesSlackIsADanger)
{
    stillbay::Setup setup = sample("reedbed");
    setup.mounts.stretch = 1.02;
    for (MountPoint& point : setup.mounts.points)
        point.elevation_deg = -10;  // the bay stands on its anchors: weight pushes
    ASSERT_FALSE(warningCodes(assess(setup).value().warnings).contains("tube-slack"));
    const Suggestions suggestions = findSuggestions(setup).value();
    std::map<std::string, std::string> dangers;
    for (const Suggestion& suggestion : suggestions.all)
        for (const Warning& warning : suggestion.newWarnings)
            dangers[suggestion.step.code] += english(dangerText(warning));
    EXPECT_EQ(dangers["stretch-less"].find("a tube goes slack"), 0u);
    EXPECT_EQ(dangers["stretch-more"], "");
    EXPECT_EQ(dangerText({"order-meets-arm", {}}), Phrase{});
}

}  // namespace
}  // namespace stillbay
