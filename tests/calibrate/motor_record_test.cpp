// SPDX-License-Identifier: MIT
#include "core/base/units.h"
#include "core/calibrate/airframe_columns.h"
#include "core/calibrate/axis_of_name.h"
#include "core/calibrate/pluck.h"
#include "core/calibrate/rotors_heard.h"
#include "core/calibrate/shake_recording.h"
#include "core/calibrate/tap_recording.h"
#include "core/craft/craft.h"
#include "tests/assess/crafts.h"
#include "tests/calibrate/corrections.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>

namespace stillbay {
namespace {

using Craft = Setup;  // inside TEST the name Setup is taken

constexpr double kWholeTurn = 2 * std::numbers::pi;

double speedOf(const Craft& craft, double throttle)
{
    const ExcitedAirframe excited = makeExcitedAirframe(craft);
    return rotorSpeed(excited.drive, throttle, excited.fullVoltage);
}

struct HeldRecord {
    double throttle = 0.4, seconds = 14.0, rate_hz = 1000;
    std::vector<double> apart{0.005, -0.002, 0.0015,
                              -0.0055};  // of each motor's speed from the mean
    std::vector<double> unbalance_g_mm{5.0, 2.0, 8.0, 3.5};
    double noise = 0.05;  // [m/s²]
    AirframeSensor sensor{.centre_mm = {70, -40, 15}, .axes = {}, .channels = {}};
    bool hasSpeeds = false;
};

// Oracle of what follows: the motion that the model has for each motor, laid together in time with
// phases of their own, white noise over it.
Recording recordOf(const Craft& craft, const HeldRecord& held)
{
    std::vector<SensorAxis> axes;
    for (int k = 0; k < 3; ++k)
        axes.push_back({unit::mm * Vector3d(held.sensor.centre_mm[0], held.sensor.centre_mm[1],
                                            held.sensor.centre_mm[2]),
                        Vector3d::Unit(k)});
    std::mt19937 random(5);
    std::normal_distribution<double> noise(0, held.noise);
    const auto samples = static_cast<std::size_t>(held.seconds * held.rate_hz);
    Recording recording{.rate = held.rate_hz};
    for (const char* name : {"acc_x", "acc_y", "acc_z"}) {
        recording.channels.push_back({name, Quantity::Acceleration, std::vector<double>(samples)});
        for (double& value : recording.channels.back().values)
            value = noise(random);
    }
    const double mean = speedOf(craft, held.throttle);
    for (std::size_t motor = 0; motor < held.apart.size(); ++motor) {
        const double n = mean * (1 + held.apart[motor]);
        const auto motions = shakeOfMotors(craft, axes, n).value();
        for (std::size_t axis = 0; axis < 3; ++axis)
            for (std::size_t k = 0; k < samples; ++k)
                recording.channels[axis].values[k] +=
                    (held.unbalance_g_mm[motor] * unit::g_mm * motions[motor][axis] *
                     std::polar(1.0, kWholeTurn * n * static_cast<double>(k) / held.rate_hz +
                                         1.7 * static_cast<double>(motor)))
                        .real();
        if (held.hasSpeeds)
            recording.channels.push_back({"rpm" + std::to_string(motor), Quantity::RotorSpeed,
                                          std::vector<double>(samples, n)});
    }
    recording.channels.push_back(
        {"throttle", Quantity::Throttle, std::vector<double>(samples, held.throttle)});
    return recording;
}

// Oracle: see recordOf(). A sensor off the middle tells motors 0.35 % apart by how its axes move
// together.
TEST(UnbalanceOfRecording, TellsMotorsByTheirMotion)
{
    const Craft craft = test::sampleCraft("reedbed");
    const HeldRecord held;
    const auto correction = unbalanceOfRecording(craft, recordOf(craft, held), held.sensor);
    ASSERT_TRUE(correction) << english(correction.error().what);
    ASSERT_EQ(correction->values.size(), 4U) << english(correction->mark.reason);
    for (std::size_t motor = 0; motor < 4; ++motor)
        EXPECT_NEAR(correction->values[motor].after, held.unbalance_g_mm[motor],
                    0.06 * held.unbalance_g_mm[motor]);
    EXPECT_EQ(correction->mark.quality, Quality::Good);
    EXPECT_LT(correction->residual, 0.05);
}

// Oracle: see recordOf(). One axis does not tell whose line is whose; a column of speed for each
// motor tells it nevertheless.
TEST(UnbalanceOfRecording, TellsMotorsByTheirSpeedsOrNotAtAll)
{
    const Craft craft = test::sampleCraft("reedbed");
    HeldRecord held;
    Recording recording = recordOf(craft, held);
    recording.channels.erase(recording.channels.begin(), recording.channels.begin() + 2);
    const auto common = unbalanceOfRecording(craft, recording, held.sensor);
    ASSERT_TRUE(common) << english(common.error().what);
    ASSERT_EQ(common->values.size(), 1U);
    EXPECT_EQ(common->values[0].key, "drive.unbalance_g_mm");
    EXPECT_TRUE(test::warns(*common, "motors-not-told"));
    // What is in common is the root of the mean square.
    const double rms = std::sqrt((25 + 4 + 64 + 12.25) / 4);
    EXPECT_NEAR(common->values[0].after, rms, 2 * common->values[0].spread * rms);

    held.hasSpeeds = true;
    recording = recordOf(craft, held);
    recording.channels.erase(recording.channels.begin(), recording.channels.begin() + 2);
    const auto each = unbalanceOfRecording(craft, recording, held.sensor);
    ASSERT_TRUE(each) << english(each.error().what);
    ASSERT_EQ(each->values.size(), 4U);
    for (std::size_t motor = 0; motor < 4; ++motor)
        EXPECT_NEAR(each->values[motor].after, held.unbalance_g_mm[motor],
                    0.06 * held.unbalance_g_mm[motor]);
}

// Oracle: see recordOf(), of a craft whose arms are 9 % softer and tubes a tenth stiffer than the
// one it is held against says. Wherever the sensor sits, no motor is taken for another: each value
// is within 30 % of its motor's, or only what they have in common is told.
TEST(UnbalanceOfRecording, TakesNoMotorForAnother)
{
    const Craft craft = test::sampleCraft("reedbed");
    Craft truth = craft;
    truth.airframe.arm.youngs_modulus_gpa *= 0.91;
    truth.tube.dynamic_ratio *= 1.1;
    for (const Triple& place_mm : {Triple{0, 0, 10}, {-60, 50, 5}}) {
        HeldRecord held;
        held.sensor.centre_mm = place_mm;
        const auto correction = unbalanceOfRecording(craft, recordOf(truth, held), held.sensor);
        ASSERT_TRUE(correction) << english(correction.error().what);
        for (std::size_t motor = 0; correction->values.size() == 4 && motor < 4; ++motor)
            EXPECT_NEAR(correction->values[motor].after, held.unbalance_g_mm[motor],
                        0.3 * held.unbalance_g_mm[motor])
                << place_mm[0];
    }
}

// The record, and behind it one of 55 % of throttle.
Recording heldAgain(const Craft& craft, HeldRecord held)
{
    Recording recording = recordOf(craft, held);
    held.throttle = 0.55;
    const Recording later = recordOf(craft, held);
    for (std::size_t k = 0; k < recording.channels.size(); ++k)
        recording.channels[k].values.insert(recording.channels[k].values.end(),
                                            later.channels[k].values.begin(),
                                            later.channels[k].values.end());
    return recording;
}

// Oracle: see recordOf(). Of two throttles held one after the other both are used, each at its own.
TEST(UnbalanceOfRecording, ReadsEachThrottleWhereItWasHeld)
{
    const Craft craft = test::sampleCraft("reedbed");
    HeldRecord held;
    const Recording recording = heldAgain(craft, held);
    const auto correction = unbalanceOfRecording(craft, recording, held.sensor);
    ASSERT_TRUE(correction) << english(correction.error().what);
    EXPECT_EQ(english(correction->measurement), "airframe's vibration, 27 s");  // of 28
    ASSERT_EQ(correction->values.size(), 4U);
    for (std::size_t motor = 0; motor < 4; ++motor)
        EXPECT_NEAR(correction->values[motor].after, held.unbalance_g_mm[motor],
                    0.06 * held.unbalance_g_mm[motor]);
    const AirframeColumns columns = airframeColumns(recording, held.sensor).value();
    const ShakeRecord record = shakeRecord(craft, recording, columns).value();
    ASSERT_EQ(record.lines.size(), 8U);
    for (std::size_t k = 0; k < 8; ++k)
        EXPECT_NEAR(record.lines[k].throttle, k < 4 ? 0.4 : 0.55, 1e-9);
}

// Oracle: see recordOf(). A column of speed for each motor tells whose line is whose in each of the
// two stretches. White noise of σ leaves σ √(3/N) in each part of an amplitude of N samples under a
// Hann window (its noise bandwidth is 1.5 bins: F. J. Harris, Proc. IEEE 66 (1978) 51).
TEST(UnbalanceOfRecording, TellsSpeedsAndNoiseOfEachStretch)
{
    const Craft craft = test::sampleCraft("reedbed");
    HeldRecord held{.noise = 0.3, .hasSpeeds = true};
    const Recording recording = heldAgain(craft, held);
    const AirframeColumns columns = airframeColumns(recording, held.sensor).value();
    const ShakeRecord record = shakeRecord(craft, recording, columns).value();
    ASSERT_EQ(record.lines.size(), 8U);
    for (std::size_t k = 0; k < 8; ++k) {
        const ShakeLine& line = record.lines[k];
        ASSERT_TRUE(line.motor && line.speed);
        EXPECT_NEAR(*line.speed, speedOf(craft, k < 4 ? 0.4 : 0.55) * (1 + held.apart[*line.motor]),
                    0.02);
        EXPECT_NEAR(line.noise / (0.3 * std::sqrt(3 / 13500.0)), 1.0, 0.12);
    }
}

// Oracle: see recordOf(). Motors two thousandths apart beat and are one tone; the sensor's rate is
// too low for the blade pass and twice it, which is said.
TEST(UnbalanceOfRecording, SaysWhatTheRecordCannotShow)
{
    const Craft craft = test::sampleCraft("reedbed");
    HeldRecord held;
    held.rate_hz = 300;
    held.apart = {0.001, -0.0005, 0.0004, -0.001};
    held.hasSpeeds = true;
    const auto correction = unbalanceOfRecording(craft, recordOf(craft, held), held.sensor);
    ASSERT_TRUE(correction) << english(correction.error().what);
    ASSERT_EQ(correction->values.size(), 1U);
    EXPECT_TRUE(test::warns(*correction, "order-folds"));
    EXPECT_GT(correction->values[0].spread, 0.15);
    EXPECT_EQ(english(correction->measurement), "airframe's vibration, 14 s");
}

// Oracle: by hand. Motors ±0.1 % from their mean: three and a half moments a second for each Hz of
// that. White noise of σ has 2σ²/rate in each Hz, so in the seven bins that make a line of a block
// of N samples 14σ²/N, which a sine of twice that square has, half of it in each part.
TEST(UnbalanceOfRecording, CountsMomentsByHowUnlikeMotorsTurn)
{
    const Craft craft = test::sampleCraft("reedbed");
    HeldRecord held{.noise = 0.3, .hasSpeeds = true};
    held.apart = {0.002, -0.002, 0.002, -0.002};
    const Recording recording = recordOf(craft, held);
    const AirframeColumns columns = airframeColumns(recording, held.sensor).value();
    const ShakeRecord record = shakeRecord(craft, recording, columns).value();
    ASSERT_FALSE(record.lines.front().motor);
    EXPECT_NEAR(record.seconds, 14, 0.4);
    const double speed = speedOf(craft, 0.4);
    EXPECT_NEAR(record.options.moments.value(), 3.5 * 14 * 0.002 * speed,
                0.04 * 3.5 * 14 * 0.002 * speed);
    double squares = 0;
    for (const ShakeLine& line : record.lines)
        squares += line.noise * line.noise / static_cast<double>(record.lines.size());
    EXPECT_NEAR(std::sqrt(squares) / (0.3 * std::sqrt(14 * speed / (16 * held.rate_hz))), 1.0,
                0.05);
}

TEST(UnbalanceOfRecording, RefusesWhatSaysNothing)
{
    const Craft craft = test::sampleCraft("reedbed");
    Recording recording = recordOf(craft, {.seconds = 3.0, .hasSpeeds = true});
    const auto fault = [&](std::optional<double> throttle = {}) {
        const auto correction = unbalanceOfRecording(craft, recording, {}, throttle);
        EXPECT_FALSE(correction);
        return correction ? std::string() : english(correction.error().what);
    };
    EXPECT_NE(fault(40.0).find("4000 %"), std::string::npos);
    for (Channel& channel : recording.channels)
        channel.name = "sensor";
    EXPECT_NE(fault().find("which way"), std::string::npos);
    std::mt19937 random(2);
    std::normal_distribution<double> noise(0, 1);
    for (std::size_t axis = 0; axis < 3; ++axis) {
        recording.channels[axis].name = std::string(1, static_cast<char>('x' + axis));
        for (double& value : recording.channels[axis].values)
            value = noise(random);
    }
    EXPECT_NE(fault().find("noise"), std::string::npos);
    recording.channels.erase(recording.channels.begin(), recording.channels.begin() + 3);
    EXPECT_NE(fault().find("no column of acceleration"), std::string::npos);
}

// Throttles held one after another, two seconds each, the speed in a column.
Recording stairs(const Craft& craft, const std::vector<double>& throttles, bool hasThrottle)
{
    Recording recording{.rate = 50};
    recording.channels = {{"rpm", Quantity::RotorSpeed, {}}};
    if (hasThrottle)
        recording.channels.push_back({"stick", Quantity::Throttle, {}});
    for (const double throttle : throttles)
        for (int k = 0; k < 100; ++k) {
            recording.channels[0].values.push_back(speedOf(craft, throttle));
            if (hasThrottle)
                recording.channels[1].values.push_back(throttle);
        }
    return recording;
}

// Oracle: definition. A craft that turns as its file says, noted at the pack's full voltage.
TEST(SpeedOfRecording, TakesThrottlesAsTheyWereHeld)
{
    const Craft craft = test::sampleCraft("reedbed");
    const std::vector<double> throttles{0.3, 0.5, 0.8};
    const auto byColumn = heldSpeeds(craft, stairs(craft, throttles, true), {});
    ASSERT_TRUE(byColumn) << english(byColumn.error().what);
    const std::vector<HeldThrottle> held{{0.3, 15.9}, {}, {0.8, 15.0}};
    const auto byHand = heldSpeeds(craft, stairs(craft, throttles, false), held);
    ASSERT_TRUE(byHand) << english(byHand.error().what);
    ASSERT_EQ(byColumn->readings.size(), 3U);
    ASSERT_EQ(byHand->readings.size(), 2U) << "one was passed over";
    for (std::size_t k = 0; k < 3; ++k) {
        EXPECT_NEAR(byColumn->readings[k].throttle, throttles[k], 0.02);
        EXPECT_NEAR(byColumn->readings[k].speed, speedOf(craft, throttles[k]), 1e-9);
    }
    EXPECT_EQ(byHand->readings[1].voltage, 15.0);
    EXPECT_NEAR(byHand->readings[1].speed, speedOf(craft, 0.8), 1e-9);

    const std::vector<HeldThrottle> tooFew{{0.3, {}}, {0.5, {}}};
    const auto wrong = heldSpeeds(craft, stairs(craft, throttles, false), tooFew);
    ASSERT_FALSE(wrong);
    EXPECT_NE(english(wrong.error().what).find("2 throttles are given, but the speed was steady 3"),
              std::string::npos)
        << english(wrong.error().what);
    const std::string first_rpm = std::to_string(std::lround(60 * speedOf(craft, 0.3)));
    EXPECT_NE(english(wrong.error().what).find("s at " + first_rpm + " rpm"), std::string::npos)
        << first_rpm << ": " << english(wrong.error().what);
    const auto none = heldSpeeds(craft, stairs(craft, throttles, false), {});
    ASSERT_FALSE(none);
    EXPECT_NE(english(none.error().what).find("no throttle column"), std::string::npos);
}

// Oracle: the speed climbs by a rev/s each tenth of a second, so no stretch is steady; whatever is
// given, that is what is said.
TEST(SpeedOfRecording, SaysThatNoSpeedIsSteady)
{
    const Craft craft = test::sampleCraft("reedbed");
    Recording recording{.rate = 50};
    recording.channels = {{"rpm", Quantity::RotorSpeed, {}}};
    for (int k = 0; k < 500; ++k)
        recording.channels[0].values.push_back(20 + 0.2 * k);
    const std::vector<HeldThrottle> one{{.throttle = 0.4, .voltage = {}}};
    for (const std::vector<HeldThrottle>& held : {std::vector<HeldThrottle>{}, one}) {
        const auto found = heldSpeeds(craft, recording, held);
        ASSERT_FALSE(found);
        EXPECT_EQ(found.error().code, Errc::BadInput);
        EXPECT_TRUE(english(found.error().what).starts_with("The speed is never steady"))
            << english(found.error().what);
    }
}

// Oracle: definition, as above. A throttle that rises by 2 % a second is as good as steps.
TEST(SpeedOfRecording, TakesAThrottleThatRisesSlowly)
{
    const Craft craft = test::sampleCraft("reedbed");
    Recording recording{.rate = 50};
    recording.channels = {{"rpm", Quantity::RotorSpeed, {}}, {"stick", Quantity::Throttle, {}}};
    for (int k = 0; k < 1500; ++k) {
        const double throttle = 0.2 + 0.02 * k / 50;
        recording.channels[0].values.push_back(speedOf(craft, throttle));
        recording.channels[1].values.push_back(throttle);
    }
    const auto found = heldSpeeds(craft, recording, {});
    ASSERT_TRUE(found) << english(found.error().what);
    EXPECT_EQ(found->readings.size(), 8U);
    for (const SteadySpeed& reading : found->readings)
        EXPECT_NEAR(reading.speed, speedOf(craft, reading.throttle), 0.004 * reading.speed);
    // A rotor that is a tenth of a second late is by so much behind a throttle that rises.
    EXPECT_NEAR(found->options.throttleSpread, std::hypot(SpeedOptions().throttleSpread, 0.002),
                1e-6);
}

// Oracle: by hand. Two columns, 2 % above and below a speed that climbs by 5 rev/s each second: the
// middle at each time, and a root mean square of 2 % about it.
TEST(SpeedOfRecording, FollowsTheMiddleOfItsColumns)
{
    Recording recording{.rate = 50};
    recording.channels = {{"rpm 1", Quantity::RotorSpeed, {}}, {"rpm 2", Quantity::RotorSpeed, {}}};
    for (int k = 0; k < 500; ++k)
        for (const double share : {0.98, 1.02})
            recording.channels[share < 1 ? 0 : 1].values.push_back(share * (30 + 5 * k / 50.0));
    const auto track = rotorsHeard(test::sampleCraft("reedbed"), recording);
    ASSERT_TRUE(track) << english(track.error().what);
    ASSERT_GT(track->time.size(), 50U);
    EXPECT_LT(track->time.back(), 10);
    for (std::size_t n = 0; n < track->time.size(); ++n) {
        EXPECT_NEAR(track->speed[n], 30 + 5 * track->time[n], 0.11);
        EXPECT_NEAR(track->width[n], 0.02 * track->speed[n], 1e-6);
    }
}

TEST(AxisOfName, ReadsWordsAndLetters)
{
    EXPECT_EQ(axisOfName("acc_x"), 0U);
    EXPECT_EQ(axisOfName("ay"), 1U);
    EXPECT_EQ(axisOfName("Accel Z (g)"), 2U);
    EXPECT_EQ(axisOfName("forward"), 0U);
    EXPECT_EQ(axisOfName("Links"), 1U);
    EXPECT_EQ(axisOfName("up"), 2U);
    EXPECT_EQ(axisOfName("upper plate x"), 0U);
    EXPECT_EQ(axisOfName("AccForward"), 0U);
    EXPECT_EQ(axisOfName("bay left (m/s²)"), 1U);
    EXPECT_TRUE(isOnBayByName("bay left (m/s²)"));
    EXPECT_FALSE(isOnBayByName("airframe left"));
    EXPECT_FALSE(axisOfName("axle"));
    EXPECT_FALSE(axisOfName("proxy"));
    EXPECT_FALSE(axisOfName(""));
}

// Oracle: definition. Two modes near the arm's, the lower one sideways; the sensor's y pointed up.
TEST(TappedArmOf, ReadsDirectionsByNameOrAxes)
{
    const Craft craft = test::sampleCraft("reedbed");
    Recording recording{.rate = 1000};
    recording.channels = {{"x", Quantity::Acceleration, {}},
                          {"y", Quantity::Acceleration, {}},
                          {"z", Quantity::Acceleration, {}}};
    RingDown ringDown;
    ringDown.channels = {0, 1, 2};
    ringDown.modes = {
        {.frequency_hz = 60, .lossFactor = 0.01, .share = 0.3, .shape = {0.6, 0.1, 1}},
        {.frequency_hz = 64, .lossFactor = 0.02, .share = 0.6, .shape = {0.1, 1, 0}},
        {.frequency_hz = 300, .lossFactor = 0.02, .share = 0.1, .shape = {0, 1, 0}}};
    const auto byName = tappedArmOf(craft, recording, ringDown, {}, true);
    ASSERT_TRUE(byName) << english(byName.error().what);
    ASSERT_TRUE(byName->vertical && byName->horizontal);
    EXPECT_EQ(byName->vertical->frequency_hz, 60);
    EXPECT_EQ(byName->horizontal->frequency_hz, 64);
    const auto byAxes =
        tappedArmOf(craft, recording, ringDown, {.axes = axesFromText("x:z:-y")}, true);
    ASSERT_TRUE(byAxes && byAxes->vertical && byAxes->horizontal);
    EXPECT_EQ(byAxes->vertical->frequency_hz, 64);
    EXPECT_EQ(byAxes->horizontal->frequency_hz, 60);
    // 0.64 of 1.64 of its power is upright: a mode that goes sideways.
    ringDown.modes = {{.frequency_hz = 60, .lossFactor = 0.01, .shape = {1, 0, 0.8}}};
    const auto leaning = tappedArmOf(craft, recording, ringDown, {}, true);
    ASSERT_TRUE(leaning) << english(leaning.error().what);
    EXPECT_FALSE(leaning->vertical);
    EXPECT_TRUE(leaning->horizontal);
    for (Channel& channel : recording.channels)
        channel.name = "sensor";
    EXPECT_FALSE(tappedArmOf(craft, recording, ringDown, {}, true));
    EXPECT_FALSE(tappedArmOf(craft, recording, ringDown, {.arm = 9}, true));
    ringDown.modes = {{.frequency_hz = 300, .lossFactor = 0.02, .shape = {0, 1, 0}}};
    const auto far = tappedArmOf(craft, recording, ringDown, {.axes = axesFromText("x:y:z")}, true);
    ASSERT_FALSE(far);
    EXPECT_NE(english(far.error().what).find("300 Hz"), std::string::npos);
}

}  // namespace
}  // namespace stillbay
