// SPDX-License-Identifier: MIT
#include "core/calibrate/speed_at_throttle.h"

#include "core/craft/craft.h"
#include "tests/assess/crafts.h"
#include "tests/calibrate/corrections.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

namespace stillbay {
namespace {

using Craft = Setup;  // inside TEST the name Setup is taken

constexpr double kTwoPi = 2 * std::numbers::pi;

struct Truth {
    double kv = 1.0, resistance = 1.0;  // times the craft's
    double packResistance = 0.03;       // [Ω]
    double restVoltage = 16.5;          // [V]
    bool hasVoltage = true;
    ThrottleCurve curve = {};
};

double dutyOf(const ThrottleCurve& curve, double throttle)
{
    for (std::size_t i = 1; i < curve.size(); ++i)
        if (throttle <= curve[i][0])
            return std::lerp(curve[i - 1][1], curve[i][1],
                             (throttle - curve[i - 1][0]) / (curve[i][0] - curve[i - 1][0]));
    return throttle;
}

// The balance of torques, k_t((uV − k_e n)/R − I₀) = q n², by bisection, V falling with what the
// motors draw from the pack.
SteadySpeed steady(const Craft& craft, const Truth& truth, double throttle)
{
    const DriveModel drive = makeExcitedAirframe(craft).drive;
    const double kv = drive.kv * truth.kv, R = drive.motorResistance * truth.resistance;
    const double duty = dutyOf(truth.curve, throttle);
    const double q =
        drive.powerCoefficient / kTwoPi * drive.airDensity * std::pow(drive.diameter, 5);
    double low = 0, high = 1000, voltage = 0;
    for (int k = 0; k < 200; ++k) {
        const double n = 0.5 * (low + high);
        const double current = kTwoPi * kv * q * n * n + drive.noLoadCurrent;  // in the motor
        voltage = truth.restVoltage - drive.motors * duty * current * truth.packResistance;
        ((duty * voltage - n / kv) / R > current ? low : high) = n;
    }
    return {throttle, low, truth.hasVoltage ? std::optional(voltage) : std::nullopt};
}

std::vector<SteadySpeed> readings(const Craft& craft, const Truth& truth,
                                  std::initializer_list<double> throttles)
{
    std::vector<SteadySpeed> result;
    for (const double throttle : throttles)
        result.push_back(steady(craft, truth, throttle));
    return result;
}

// A craft whose KV is as sure as its label, and whose propeller was measured.
Craft motorCraft()
{
    Craft craft = test::sampleCraft("quarry");
    craft.sources = {{.key = "drive.propeller.power_coefficient",
                      .from = Origin::Measured,
                      .spread = 0.02,
                      .note = {},
                      .date = {}}};
    craft.drive.propeller.power_coefficient = 0.043;
    return craft;
}

// Oracle: own bisection of the torques. Exact readings from a fifth to full throttle: the doubts of
// before pull KV by less than a tenth, and the resistance by less than a half, of what is left.
TEST(SpeedAtThrottle, TellsKvAndResistanceOfAWideRange)
{
    const Craft craft = motorCraft();
    const Truth truth{.kv = 1.06, .resistance = 1.4};
    const auto correction =
        speedAtThrottle(craft, readings(craft, truth, {0.2, 0.35, 0.5, 0.65, 0.8, 0.9, 1.0}));
    ASSERT_TRUE(correction) << english(correction.error().what);
    EXPECT_FALSE(correction->throttleCurve);
    const CorrectedValue* const kv = test::valueOf(*correction, "drive.motor.kv_rpm_per_v");
    ASSERT_TRUE(kv);
    EXPECT_NEAR(kv->after, 1.06 * craft.drive.motor.kv_rpm_per_v, 2 * kv->spread * kv->after);
    EXPECT_LT(kv->spread, 0.02);
    EXPECT_EQ(kv->before, craft.drive.motor.kv_rpm_per_v);
    const CorrectedValue* const resistance =
        test::valueOf(*correction, "drive.motor.resistance_mohm");
    ASSERT_TRUE(resistance);
    EXPECT_NEAR(resistance->after, 1.4 * craft.drive.motor.resistance_mohm,
                2 * resistance->spread * resistance->after);
    const CorrectedValue* const pack = test::valueOf(*correction, "drive.battery.resistance_mohm");
    ASSERT_TRUE(pack);
    EXPECT_NEAR(pack->after, 30, 2 * pack->spread * 30);
    EXPECT_EQ(correction->mark.quality, Quality::Good);
    EXPECT_LT(correction->residual, 0.2 * correction->residualBefore.value());

    const Craft corrected = accept(craft, *correction, "2026-05-01").value();
    EXPECT_EQ(corrected.drive.motor.kv_rpm_per_v, kv->after);
}

// Oracle: as above, with noise of the spread that is claimed; of 60 draws 2 in 45 lie beyond two
// standard deviations, and the doubt of before, which is no part of the noise, makes them fewer.
TEST(SpeedAtThrottle, ClaimsTheSpreadItHas)
{
    const Craft craft = motorCraft();
    const auto exact =
        readings(craft, {.kv = 0.97, .resistance = 1.2}, {0.25, 0.4, 0.55, 0.7, 0.85, 1.0});
    std::mt19937 random(7);
    std::normal_distribution<double> noise(0, 0.003);
    int beyond = 0;
    for (int k = 0; k < 60; ++k) {
        auto noisy = exact;
        for (SteadySpeed& reading : noisy)
            reading.speed *= std::exp(noise(random));
        const Correction correction = speedAtThrottle(craft, noisy).value();
        const CorrectedValue* const kv = test::valueOf(correction, "drive.motor.kv_rpm_per_v");
        ASSERT_TRUE(kv);
        beyond += std::abs(kv->after / craft.drive.motor.kv_rpm_per_v / 0.97 - 1) > 2 * kv->spread;
    }
    EXPECT_LE(beyond, 5);
}

// Oracle: definition. Throttles close together say nothing of the resistance.
TEST(SpeedAtThrottle, SaysWhatItCannotTell)
{
    const Craft craft = motorCraft();
    const ExcitedAirframe excited = makeExcitedAirframe(craft);
    const Truth truth{.kv = 1.05,
                      .packResistance = excited.drive.packResistance,
                      .restVoltage = excited.fullVoltage,
                      .hasVoltage = false};
    const auto correction =
        speedAtThrottle(craft, readings(craft, truth, {0.40, 0.43, 0.46})).value();
    EXPECT_TRUE(test::valueOf(correction, "drive.motor.kv_rpm_per_v"));
    EXPECT_FALSE(test::valueOf(correction, "drive.motor.resistance_mohm"));
    EXPECT_FALSE(test::valueOf(correction, "drive.battery.resistance_mohm"));
    EXPECT_TRUE(test::warns(correction, "resistance-not-told"));
    EXPECT_TRUE(test::warns(correction, "pack-taken-full"));
    EXPECT_EQ(correction.mark.quality, Quality::Fair);
}

// Oracle: the bisection. A motor of another winding is no throttle curve.
TEST(SpeedAtThrottle, TakesAKvThatIsFarOff)
{
    const Craft craft = motorCraft();
    const Correction correction =
        speedAtThrottle(craft, readings(craft, {.kv = 0.75}, {0.2, 0.4, 0.6, 0.8, 1.0})).value();
    EXPECT_FALSE(correction.throttleCurve);
    const CorrectedValue* const kv = test::valueOf(correction, "drive.motor.kv_rpm_per_v");
    ASSERT_TRUE(kv);
    EXPECT_NEAR(kv->after, 0.75 * craft.drive.motor.kv_rpm_per_v, 2 * kv->spread * kv->after);
    EXPECT_EQ(correction.mark.quality, Quality::Fair);
    EXPECT_FALSE(test::warns(correction, "speeds-end"));
    const Correction low =
        speedAtThrottle(craft, readings(craft, {.kv = 0.75}, {0.1, 0.2, 0.3, 0.4})).value();
    EXPECT_TRUE(low.throttleCurve || test::warns(low, "speeds-end"));
}

// Oracle: the curve that the readings were made with; a reading at full throttle gives KV.
TEST(SpeedAtThrottle, FindsAThrottleCurve)
{
    const Craft craft = motorCraft();
    const Truth truth{.kv = 1.05, .curve = {{0, 0}, {0.3, 0.12}, {0.6, 0.4}, {1, 1}}};
    const auto measured = readings(craft, truth, {0.2, 0.3, 0.45, 0.6, 0.8, 1.0});
    const Correction correction = speedAtThrottle(craft, measured).value();
    ASSERT_TRUE(correction.throttleCurve);
    const CorrectedValue* const kv = test::valueOf(correction, "drive.motor.kv_rpm_per_v");
    ASSERT_TRUE(kv);
    EXPECT_NEAR(kv->after, 1.05 * craft.drive.motor.kv_rpm_per_v, 1e-6 * kv->after);
    for (const auto& [throttle, duty] : *correction.throttleCurve)
        EXPECT_NEAR(duty, dutyOf(truth.curve, throttle), 1e-6) << throttle;

    const Craft corrected = accept(craft, correction, "2026-05-01").value();
    EXPECT_EQ(corrected.drive.throttle_curve, *correction.throttleCurve);
    DriveModel drive = makeExcitedAirframe(corrected).drive;
    drive.packResistance = 0;
    for (const SteadySpeed& reading : measured)
        EXPECT_NEAR(rotorSpeed(drive, reading.throttle, *reading.voltage), reading.speed,
                    1e-6 * reading.speed);

    const Correction without = speedAtThrottle(craft, std::span(measured).first(5)).value();
    EXPECT_TRUE(without.throttleCurve);
    EXPECT_TRUE(test::warns(without, "curve-on-kv"));
    EXPECT_FALSE(test::valueOf(without, "drive.motor.kv_rpm_per_v"));
}

TEST(SpeedAtThrottle, RefusesWhatSaysNothing)
{
    const Craft craft = motorCraft();
    const auto fault = [&craft](std::vector<SteadySpeed> readings) {
        const auto correction = speedAtThrottle(craft, readings);
        EXPECT_FALSE(correction);
        return correction ? std::string() : english(correction.error().what);
    };
    EXPECT_NE(fault({{0.3, 50, {}}, {0.302, 51, {}}, {0.6, 90, {}}}).find("2 throttles"),
              std::string::npos);
    EXPECT_NE(fault({{0.3, 50, {}}, {0.5, 0, {}}, {0.6, 90, {}}}).find("speed is 0"),
              std::string::npos);
    EXPECT_NE(fault({{0.3, 50, 16.0}, {0.5, 70, {}}, {0.6, 90, {}}}).find("all must"),
              std::string::npos);
    EXPECT_NE(fault({{0.2, 60, {}}, {0.5, 30, {}}, {0.9, 80, {}}}).find("do not rise"),
              std::string::npos);
    const std::string fast = fault({{0.2, 600, {}}, {0.5, 700, {}}, {0.9, 800, {}}});
    EXPECT_TRUE(fast.starts_with("At 20 % throttle the rotors turn faster than")) << fast;
}

}  // namespace
}  // namespace stillbay
