// SPDX-License-Identifier: MIT
#include "core/calibrate/hang.h"

#include "core/advice/uncertain_inputs.h"
#include "core/setup/text.h"
#include "tests/calibrate/corrections.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <fstream>
#include <random>
#include <sstream>
#include <string>
#include <vector>

namespace stillbay {
namespace {

using test::plain;
using test::textOf;
using test::warns;

Setup reedbed()
{
    std::ifstream in(STILLBAY_SAMPLES_DIR "/reedbed.stillbay");
    std::stringstream text;
    text << in.rdbuf();
    return readSetup(text.str()).value().setup;
}

// Length of a neo-Hookean tube under a force, by bisection of T = G A₀ (λ − 1/λ²).
double lengthUnder(double mass_g, double free_mm, double G_mpa, double area_mm2)
{
    double low = 1.0, high = 10.0;
    for (int k = 0; k < 200; ++k) {
        const double middle = 0.5 * (low + high);
        const double force = G_mpa * area_mm2 * (middle - 1 / (middle * middle));
        (force < mass_g * 9.80665e-3 ? low : high) = middle;
    }
    return low * free_mm;
}

// Oracle: the worked example of docs/measuring-at-home.md, by hand: 8/5 mm, 1.000 kg, 100 mm to
// 122 mm is 1.75 MPa. Printed with three digits, so to half of the last.
TEST(HangTest, IsTheWorkedExample)
{
    const std::vector<HungMass> masses{{1000, 100, 122}};
    const auto correction = hangTest(reedbed(), masses);
    ASSERT_TRUE(correction);
    ASSERT_EQ(correction->values.size(), 1u);
    const CorrectedValue& value = correction->values.front();
    EXPECT_EQ(value.key, "tube.youngs_modulus_mpa");
    EXPECT_NEAR(value.after, 1.75, 0.005);
    EXPECT_NEAR(value.before.value(), 3.6051, 1e-4);  // Gent's relation at 60 Shore A
    // "One millimetre misread here is 4 % in E": two marks read to 0.5 mm, 0.2 mm each length.
    EXPECT_NEAR(value.spread, 0.04 * 0.2041 * std::hypot(1.0, 1.22), 0.1 * value.spread);
    EXPECT_TRUE(warns(*correction, "hang-one-mass"));
    EXPECT_TRUE(warns(*correction, "hang-hardness")) << "the example is no 60 Shore A";
    EXPECT_NE(textOf(*correction, "hang-hardness").find("60 Shore A should have about 3.61 MPa"),
              std::string::npos);
    EXPECT_NEAR(correction->residualBefore.value(), 3.6051 / 1.75 - 1, 0.005);
}

// Oracle: published data and fit. L. R. G. Treloar, Trans. Faraday Soc. 40 (1944) 59, 8 % sulphur
// rubber in simple tension, points as carried by two open data sets; least squares of the Mooney
// law up to a stretch of 1.6 gives C₁₀ = 0.1017, C₀₁ = 0.1112 MPa (rms 0.0003 MPa), whose secant
// modulus is 2 (C₁₀ + C₀₁/λ). Within 2 %: the fit's rms over the least stress, and a line through
// four points of that curve.
TEST(HangTest, OfTreloarsRubberSoftensAsPublished)
{
    auto setup = reedbed();
    setup.mounts.stretch = 1.3;  // of what the clamps leave free: a little more
    const double area_mm2 = M_PI / 4 * (64 - 25);
    std::vector<HungMass> masses;
    for (const auto& [stretch, stress_kgf_cm2] :
         {std::pair{1.125, 1.37}, {1.24, 2.30}, {1.39, 3.23}, {1.585, 4.16}})
        masses.push_back({stress_kgf_cm2 * 10 * area_mm2, 100, 100 * stretch});
    const auto correction = hangTest(setup, masses, {.length_mm = 0.1, .mass_g = 0.1});
    ASSERT_TRUE(correction);
    EXPECT_TRUE(warns(*correction, "hang-trend"));
    EXPECT_EQ(correction->mark.quality, Quality::Fair);
    // By hand: 3 · 0.13435/(1.125 − 1.125⁻²) and 3 · 0.40796/(1.585 − 1.585⁻²) MPa.
    const std::string told = textOf(*correction, "hang-trend");
    EXPECT_NE(told.find("1.20 MPa at stretch 1.1"), std::string::npos) << told;
    EXPECT_NE(told.find("1.03 MPa at stretch 1.5"), std::string::npos) << told;
    const double delta_mm = 0.075 * std::sqrt(64.0 - 25.0), free_mm = setup.mounts.free_length_mm;
    const double stretch = 1 + 0.3 * free_mm / (free_mm - 2 * delta_mm);
    const double expected = 3 * 2 * (0.1017 + 0.1112 / stretch);
    EXPECT_NEAR(correction->values.front().after, expected, 0.02 * expected);
}

// Oracle: own derivation, brute force: the test repeated 500 times with lengths and masses read
// off as rulers and scales do; the spread of its answers is the spread it gives. 500 repeats know a
// standard deviation to 3.2 %; a rounded reading is no Gaussian one: 10 %.
TEST(HangTest, TellsTheSpreadThatRepeatingItHas)
{
    const double area_mm2 = M_PI / 4 * (64 - 25), G_mpa = 0.97;
    std::mt19937 random(14);
    std::uniform_real_distribution<double> any(-0.5, 0.5);
    const auto read = [&](double value, double step) {
        const double from = any(random);  // where the ruler was laid
        return std::round(value / step + from) * step - from * step + any(random) * step;
    };
    double sum = 0.0, squares = 0.0, told = 0.0;
    constexpr int kRepeats = 500;
    for (int k = 0; k < kRepeats; ++k) {
        const double free_mm = read(80, 0.5);
        std::vector<HungMass> masses;
        for (const double mass_g : {700.0, 1000.0, 1300.0})
            masses.push_back({mass_g + any(random), free_mm,
                              read(lengthUnder(mass_g, 80, G_mpa, area_mm2), 0.5)});
        const auto correction = hangTest(reedbed(), masses, {.massShare = 0.0});
        ASSERT_TRUE(correction);
        const double E = correction->values.front().after;
        sum += E;
        squares += E * E;
        told += correction->values.front().spread / kRepeats;
    }
    const double mean = sum / kRepeats;
    const double spread = std::sqrt(squares / kRepeats - mean * mean) / mean;
    EXPECT_NEAR(mean, 3 * G_mpa, 0.003 * mean);
    // It never tells less than the readings leave; where three disagree by chance it tells more.
    EXPECT_GT(told, 0.9 * spread);
    EXPECT_LT(told, 1.4 * spread);
}

// Oracle: the law of propagation of uncertainty (JCGM 100, 5.1.2) by differences of E = 3 m g/(A₀(λ
// − λ⁻²)); a difference of two marks has d/√6, a scale's step d/√12, as evenly spread readings
// have.
TEST(HangTest, CountsEachMassByHowWellItIsRead)
{
    const double area_mm2 = M_PI / 4 * (64 - 25);
    const HangReadings readings{.length_mm = 0.4, .mass_g = 2.0, .massShare = 0.0};
    const auto E = [&](double mass_g, double free_mm, double length_mm) {
        const double lambda = length_mm / free_mm;
        return 3 * mass_g * 9.80665e-3 / (area_mm2 * (lambda - 1 / (lambda * lambda)));
    };
    const auto variance = [&](const HungMass& m) {
        const double at = E(m.mass_g, m.free_mm, m.length_mm), h = 1e-4;
        const double mass = (E(m.mass_g + h, m.free_mm, m.length_mm) - at) / h;
        const double free = (E(m.mass_g, m.free_mm + h, m.length_mm) - at) / h;
        const double length = (E(m.mass_g, m.free_mm, m.length_mm + h) - at) / h;
        return std::pow(mass * readings.mass_g, 2) / 12 +
               (std::pow(free, 2) + std::pow(length, 2)) * std::pow(readings.length_mm, 2) / 6;
    };
    const HungMass one{400, 100, 107}, other{500, 60, 65.5};
    const auto alone = hangTest(reedbed(), std::vector{one}, readings);
    ASSERT_TRUE(alone);
    const double first = E(one.mass_g, one.free_mm, one.length_mm);
    EXPECT_NEAR(alone->values.front().spread, std::sqrt(variance(one)) / first, 1e-4);
    const auto both = hangTest(reedbed(), std::vector{one, other}, readings);
    ASSERT_TRUE(both);
    const double second = E(other.mass_g, other.free_mm, other.length_mm);
    ASSERT_GT(std::abs(second / first - 1), 0.02);
    const double mean = (first / variance(one) + second / variance(other)) /
                        (1 / variance(one) + 1 / variance(other));
    EXPECT_NEAR(both->values.front().after, mean, 1e-4 * mean);
}

// Oracle: by hand. At one stretch moduli are as their masses, each as well read in MPa as the other
// where lengths are without error: their mean is the middle, and its standard error half of their
// difference (JCGM 100, 4.2.3). What is left is their root mean square.
TEST(HangTest, WidensWhereMassesDisagree)
{
    const HangReadings scale{.length_mm = 0.0, .mass_g = 1.0, .massShare = 0.0};
    const auto hung = [&scale](double less_g, double more_g) {
        return hangTest(reedbed(), std::vector<HungMass>{{less_g, 100, 112}, {more_g, 50, 56}},
                        scale)
            .value();
    };
    const Correction apart = hung(1150, 1250);
    const double area_mm2 = M_PI / 4 * (64 - 25);
    EXPECT_NEAR(apart.values.front().after,
                3 * 1.2 * 9.80665 / area_mm2 / (1.12 - 1 / (1.12 * 1.12)), 1e-9);
    EXPECT_NEAR(apart.values.front().spread, 50 / 1200.0, 1e-9);
    const auto share = [](double mass_g) {
        return std::pow(1200 / mass_g - 1, 2);
    };
    EXPECT_NEAR(apart.residual, std::sqrt((share(1150) + share(1250)) / 2), 1e-9);
    EXPECT_TRUE(warns(apart, "hang-scatter"));
    const Correction near = hung(1182, 1218);
    EXPECT_EQ(near.mark.quality, Quality::Good);
    EXPECT_EQ(plain(near.mark.reason), "the masses agree to 1.5 %");
}

// Oracle: definition. Rubber 2 % stiffer at the larger stretch has no trend worth telling, 5 % is
// one, however well it is read.
TEST(HangTest, TellsATrendThatMatters)
{
    const double area_mm2 = M_PI / 4 * (64 - 25);
    const HangReadings exactly{.length_mm = 1e-3, .mass_g = 1e-3, .massShare = 0.0};
    const auto hasTrend = [&](double stiffer) {
        const std::vector<HungMass> masses{
            {800, 100, lengthUnder(800, 100, 1.1, area_mm2)},
            {1200, 100, lengthUnder(1200, 100, 1.1 * stiffer, area_mm2)}};
        return warns(hangTest(reedbed(), masses, exactly).value(), "hang-trend");
    };
    EXPECT_FALSE(hasTrend(1.02));
    EXPECT_TRUE(hasTrend(1.05));
}

// Oracle: definition. The craft's stretch, of what the clamps leave free, may lie 0.05 beyond what
// was hung.
TEST(HangTest, SaysWhereTheCraftStretchesElsewhere)
{
    auto setup = reedbed();
    setup.mounts.stretch = 1.3;
    const double delta_mm = 0.075 * std::sqrt(64.0 - 25.0), free_mm = setup.mounts.free_length_mm;
    const double stretch = 1 + 0.3 * free_mm / (free_mm - 2 * delta_mm);
    const auto told = [&](double from, double to) {
        const std::vector<HungMass> masses{{1000, 100, 100 * from}, {1200, 100, 100 * to}};
        return textOf(hangTest(setup, masses).value(), "hang-other-stretch");
    };
    EXPECT_EQ(told(stretch - 0.1, stretch + 0.1), "");
    EXPECT_EQ(told(stretch + 0.03, stretch + 0.1), "");
    EXPECT_EQ(told(stretch - 0.1, stretch - 0.03), "");
    EXPECT_NE(told(stretch + 0.07, stretch + 0.1), "");
    EXPECT_NE(told(stretch - 0.1, stretch - 0.07), "");
}

// Oracle: the spread that accept() writes is the one the forecast's uncertainty counts with.
TEST(HangTest, NarrowsWhatTheForecastDoesNotKnow)
{
    const auto setup = reedbed();
    const double area_mm2 = M_PI / 4 * (64 - 25);
    std::vector<HungMass> masses;
    for (const double mass_g : {800.0, 1200.0})
        masses.push_back({mass_g, 100, lengthUnder(mass_g, 100, 1.1, area_mm2)});
    const auto correction = hangTest(setup, masses);
    ASSERT_TRUE(correction);
    EXPECT_EQ(correction->mark.quality, Quality::Good);
    EXPECT_EQ(english(correction->measurement), "hang test, 2 masses");
    const auto corrected = accept(setup, *correction, "2026-05-01");
    ASSERT_TRUE(corrected);
    EXPECT_NEAR(spreadOf(setup, "tube.youngs_modulus_mpa").value(), 0.25, 0.01);
    EXPECT_NEAR(spreadOf(*corrected, "tube.youngs_modulus_mpa").value(),
                correction->values.front().spread, 1e-12);
}

TEST(HangTest, SaysWhatTheRulerLeavesOpen)
{
    const std::vector<HungMass> coarse{{1500, 20, 24}};
    const auto correction = hangTest(reedbed(), coarse);
    ASSERT_TRUE(correction);
    EXPECT_GT(correction->values.front().spread, 0.05);
    // The ruler alone, for the scale's share is small beside it.
    double open = 0;
    ASSERT_EQ(std::sscanf(textOf(*correction, "hang-coarse").c_str(),
                          "The ruler leaves %lf %% of the modulus open", &open),
              1);
    EXPECT_NEAR(open, 100 * correction->values.front().spread, 0.5);

    const std::vector<HungMass> apart{{800, 100, 113}, {1200, 100, 131}, {1210, 100, 123}};
    const auto scattered = hangTest(reedbed(), apart);
    ASSERT_TRUE(scattered);
    EXPECT_TRUE(warns(*scattered, "hang-scatter"));
    EXPECT_GT(scattered->values.front().spread, 0.05);
}

TEST(HangTest, RefusesWhatNobodyCanHaveRead)
{
    const auto refusal = [](std::vector<HungMass> masses) {
        const auto correction = hangTest(reedbed(), masses);
        return correction ? std::string() : english(correction.error().what);
    };
    EXPECT_EQ(refusal({}), "no mass was hung: one to five are needed");
    EXPECT_EQ(refusal(std::vector<HungMass>(6, {100, 100, 110})),
              "6 masses are too many: at most five");
    EXPECT_NE(refusal({{1000, 100, 122}, {1000, 0, 122}}).find("mass 2 has no free length"),
              std::string::npos);
    EXPECT_NE(refusal({{1000, 100, 122}, {900, 100, 100}}).find("mass 2 does not stretch the tube"),
              std::string::npos);
    EXPECT_NE(refusal({{-5, 100, 122}}).find("mass 1 is -5"), std::string::npos);
    EXPECT_NE(refusal({{100, std::nan(""), 122}}), "");
    EXPECT_NE(refusal({{100, 100, INFINITY}}), "");
}

}  // namespace
}  // namespace stillbay
