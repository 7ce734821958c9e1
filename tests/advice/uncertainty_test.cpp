// SPDX-License-Identifier: MIT
#include "core/advice/uncertainty.h"

#include "app/commands/command.h"
#include "core/advice/sampled_cruise.h"
#include "core/advice/uncertainty_texts.h"
#include "core/assess/assess.h"
#include "core/craft/craft.h"
#include "core/response/tolerances.h"
#include "core/setup/sources.h"
#include "core/tube/rubber.h"
#include "tests/assess/crafts.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <random>

namespace stillbay {
namespace {

Setup reference()
{
    return loadSetup(STILLBAY_REFERENCE_DIR "/reedbed.stillbay").value().setup;
}

std::map<std::string, UncertainInput> inputsOf(const Setup& setup)
{
    std::map<std::string, UncertainInput> byKey;
    for (UncertainInput& input : uncertainInputs(setup))
        EXPECT_TRUE(byKey.emplace(input.key, input).second) << input.key;
    return byKey;
}

// The standard deviation of a number's logarithm, from its value at one of them.
double sigmaOf(const Setup& setup, const std::string& key,
               const std::function<double(const Setup&)>& number)
{
    constexpr double kOneSigma = 0.8413447;
    const UncertainInput input = inputsOf(setup).at(key);
    const auto at = [&](double u) {
        CraftSample craft{setup, {}};
        input.apply(std::span(&u, 1), craft);
        return number(craft.setup);
    };
    return std::log(at(kOneSigma) / at(0.5));
}

double modulus(const Setup& setup)
{
    return *setup.tube.youngs_modulus_mpa;
}

// Oracle: definition. What is unknown of the unbalance scales every motor's, and a measurement of
// each motor tells how well they are known.
TEST(UncertainInputs, ScaleTheUnbalanceOfEveryMotor)
{
    stillbay::Setup setup = reference();
    setup.airframe.arms[1].unbalance_g_mm = 7.0;
    const auto own = [](const stillbay::Setup& s) {
        return *s.airframe.arms[1].unbalance_g_mm;
    };
    const auto common = [](const stillbay::Setup& s) {
        return s.drive.unbalance_g_mm;
    };
    const std::string key = "drive.unbalance_g_mm";
    EXPECT_GT(sigmaOf(setup, key, own), 0.4);
    EXPECT_NEAR(sigmaOf(setup, key, own), sigmaOf(setup, key, common), 1e-12);
    for (Arm& arm : setup.airframe.arms)
        arm.unbalance_g_mm = 3.0;
    putSource(setup, {.key = "airframe.arms[0].unbalance_g_mm",
                      .from = Origin::Measured,
                      .spread = 0.1,
                      .note = {},
                      .date = {}});
    EXPECT_NEAR(sigmaOf(setup, "airframe.arms[0].unbalance_g_mm", own), 0.1, 1e-3);
    setup.airframe.arms[2].unbalance_g_mm = 9.0;  // shakes the most, so its doubt counts
    putSource(setup, {.key = "airframe.arms[2].unbalance_g_mm",
                      .from = Origin::Measured,
                      .spread = 0.2,
                      .note = {},
                      .date = {}});
    EXPECT_NEAR(sigmaOf(setup, "airframe.arms[2].unbalance_g_mm", own), 0.2, 3e-3);
}

// Oracle: definition. A curve that was laid through measured speeds has taken in what KV and power
// coefficient are off, a typed one has not; better sources of their own stay.
TEST(UncertainInputs, AThrottleCurveThroughMeasuredSpeedsHoldsThem)
{
    stillbay::Setup setup = reference();
    setup.drive.throttle_curve = {{0.3, 0.2}, {0.6, 0.5}};
    const char* const kv = "drive.motor.kv_rpm_per_v";
    const double typed = *spreadOf(setup, kv);
    EXPECT_GT(typed, 0.04);
    Source curve{.key = "drive.throttle_curve",
                 .from = Origin::Measured,
                 .spread = 0.016,
                 .note = {},
                 .date = {}};
    putSource(setup, curve);
    EXPECT_NEAR(*spreadOf(setup, kv), 0.016, 1e-6);
    EXPECT_NEAR(*spreadOf(setup, "drive.propeller.power_coefficient"), 0.016, 1e-6);
    putSource(setup, {.key = kv, .from = Origin::Measured, .spread = 0.01, .note = {}, .date = {}});
    EXPECT_NEAR(*spreadOf(setup, kv), 0.01, 1e-6);
    dropSource(setup, kv);
    curve.from = Origin::Label;
    putSource(setup, curve);
    EXPECT_NEAR(*spreadOf(setup, kv), typed, 1e-9);
}

// Oracle: the ranges of docs/theory.md, which hold nine of ten: ±1.645 standard deviations. The
// quantile is good to 4.5e-4.
TEST(UncertainInputs, SpreadAsTheTheorySays)
{
    stillbay::Setup setup = reference();
    setup.tube.youngs_modulus_mpa.reset();
    const auto near = [](double sigma, double factor) {
        EXPECT_NEAR(sigma, std::log(factor) / 1.645, 1e-3 * sigma);
    };
    near(sigmaOf(setup, "tube.youngs_modulus_mpa", modulus), 1.5);
    near(sigmaOf(setup, "drive.unbalance_g_mm",
                 [](const stillbay::Setup& s) { return s.drive.unbalance_g_mm; }),
         2);
    near(sigmaOf(setup, "drive.motor.kv_rpm_per_v",
                 [](const stillbay::Setup& s) { return s.drive.motor.kv_rpm_per_v; }),
         1.07);
    near(sigmaOf(setup, "tube.loss_factor",
                 [](const stillbay::Setup& s) { return s.tube.loss_factor; }),
         2);
    setup.drive.propeller.power_coefficient.reset();
    near(sigmaOf(setup, "drive.propeller.power_coefficient",
                 [](const stillbay::Setup& s) { return *s.drive.propeller.power_coefficient; }),
         1.25);
}

// Oracle: the same table, of the numbers that are wide as from one value to another, and of those
// that the program estimated.
TEST(UncertainInputs, SpreadAsWideAsTheTheorySays)
{
    stillbay::Setup setup = reference();
    setup.sources.clear();
    setup.tube.dynamic_ratio = 2.0;  // far from the least there is, 1
    setup.airframe.arm.root_stiffness_nm_per_rad = 100;
    setup.drive.propeller.thrust_coefficient.reset();
    setup.drive.propeller.inertia_g_mm2.reset();
    const auto expect = [&](const char* key, double sigma, auto number) {
        EXPECT_NEAR(sigmaOf(setup, key, number), sigma, 1e-3 * sigma) << key;
    };
    const auto factor = [](double f) {
        return std::log(f) / 1.645;
    };
    using Craft = stillbay::Setup;
    expect("tube.dynamic_ratio", factor(std::sqrt(1.4 / 1.1)),
           [](const Craft& s) { return s.tube.dynamic_ratio; });
    expect("tube.loss_factor", factor(std::sqrt(0.2 / 0.05)),
           [](const Craft& s) { return s.tube.loss_factor; });
    expect("airframe.arm.youngs_modulus_gpa", factor(1.15),
           [](const Craft& s) { return s.airframe.arm.youngs_modulus_gpa; });
    expect("airframe.arm.loss_factor", factor(std::sqrt(0.03 / 0.005)),
           [](const Craft& s) { return s.airframe.arm.loss_factor; });
    expect("drive.propeller.thrust_coefficient", factor(1.15),
           [](const Craft& s) { return *s.drive.propeller.thrust_coefficient; });
    expect("drive.propeller.inertia_g_mm2", factor(1.3),
           [](const Craft& s) { return *s.drive.propeller.inertia_g_mm2; });
    // A given root counts as measured to 20 %: the logarithm's deviation of that spread.
    expect("airframe.arm.root_stiffness_nm_per_rad", std::sqrt(std::log1p(0.2 * 0.2)),
           [](const Craft& s) { return *s.airframe.arm.root_stiffness_nm_per_rad; });
}

// Oracle: definition. The middle of what is not known is the craft as it is: an estimate keeps its
// value, a modulus the one of its hardness.
TEST(UncertainInputs, HaveTheCraftInTheirMiddle)
{
    stillbay::Setup setup = reference();
    setup.tube.youngs_modulus_mpa.reset();
    setup.drive.propeller.thrust_coefficient.reset();
    setup.drive.propeller.power_coefficient.reset();
    setup.drive.propeller.inertia_g_mm2.reset();
    setup.airframe.arm.root_stiffness_nm_per_rad = 100;
    const auto inputs = uncertainInputs(setup);
    const stillbay::Setup middle =
        craftAt(setup, inputs, std::vector<double>(dimensionsOf(inputs), 0.5)).setup;
    const PropellerFigures before = propellerFigures(setup.drive.propeller),
                           after = propellerFigures(middle.drive.propeller);
    EXPECT_NEAR(after.thrust_coefficient / before.thrust_coefficient, 1, 1e-3);
    EXPECT_NEAR(after.power_coefficient / before.power_coefficient, 1, 1e-3);
    EXPECT_NEAR(after.inertia / before.inertia, 1, 1e-3);
    EXPECT_NEAR(middle.tube.dynamic_ratio / setup.tube.dynamic_ratio, 1, 1e-3);
    EXPECT_NEAR(middle.tube.loss_factor / setup.tube.loss_factor, 1, 1e-3);
    EXPECT_NEAR(*middle.airframe.arm.root_stiffness_nm_per_rad, 100, 0.1);
    EXPECT_NEAR(middle.airframe.arm.loss_factor / setup.airframe.arm.loss_factor, 1, 1e-3);
    // The builds' temperature lies around 17.5 °C, that of the hardness at 20 °C.
    const double fromHardness =
        youngsModulusFromShoreA(setup.tube.hardness_shore_a) * modulusAtTemperature(17.5) / 1e6;
    EXPECT_NEAR(*middle.tube.youngs_modulus_mpa / fromHardness, 1, 1e-3);
}

// Oracle: definition, half a millimetre to either side of the plan.
TEST(UncertainInputs, CutTubesShorterAndLonger)
{
    const stillbay::Setup setup = reference();
    const UncertainInput cut = inputsOf(setup).at("cut");
    const auto at = [&](double u) {
        CraftSample craft{setup, {}};
        cut.apply(std::vector<double>(cut.dimensions, u), craft);
        return craft.cuts_mm;
    };
    const std::size_t tubes = setup.mounts.points.size();
    EXPECT_EQ(at(0), std::vector<double>(tubes, -0.5));
    EXPECT_EQ(at(0.5), std::vector<double>(tubes, 0));
    EXPECT_EQ(at(1), std::vector<double>(tubes, 0.5));
}

// Oracle: docs/setup-file.md.
TEST(UncertainInputs, ASourceSaysHowSureAValueIs)
{
    const std::string key = "tube.youngs_modulus_mpa";
    stillbay::Setup setup = reference();
    setup.sources = {{.key = key, .from = Origin::Measured, .spread = 0.02}};
    EXPECT_NEAR(sigmaOf(setup, key, modulus), std::log(1.5) / 1.645, 1e-3);  // nothing is given
    setup.tube.youngs_modulus_mpa = 3.1;
    EXPECT_NEAR(sigmaOf(setup, key, modulus), 0.02, 1e-4);
    setup.sources[0].spread.reset();
    EXPECT_NEAR(sigmaOf(setup, key, modulus), 0.03, 1e-4);
    for (const Origin origin : {Origin::Typical, Origin::Label, Origin::Estimated}) {
        setup.sources[0].from = origin;
        EXPECT_NEAR(sigmaOf(setup, key, modulus), std::log(1.5) / 1.645, 1e-3);
    }
    setup.sources.clear();
    EXPECT_NEAR(sigmaOf(setup, key, modulus), 0.05, 2e-4);
}

// Oracle: definition. Each input changes what it names and nothing else, and every craft it makes
// is one that the setup file could hold.
TEST(UncertainInputs, ChangeTheirOwnNumber)
{
    const stillbay::Setup setup = test::skewCraft(2);
    const auto inputs = uncertainInputs(setup);
    for (const UncertainInput& input : inputs)
        for (const double at : {0.0, 0.03, 0.9, 1.0}) {
            CraftSample craft{setup, {}};
            input.apply(std::vector<double>(input.dimensions, at), craft);
            if (input.key == "cut") {
                EXPECT_EQ(craft.setup, setup);
                EXPECT_EQ(craft.cuts_mm.size(), setup.mounts.points.size());
            } else {
                EXPECT_NE(craft.setup, setup) << input.key;
            }
            EXPECT_EQ(input.doubt == Doubt::BuildToBuild, input.measurement.pattern.empty());
            const stillbay::Setup middle =
                craftAt(setup, inputs, std::vector<double>(dimensionsOf(inputs), 0.5)).setup;
            EXPECT_EQ(middle.bay, setup.bay);
        }
}

// Largest wobble in cruise by assessments at 0.05 % of throttle, at the full and the empty pack.
double finelyAssessed_px(Setup setup)
{
    const AssessOptions options{
        .throttle = Grid{setup.flight.cruise_throttle[0], setup.flight.cruise_throttle[1], 0.0005},
        .frequency_hz = {1, 1, 1}};
    const double full = assess(setup, options).value().cruise.value().full.worst_px;
    setup.drive.battery.full_v_per_cell = setup.drive.battery.empty_v_per_cell;
    return std::max(full, assess(setup, options).value().cruise.value().full.worst_px);
}

// Oracle: the assessment on a fine grid. Arms of 1 % loss double their power within 1 % of speed; a
// step of 0.05 points is at most 0.2 % of the speed, so the fine grid itself is 2 % low at most.
TEST(SampledCruise, IsThatOfTheAssessmentAtBothPacks)
{
    for (const stillbay::Setup& setup :
         {reference(), test::sampleCraft("saltmarsh"), test::sampleCraft("quarry"),
          test::skewCraft(1), test::skewCraft(4)}) {
        const SampledCruise cruise = sampledCruise({setup, {}}, true);
        ASSERT_TRUE(cruise.worst_px) << setup.name;
        EXPECT_NEAR(*cruise.worst_px / finelyAssessed_px(setup), 1, 0.03) << setup.name;
    }
}

// Oracle: the assessment's own ranges on a fine grid, for a pack that does not sink.
TEST(SampledCruise, HasTheBadThrottlesOfTheAssessment)
{
    stillbay::Setup setup = reference();
    setup.drive.battery.empty_v_per_cell = setup.drive.battery.full_v_per_cell;
    const double worst = sampledCruise({setup, {}}, true).worst_px.value();
    for (const double share : {0.9, 0.5, 0.2}) {
        setup.limits = {.faint_px = 0.5 * share * worst, .bad_px = share * worst};
        const auto ranges = assess(setup, {.throttle = Grid{0.25, 0.6, 0.0005}}).value().ranges;
        double from = 1, to = 0;
        for (const ThrottleRange& range : ranges)
            if (range.grade == Grade::Bad) {
                from = std::min(from, range.from);
                to = std::max(to, range.to);
            }
        const auto bad = sampledCruise({setup, {}}, true).bad;
        ASSERT_TRUE(bad);
        EXPECT_NEAR(bad->from, from, 0.004);  // a step of speed is 1.2 %
        EXPECT_NEAR(bad->to, to, 0.004);
    }
    setup.limits = {.faint_px = worst, .bad_px = 1.1 * worst};
    EXPECT_FALSE(sampledCruise({setup, {}}, true).bad);
}

double logWidth(const Uncertainty& u)
{
    return std::log(u.worst_px.p90.value() / u.worst_px.p10.value());
}

const NotKnown& of(const Uncertainty& u, const std::string& key)
{
    return *std::find_if(u.notKnown.begin(), u.notKnown.end(),
                         [&](const NotKnown& input) { return input.key == key; });
}

// Oracle: plain Monte Carlo of the same model, 300 crafts. The share of them below each percentile
// is that percentile within three standard errors of both samples.
TEST(Uncertainty, HasThePercentilesOfPlainMonteCarlo)
{
    constexpr std::size_t kCrafts = 300;
    const stillbay::Setup setup = reference();
    const Uncertainty u = uncertainty(setup).value();
    const auto inputs = uncertainInputs(setup);
    std::mt19937_64 random(11);
    std::uniform_real_distribution<double> draw(0, 1);
    std::array<double, 3> below{};
    for (std::size_t i = 0; i < kCrafts; ++i) {
        std::vector<double> point(dimensionsOf(inputs));
        std::generate(point.begin(), point.end(), [&] { return draw(random); });
        const SampledCruise cruise = sampledCruise(craftAt(setup, inputs, point), true);
        if (!cruise.flyable || !cruise.worst_px)
            continue;
        const std::array<std::optional<double>, 3> percentiles{u.worst_px.p10, u.worst_px.p50,
                                                               u.worst_px.p90};
        for (std::size_t k = 0; k < 3; ++k)
            if (percentiles.at(k) && *cruise.worst_px <= *percentiles.at(k))
                below.at(k) += 1.0 / kCrafts;
    }
    const std::array<double, 3> wanted{0.1, 0.5, 0.9};
    const std::array<std::optional<double>, 3> given{u.worst_px.p10, u.worst_px.p50,
                                                     u.worst_px.p90};
    for (std::size_t k = 0; k < 3; ++k) {
        const double p = wanted.at(k);
        if (given.at(k)) {
            EXPECT_NEAR(below.at(k), p, 3 * std::sqrt(p * (1 - p) * (1.0 / kCrafts + 1.0 / 512)));
        }
    }
    EXPECT_EQ(u.clean + u.faint + u.bad + u.unflyable, u.crafts);
}

// Oracle: definition. What is measured leaves nothing to measure.
TEST(Uncertainty, AMeasuredValueTakesItsShareAway)
{
    stillbay::Setup setup = reference();
    const Uncertainty before = uncertainty(setup, {.crafts = 256}).value();
    ASSERT_TRUE(before.notKnown.front().shares.worst);
    const auto measure = [&](const std::string& key) {
        setup.sources.push_back({.key = key, .from = Origin::Measured, .spread = 0.005});
    };
    setup.tube.youngs_modulus_mpa = youngsModulusFromShoreA(setup.tube.hardness_shore_a) / 1e6;
    setup.airframe.arm.root_stiffness_nm_per_rad = 5000;
    for (const NotKnown& input : before.notKnown)
        if (input.shares.worst->share > 0.1)
            measure(input.key);
    ASSERT_FALSE(setup.sources.empty());
    EXPECT_TRUE(sourcesOfNothing(setup).empty());
    const Uncertainty after = uncertainty(setup, {.crafts = 256}).value();
    for (const Source& source : setup.sources) {
        EXPECT_LT(of(after, source.key).shares.worst.value().share, 0.03) << source.key;
    }
    EXPECT_LT(logWidth(after), 0.8 * logWidth(before));
}

// Oracle: definition.
TEST(Uncertainty, IsTheSameOnAnyNumberOfThreads)
{
    const stillbay::Setup setup = test::skewCraft(3);
    const Uncertainty one = uncertainty(setup, {.crafts = 200, .threads = 1}).value();
    const Uncertainty many = uncertainty(setup, {.crafts = 200, .threads = 4}).value();
    EXPECT_EQ(one.worst_px.p50, many.worst_px.p50);
    EXPECT_EQ(one.badFrom.p90, many.badFrom.p90);
    ASSERT_EQ(one.notKnown.size(), many.notKnown.size());
    for (std::size_t i = 0; i < one.notKnown.size(); ++i) {
        EXPECT_EQ(one.notKnown[i].key, many.notKnown[i].key);
        ASSERT_TRUE(one.notKnown[i].shares.worst && many.notKnown[i].shares.worst);
        EXPECT_EQ(one.notKnown[i].shares.worst->share, many.notKnown[i].shares.worst->share);
        EXPECT_EQ(one.notKnown[i].shares.worst->standard_error,
                  many.notKnown[i].shares.worst->standard_error);
    }
}

// Oracle: definition. Each thread may have begun one craft.
TEST(Uncertainty, StopsWithinOneCraftOfEachThread)
{
    std::stop_source stop;
    std::size_t last = 0;
    const auto stopped = uncertainty(reference(), {.crafts = 5000, .threads = 2}, stop.get_token(),
                                     [&](std::size_t done, std::size_t total) {
                                         EXPECT_EQ(total, 5000U);
                                         last = done;
                                         if (done == 7)
                                             stop.request_stop();
                                     });
    ASSERT_FALSE(stopped);
    EXPECT_EQ(stopped.error(), stoppedOnRequest());
    EXPECT_LE(last, 8U);
}

// Oracle: definition. A bay on tubes that are pushed together in some crafts is flown in the
// others, and a craft that no craft like it can fly has no figure at all.
TEST(Uncertainty, CountsWhatCannotBeFlown)
{
    stillbay::Setup setup = reference();
    setup.tube.max_stretch = 1.0;  // every tube is beyond it
    const Uncertainty none = uncertainty(setup, {.crafts = 64}).value();
    EXPECT_EQ(none.unflyable, none.crafts);
    EXPECT_FALSE(none.worst_px.p10);
    EXPECT_EQ(english(uncertaintySentences(none).at(1)),
              "Half of the crafts or more cannot be flown.");
    setup.tube.max_stretch = 4;
    setup.bay.travel_mm = 0.9;  // what 3 g take away is about as much
    const Uncertainty some = uncertainty(setup, {.crafts = 64}).value();
    EXPECT_GT(some.unflyable, 0U);
    EXPECT_EQ(some.clean + some.faint + some.bad + some.unflyable, some.crafts);
}

// Oracle: the numbers they are made of.
TEST(UncertaintyTexts, TellLargeSharesAndNoFalseDigits)
{
    Uncertainty u{.crafts = 200, .unflyable = 2, .clean = 20, .faint = 58, .bad = 120};
    u.worst_px = {0.2, 1.234, 4.0};
    u.badFrom = {0.25, 0.31, 0.4};
    u.badTo = {0.5, 0.55, 0.6};
    const auto input = [](const char* label, double worst, double from) {
        return NotKnown{label,
                        phrase("%1", std::string(label)),
                        phrase("%1", std::string("a test")),
                        {VarianceShare{worst, 0.01}, VarianceShare{from, 0.01}, {}}};
    };
    u.notKnown = {input("alpha", 0.412, 0.01), input("beta", 0.03, 0.3), input("gamma", 0.01, 0)};
    u.buildToBuild.worst = VarianceShare{0.049, 0.01};
    const std::vector<Phrase> sentences = uncertaintySentences(u);
    EXPECT_EQ(english(sentences.at(0)),
              "Of 100 crafts that fit what is known of this one, 10 are clean in cruise, 29 faint "
              "and 60 bad; 1 cannot be flown.");
    EXPECT_NE(english(sentences.at(1)).find("1.23\u00a0px in the middle"), std::string::npos);
    EXPECT_NE(english(sentences.at(2)).find("begins at 31\u00a0% throttle"), std::string::npos);
    const std::vector<Phrase> lines = measureFirst(u);
    ASSERT_EQ(lines.size(), 2U);
    EXPECT_EQ(english(lines[0]), "alpha: a test: takes away 41\u00a0% of the uncertainty");
    EXPECT_EQ(english(lines[1]),
              "beta: a test: takes away less than 5\u00a0% of the uncertainty (30\u00a0% of where "
              "bad begins, less than 5\u00a0% of where it ends)");
    EXPECT_EQ(english(buildToBuildText(u)),
              "From build to build (cut, masses, battery, temperature): less than 5\u00a0%, which "
              "no measurement takes away.");
    u.badFrom = u.badTo = {};
    EXPECT_EQ(english(uncertaintySentences(u).at(2)), "No throttle in cruise is bad.");
}

}  // namespace
}  // namespace stillbay
