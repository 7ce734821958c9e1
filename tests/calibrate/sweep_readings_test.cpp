// SPDX-License-Identifier: MIT
#include "core/calibrate/sweep_readings.h"

#include "core/base/units.h"
#include "core/calibrate/predicted_orders.h"
#include "core/craft/craft.h"
#include "core/setup/unbalance.h"
#include "tests/assess/crafts.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

namespace stillbay {
namespace {

using Craft = Setup;  // inside TEST the name Setup is taken

// Oracle: the motors' shake by another road, the airframe with the dynamic stiffness of the bay
// that hangs from it (unbalance.h), their squares added. A skew craft, a skew axis.
TEST(PredictedOrders, AddTheMotorsPowersOfTheAirframe)
{
    const Craft craft = test::skewCraft(5);
    const SensorPoint sensor{{0.04, -0.03, 0.02}, Vector3d(1, -2, 0.5).normalized()};
    const std::vector<double> throttles{0.2, 0.35, 0.5, 0.35};  // one twice
    const auto orders = predictedOrders(craft, sensor, SensorSeat::Airframe, throttles);
    ASSERT_TRUE(orders) << english(orders.error().what);
    EXPECT_EQ(orders->front().order, 1);
    const SensorAxis axis{sensor.place, sensor.axis};
    const ExcitedAirframe excited = makeExcitedAirframe(craft);
    for (std::size_t k = 0; k < throttles.size(); ++k) {
        const double speed = rotorSpeed(excited.drive, throttles[k], excited.fullVoltage);
        const auto motions = shakeOfMotors(craft, std::span(&axis, 1), speed).value();
        double power = 0;
        for (std::size_t motor = 0; motor < motions.size(); ++motor)
            power += std::norm(excited.unbalance[motor] * motions[motor][0]);
        EXPECT_NEAR(orders->front().amplitude[k], std::sqrt(power), 1e-6 * std::sqrt(power));
    }
}

// Oracle: H1 of one throttle and its coherence, which the airframe's sensor enters; what the bay's
// shows does not depend on where that one sits.
TEST(PredictedOrders, OfTheBayDoNotDependOnAnotherSensor)
{
    const Craft craft = test::skewCraft(5);
    const SensorPoint sensor{{0.02, 0.01, -0.03}, Vector3d::UnitY()};
    const double throttle = 0.4;
    const auto orders =
        predictedOrders(craft, sensor, SensorSeat::Bay, std::span(&throttle, 1)).value();
    const auto transfer = predictedTransfer(craft, {{0, 0.05, 0}, Vector3d::UnitZ()}, sensor,
                                            std::span(&throttle, 1), 1e-3)
                              .value();
    ASSERT_EQ(transfer.frequency_hz.size(), orders.size());
    for (std::size_t k = 0; k < orders.size(); ++k) {
        const double power =
            2 * transfer.input[k] * std::pow(transfer.magnitude[k], 2) / transfer.coherence[k];
        EXPECT_NEAR(orders[k].amplitude.at(0), std::sqrt(power), 1e-6 * std::sqrt(power));
    }
}

// A stick that goes from 10 to 42 % in 16 s, then jumps to full and holds; rotors whose speed is
// 3 + 100 times the throttle.
struct Swept {
    static constexpr double kRate = 800;
    std::vector<double> throttle;
    SpeedOverTime speed;

    Swept()
    {
        for (int k = 0; k < 20 * static_cast<int>(kRate); ++k) {
            const double t = k / kRate;
            throttle.push_back(t < 16 ? 0.1 + 0.02 * t : 1.0);
        }
        for (double t = 0.25; t < 19.7; t += 0.1) {
            const double u = throttle[static_cast<std::size_t>(t * kRate)];
            speed.time.push_back(t);
            speed.speed.push_back(t > 16 && t < 16.3 ? 60.0 : 3 + 100 * u);  // still catching up
        }
    }
};

// Oracle: by hand. Speeds anywhere from half to 1.35 of what is computed lie within 4 % of any line
// a tenth of the time, where a third is needed; half of them on it are heard, and told as that.
TEST(SweepReadings, HearNoSpeedInWhatDoesNotAgree)
{
    const Swept swept;
    const auto computed = [](double throttle) {
        return 5 + 190 * throttle;
    };
    std::mt19937 random(4);
    std::uniform_real_distribution<double> any(0.52, 1.33);
    const auto heardWith = [&](int eachOf) {
        RotorSpeedTrack track;
        int k = 0;
        for (double t = 0.25; t < 15.7; t += 0.05, ++k) {
            const double share = any(random);
            track.time.push_back(t);
            track.speed.push_back(
                computed(swept.throttle[static_cast<std::size_t>(t * Swept::kRate)]) *
                (eachOf > 0 && k % eachOf == 0 ? 0.9 : share));
            track.quality.push_back(0.9);
        }
        return heardSpeed(std::vector{track}, swept.throttle, Swept::kRate, computed);
    };
    EXPECT_FALSE(heardWith(0));
    const auto half = heardWith(2);
    ASSERT_TRUE(half);
    EXPECT_NEAR(half->agreeing, 0.5 + 0.5 * 0.1, 0.05);
}

// Oracle: the speeds the tracks were made with, 0.8 to 0.9 of what the craft computes. One channel
// hears a tone of the craft for a third of the time, the other twice the speed now and then, or
// nothing.
TEST(SweepReadings, HearTheSpeedThroughTonesOfTheCraft)
{
    const Swept swept;
    const auto computed = [](double throttle) {
        return 5 + 190 * throttle;
    };
    const auto truth = [&](double throttle) {
        return computed(throttle) * (0.8 + 0.2 * throttle);
    };
    std::vector<RotorSpeedTrack> tracks(2);
    for (double t = 0.25; t < 15.7; t += 0.1) {
        const double speed = truth(swept.throttle[static_cast<std::size_t>(t * Swept::kRate)]);
        const bool isTone = t > 4 && t < 9;
        tracks[0].time.push_back(t);
        tracks[0].speed.push_back(isTone ? 31.0 : speed);
        tracks[0].quality.push_back(0.9);
        const auto k = tracks[1].time.size();
        tracks[1].time.push_back(t);
        tracks[1].speed.push_back(k % 4 == 0 ? 2 * speed : 1.01 * speed);
        tracks[1].quality.push_back(k % 5 == 0 ? 0.1 : 0.6);
    }
    const auto heard = heardSpeed(tracks, swept.throttle, Swept::kRate, computed);
    ASSERT_TRUE(heard);
    EXPECT_GT(heard->agreeing, 0.6);
    const auto expectTrue = [&](const SpeedOverTime& speed, double tolerance) {
        for (std::size_t k = 0; k < speed.time.size(); ++k) {
            const double at =
                truth(swept.throttle[static_cast<std::size_t>(speed.time[k] * Swept::kRate)]);
            EXPECT_NEAR(speed.speed[k], at, tolerance * at) << speed.time[k];
        }
    };
    expectTrue(heard->heard, 0.055);  // what is farther off is not heard
    expectTrue(heard->followed, 0.02);
    EXPECT_EQ(heard->followed.time.size(), tracks[0].time.size());
    for (RotorSpeedTrack& track : tracks)  // something, but not the rotors
        std::fill(track.speed.begin(), track.speed.end(), 60.0);
    EXPECT_FALSE(heardSpeed(tracks, swept.throttle, Swept::kRate, computed));
    EXPECT_FALSE(heardSpeed({}, swept.throttle, Swept::kRate, computed));
}

// Oracle: the speeds the record was made with. The jump's own are not among them.
TEST(SweepReadings, GiveTheSpeedAtStretchesOfThrottle)
{
    const Swept swept;
    const auto readings = speedReadings(swept.throttle, Swept::kRate, swept.speed);
    ASSERT_GE(readings.size(), 3u);
    EXPECT_LE(readings.size(), 8u);
    EXPECT_NEAR(readings.back().throttle, 1.0, 1e-9);
    for (std::size_t k = 0; k < readings.size(); ++k) {
        EXPECT_NEAR(readings[k].speed, 3 + 100 * readings[k].throttle, 0.1);
        if (k > 0) {
            EXPECT_GT(readings[k].throttle, readings[k - 1].throttle);
        }
    }
    EXPECT_TRUE(speedReadings({}, Swept::kRate, swept.speed).empty());
    EXPECT_TRUE(speedReadings(swept.throttle, Swept::kRate, {}).empty());
}

// Oracle: sines of known size once and twice a turn, in white noise of known density: within
// 3/16 of an order either side lie 6/16 n Hz of it, σ² · 2/rate a hertz. Two axes.
TEST(SweepReadings, GiveOrderOneOfEachAxisAndTheNoise)
{
    constexpr double kSigma = 0.05, kFirst = 0.6, kSecond = 0.25;
    const Swept swept;
    std::mt19937 draw(5);
    std::normal_distribution<double> gauss(0, kSigma);
    std::vector<double> x, y;
    double turns = 0;
    for (const double throttle : swept.throttle) {
        turns += (3 + 100 * throttle) / Swept::kRate;
        const double angle = 2 * std::numbers::pi * turns;
        x.push_back(kFirst * std::sin(angle) + 2 * std::sin(2 * angle) + gauss(draw));
        y.push_back(kSecond * std::cos(angle) + gauss(draw));
    }
    const std::span<const double> axes[] = {x, y};
    const auto lines = shakeReadings(axes, swept.throttle, Swept::kRate, swept.speed);
    ASSERT_TRUE(lines) << english(lines.error().what);
    int steady = 0;
    for (const ShakeLine& line : *lines) {
        ASSERT_EQ(line.acceleration.size(), 2u);
        if (line.throttle < 0.2 || line.throttle > 0.4)
            continue;
        ++steady;
        const double noise = std::sqrt(kSigma * kSigma * 2 / Swept::kRate * 6 / 16 * *line.speed);
        EXPECT_NEAR(*line.speed, 3 + 100 * line.throttle, 0.3);
        EXPECT_NEAR(std::abs(line.acceleration[0]), kFirst, 0.02);
        EXPECT_NEAR(std::abs(line.acceleration[1]), kSecond, 0.02);
        EXPECT_GT(line.noise, 0.4 * noise);  // a few blocks' power scatters by a half
        EXPECT_LT(line.noise, 2.5 * noise);
    }
    EXPECT_GE(steady, 15);
}

}  // namespace
}  // namespace stillbay
