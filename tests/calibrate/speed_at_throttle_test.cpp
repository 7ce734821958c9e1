// SPDX-License-Identifier: MIT
#include "core/calibrate/speed_at_throttle.h"

#include "core/calibrate/speed_readings.h"
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

// How far a number that is told moves with what goes into it: the logarithm's slope.
template <class Answer>
double slopeOf(Answer answer)
{
    constexpr double kStep = 1e-3;
    return (std::log(answer(kStep)) - std::log(answer(-kStep))) / (2 * kStep);
}

// Oracle: the law of propagation (JCGM 100, 5.1.2) by differences of the answer: with each reading,
// by its speed's spread, its throttle's and a tenth of the voltmeter's; with what the craft says,
// by how sure that is (a label's KV 4.1 %, a resistance 25 %); what all voltages have in common and
// the propeller's power come on top.
TEST(SpeedAtThrottle, LeavesOpenWhatReadingsAndCraftDo)
{
    const Craft craft = motorCraft();
    const auto check = [&craft](const std::vector<SteadySpeed>& measured, const char* key,
                                double common) {
        const auto told = [key](const Craft& of, const std::vector<SteadySpeed>& from) {
            return *test::valueOf(speedAtThrottle(of, from).value(), key);
        };
        double squares = common * common;
        for (std::size_t k = 0; k < measured.size(); ++k)
            squares += std::pow(slopeOf([&](double step) {
                                    auto moved = measured;
                                    moved[k].speed *= std::exp(step);
                                    return told(craft, moved).after;
                                }) * std::hypot(0.003, 0.003 / measured[k].throttle, 0.0005),
                                2);
        squares += std::pow(0.041 * slopeOf([&](double step) {
                                Craft other = craft;
                                other.drive.motor.kv_rpm_per_v *= std::exp(step);
                                return told(other, measured).after;
                            }),
                            2);
        squares += std::pow(0.25 * slopeOf([&](double step) {
                                Craft other = craft;
                                other.drive.motor.resistance_mohm *= std::exp(step);
                                return told(other, measured).after;
                            }),
                            2);
        const double spread = told(craft, measured).spread;
        EXPECT_NEAR(spread, std::sqrt(squares), 0.035 * spread) << key;
    };
    const auto wide = readings(craft, {.kv = 1.02, .resistance = 1.25},
                               {0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.85, 0.9, 0.95, 1.0});
    check(wide, "drive.motor.kv_rpm_per_v", 0.005);
    check(wide, "drive.motor.resistance_mohm", 0.02);
    const auto narrow = readings(craft, {.kv = 1.02, .resistance = 1.1}, {0.4, 0.6, 0.8});
    ASSERT_FALSE(
        test::valueOf(speedAtThrottle(craft, narrow).value(), "drive.motor.resistance_mohm"));
    check(narrow, "drive.motor.kv_rpm_per_v", 0.005);
}

// Oracle: as above. One reading at full throttle tells KV as far as its speed, the resistance that
// the craft says, and the voltage do.
TEST(SpeedAtThrottle, LeavesOpenWhatAReadingAtFullThrottleDoes)
{
    const Craft craft = motorCraft();
    const Truth truth{.kv = 1.05, .curve = {{0, 0}, {0.3, 0.12}, {0.6, 0.4}, {1, 1}}};
    const auto measured = readings(craft, truth, {0.2, 0.3, 0.45, 0.6, 0.8, 1.0});
    const auto told = [](const Craft& of, const std::vector<SteadySpeed>& from) {
        return *test::valueOf(speedAtThrottle(of, from).value(), "drive.motor.kv_rpm_per_v");
    };
    const double ofSpeed = slopeOf([&](double step) {
        auto moved = measured;
        moved.back().speed *= std::exp(step);
        return told(craft, moved).after;
    });
    const double ofResistance = slopeOf([&](double step) {
        Craft other = craft;
        other.drive.motor.resistance_mohm *= std::exp(step);
        return told(other, measured).after;
    });
    const double spread = told(craft, measured).spread;
    EXPECT_NEAR(spread,
                std::hypot(ofSpeed * std::hypot(0.003, 0.003, 0.0005), 0.25 * ofResistance, 0.005),
                0.02 * spread);
}

// Oracle: by hand. A curve is as sure as its readings are on the average, and as the voltage: with
// throttles of 0.2, 0.5 and 0.8 whose third decimal is open, 1.5, 0.6 and 0.375 %.
TEST(SpeedAtThrottle, TellsHowSureACurveIs)
{
    const Craft craft = motorCraft();
    const Truth truth{.curve = {{0, 0}, {0.3, 0.12}, {0.6, 0.4}, {1, 1}}};
    const Correction correction =
        speedAtThrottle(craft, readings(craft, truth, {0.2, 0.5, 0.8})).value();
    ASSERT_TRUE(correction.throttleCurve);
    const double reading2 = 0.003 * 0.003 + 0.0005 * 0.0005;
    EXPECT_NEAR(correction.throttleCurveSpread,
                std::sqrt((3 * reading2 + 0.015 * 0.015 + 0.006 * 0.006 + 0.00375 * 0.00375) / 3 +
                          0.005 * 0.005),
                1e-9);
}

// Oracle: definition. All readings are 3 % faster than the craft's own speeds; after the correction
// what is left is what its drive computes otherwise than was read, root mean square.
TEST(SpeedAtThrottle, TellsWhatIsLeft)
{
    const Craft craft = motorCraft();
    DriveModel drive = makeExcitedAirframe(craft).drive;
    drive.packResistance = 0;
    std::vector<SteadySpeed> measured;
    for (const double throttle : {0.2, 0.4, 0.6, 0.8, 1.0})
        measured.push_back({throttle, 1.03 * rotorSpeed(drive, throttle, 15.5), 15.5});
    const Correction correction = speedAtThrottle(craft, measured).value();
    EXPECT_NEAR(correction.residualBefore.value(), std::log(1.03), 1e-9);
    DriveModel corrected =
        makeExcitedAirframe(accept(craft, correction, "2026-05-01").value()).drive;
    corrected.packResistance = 0;
    double squares = 0;
    for (const SteadySpeed& reading : measured)
        squares +=
            std::pow(std::log(reading.speed / rotorSpeed(corrected, reading.throttle, 15.5)), 2) /
            5;
    ASSERT_GT(squares, 0);
    EXPECT_NEAR(correction.residual, std::sqrt(squares), 0.01 * correction.residual);
}

// Oracle: by hand. Readings less than 1 % of throttle apart are one, their mean.
TEST(SpeedAtThrottle, MergesWhatIsOneThrottle)
{
    const std::vector<SteadySpeed> noted{
        {0.6, 90, 15.5}, {0.304, 52, 15.8}, {0.3, 50, 16.0}, {0.9, 120, 15.0}, {0.308, 54, 15.6}};
    const auto merged = mergedSpeeds(noted).value();
    ASSERT_EQ(merged.size(), 3U);
    EXPECT_NEAR(merged[0].throttle, 0.304, 1e-12);
    EXPECT_NEAR(merged[0].speed, 52, 1e-12);
    EXPECT_NEAR(merged[0].voltage.value(), 15.8, 1e-12);
    EXPECT_EQ(merged[2].voltage, 15.0);
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
    ASSERT_TRUE(test::warns(low, "speeds-end"));
    const auto ends =
        std::find_if(low.warnings.begin(), low.warnings.end(),
                     [](const Warning& warning) { return warning.code == "speeds-end"; });
    EXPECT_TRUE(english(ends->text).starts_with("The readings end at 40 % throttle"))
        << english(ends->text);
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
        return correction ? std::string() : test::plain(correction.error().what);
    };
    EXPECT_NE(fault({{0.3, 50, {}}, {0.302, 51, {}}, {0.6, 90, {}}}).find("2 throttles"),
              std::string::npos);
    EXPECT_NE(fault({{0.3, 50, {}}, {0.5, 0, {}}, {0.6, 90, {}}}).find("speed is 0"),
              std::string::npos);
    EXPECT_NE(fault({{0.3, 50, 16.0}, {0.5, 70, {}}, {0.6, 90, {}}}).find("all must"),
              std::string::npos);
    EXPECT_NE(fault({{0.2, 60, {}}, {0.5, 30, {}}, {0.9, 80, {}}})
                  .find("do not rise with the throttle from 20 % to 50 %"),
              std::string::npos);
    EXPECT_NE(fault({{0.3, 50, {}}, {0.5, -1.5, {}}, {0.6, 90, {}}}).find("speed is -90 rpm"),
              std::string::npos);
    const std::string fast = fault({{0.2, 600, {}}, {0.5, 700, {}}, {0.9, 800, {}}});
    EXPECT_TRUE(fast.starts_with("At 20 % throttle the rotors turn faster than")) << fast;
}

}  // namespace
}  // namespace stillbay
