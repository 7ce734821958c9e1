// SPDX-License-Identifier: MIT
#include "core/base/units.h"
#include "core/calibrate/hang.h"
#include "core/calibrate/pluck.h"
#include "core/calibrate/speed_at_throttle.h"
#include "core/calibrate/tap.h"
#include "core/craft/craft.h"
#include "core/recording/read_recording.h"
#include "core/recording/ring_down.h"
#include "core/recording/rotor_speed.h"
#include "tests/assess/crafts.h"
#include "tests/recordings/samples.h"
#include "tests/recordings/true_reedbed.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace stillbay {
namespace {

Recording sampleRecording(const char* name)
{
    const auto recording =
        readRecording(std::filesystem::path(STILLBAY_SAMPLES_DIR) / "recordings" / name);
    EXPECT_TRUE(recording) << name << ": " << (recording ? "" : english(recording.error().what));
    return recording.value_or(Recording{});
}

const Setup& recordedCraft()
{
    static const auto craft = test::trueReedbed(test::sampleCraft("reedbed"));
    return craft;
}

double meanOf(const std::vector<double>& values)
{
    return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

struct WhatIsRead {
    const char* file;
    double rate_hz;
    const char* up;  // the channel that feels gravity
};

// Oracle: what the generator wrote, in SI. Gravity to what the decays leave of it, whose pushes are
// left out of the tap; the rate of uneven stamps to what they scatter.
TEST(SampleRecordings, AreReadInSiAsTheirHeadingsSay)
{
    for (const WhatIsRead& sample : {WhatIsRead{"pluck-sideways.csv", 200, "z"},
                                     {"pluck-nod.csv", 200, "z"},
                                     {"arm-tap.csv", 1600, "up"},
                                     {"sweep-airframe.csv", 1000, "up"},
                                     {"sweep-bay.csv", 500, "up"}}) {
        SCOPED_TRACE(sample.file);
        const Recording recording = sampleRecording(sample.file);
        EXPECT_NEAR(recording.rate, sample.rate_hz, 5e-3 * sample.rate_hz);
        const Channel* up = channelOf(recording, sample.up);
        ASSERT_NE(up, nullptr);
        EXPECT_EQ(up->quantity, Quantity::Acceleration);
        EXPECT_NEAR(meanOf(up->values), kGravity, 0.1);
    }
    const Recording log = sampleRecording("sweep-airframe.csv");
    const Channel* throttle = channelOf(log, "throttle");
    ASSERT_NE(throttle, nullptr);
    EXPECT_EQ(throttle->quantity, Quantity::Throttle);
    EXPECT_NEAR(throttle->values.front(), 0.08, 1e-3);
    EXPECT_NEAR(throttle->values.back(), 0.40, 1e-3);
}

// Oracle: the modes of the simulated bay, whose own motion in time is nonlinear: first swings of
// 2 mm on 20 mm of tube shift a frequency by some per cent.
TEST(SampleRecordings, PlucksRingAtTheTrueModes)
{
    constexpr double kShift = 0.02, kLoss = 0.25, kAudible = 0.05;
    const auto expectModes = [&](const char* file, const test::PluckedBay& plucked) {
        SCOPED_TRACE(file);
        const auto heard = ringDown(sampleRecording(file));
        ASSERT_TRUE(heard) << english(heard.error().what);
        EXPECT_EQ(heard->plucks.size(), 4u);
        const auto modes = test::trueModes(plucked);
        int audible = 0;
        for (const DecayingMode& mode : heard->modes) {
            if (mode.share < kAudible)
                continue;
            ++audible;
            const auto nearest =
                *std::min_element(modes.begin(), modes.end(), [&](const auto& a, const auto& b) {
                    return std::abs(a[0] - mode.frequency_hz) < std::abs(b[0] - mode.frequency_hz);
                });
            EXPECT_NEAR(mode.frequency_hz, nearest[0], kShift * nearest[0]);
            EXPECT_NEAR(mode.lossFactor, nearest[1], kLoss * nearest[1]);
        }
        EXPECT_GE(audible, 2);
    };
    expectModes("pluck-sideways.csv", test::pluckedSideways(recordedCraft()));
    expectModes("pluck-nod.csv", test::pluckedDown(recordedCraft()));
}

// Oracle: the finite elements that the tap was made of. Linear, so to what noise leaves of it.
TEST(SampleRecordings, TheTappedArmRingsAtItsTrueFrequencies)
{
    const std::vector<double> frequencies = test::tappedFrequencies_hz(recordedCraft());
    const auto heard = ringDown(sampleRecording("arm-tap.csv"));
    ASSERT_TRUE(heard) << english(heard.error().what);
    EXPECT_EQ(heard->plucks.size(), 3u);
    for (std::size_t lowest = 0; lowest < 3; ++lowest) {
        const double f_hz = frequencies[lowest];
        const auto mode = std::min_element(heard->modes.begin(), heard->modes.end(),
                                           [&](const DecayingMode& a, const DecayingMode& b) {
                                               return std::abs(a.frequency_hz - f_hz) <
                                                      std::abs(b.frequency_hz - f_hz);
                                           });
        EXPECT_NEAR(mode->frequency_hz, f_hz, 0.002 * f_hz);
        EXPECT_NEAR(mode->lossFactor, test::kTrueArmLoss, 0.1 * test::kTrueArmLoss);
    }
}

std::vector<SteadyStretch> heldInSound()
{
    const Recording sound = sampleRecording("motor-sound.flac");
    const auto track = followRotorSpeed(sound.channels.at(0).values, sound.rate);
    EXPECT_TRUE(track) << english(track.error().what);
    return track ? steadyStretches(*track) : std::vector<SteadyStretch>{};
}

// Oracle: the speeds that the sound was made with, to half a per cent.
TEST(SampleRecordings, TheSoundHasTheTrueSpeeds)
{
    const std::vector<SteadyStretch> held = heldInSound();

    ASSERT_EQ(held.size(), std::size(test::kHeldThrottles));
    for (std::size_t h = 0; h < held.size(); ++h) {
        const test::HeldThrottle& truth = test::kHeldThrottles[h];
        const double speed = test::trueSpeed(recordedCraft(), truth.stick);
        EXPECT_NEAR(held[h].speed, speed, 0.005 * speed);
        EXPECT_NEAR(held[h].from, truth.from, 0.7);
        EXPECT_NEAR(held[h].to, truth.to, 0.7);
    }
}

double valueOf(const Correction& correction, std::string_view key)
{
    for (const CorrectedValue& value : correction.values)
        if (value.key == key)
            return value.after;
    ADD_FAILURE() << "no " << key;
    return 0.0;
}

// Oracle: dynamic ratio and loss of the bay that was plucked, which moved as its tubes' own forces
// asked, heard by a phone whose stamps are uneven. The modulus from the hang test of the same
// recordings' README, marks read to half a millimetre: the dynamic modulus is what is measured.
TEST(SampleRecordings, APluckGivesTheTubesTrueRatioAndLoss)
{
    const std::vector<HungMass> hung{{1000, 100, 111}, {1800, 100, 121.5}};
    const auto modulus = hangTest(test::sampleCraft("reedbed"), hung);
    ASSERT_TRUE(modulus) << english(modulus.error().what);
    const auto craft = accept(test::sampleCraft("reedbed"), *modulus, "2026-05-01");
    ASSERT_TRUE(craft) << english(craft.error().what);
    const PluckOptions phone{.sensor = {.mass_g = test::kPhone_g,
                                        .centre_mm = test::kPhone_mm,
                                        .size_mm = {150, 70, 8},
                                        .axes = axesFromText("-y:x:z")}};
    for (const char* file : {"pluck-sideways.csv", "pluck-nod.csv"}) {
        SCOPED_TRACE(file);
        const auto answer = pluckTest(*craft, sampleRecording(file), phone);

        ASSERT_TRUE(answer) << english(answer.error().what);
        EXPECT_NE(answer->correction.mark.quality, Quality::Poor)
            << english(answer->correction.mark.reason);
        const double dynamicModulus =
            *craft->tube.youngs_modulus_mpa * valueOf(answer->correction, "tube.dynamic_ratio");
        EXPECT_NEAR(dynamicModulus / (test::kTrueYoungsModulus_mpa * test::kTrueDynamicRatio), 1,
                    0.01);
        EXPECT_NEAR(valueOf(answer->correction, "tube.loss_factor"), test::kTrueTubeLoss,
                    0.1 * test::kTrueTubeLoss);
    }
}

// The lowest mode that moves this channel more than any other.
TappedMode lowestAlong(const RingDown& heard, const Recording& recording, std::string_view name)
{
    for (const DecayingMode& mode : heard.modes) {
        const auto most = std::max_element(
            mode.shape.begin(), mode.shape.end(),
            [](const Complex& a, const Complex& b) { return std::abs(a) < std::abs(b); });
        const std::size_t channel =
            heard.channels[static_cast<std::size_t>(most - mode.shape.begin())];
        if (recording.channels[channel].name == name && mode.share > 0.01)
            return {mode.frequency_hz, mode.lossFactor, std::max(mode.frequencySpread, 1e-3),
                    std::max(mode.lossSpread, 0.02)};
    }
    ADD_FAILURE() << "nothing rings along " << name;
    return {};
}

// Oracle: modulus and loss of the arm that was tapped, finite elements. Twice what the frequencies
// are heard to, and the loss as it is heard.
TEST(SampleRecordings, TheTapGivesTheArmsTrueModulus)
{
    const Recording tap = sampleRecording("arm-tap.csv");
    const auto heard = ringDown(tap);
    ASSERT_TRUE(heard) << english(heard.error().what);
    const TappedArm arm{.arm = 0,
                        .vertical = lowestAlong(*heard, tap, "up"),
                        .horizontal = lowestAlong(*heard, tap, "left")};

    const auto correction = tapTest(test::sampleCraft("reedbed"), {&arm, 1});

    ASSERT_TRUE(correction) << english(correction.error().what);
    EXPECT_NEAR(valueOf(*correction, "airframe.arm.youngs_modulus_gpa"), test::kTrueArmModulus_gpa,
                0.01 * test::kTrueArmModulus_gpa);
    EXPECT_NEAR(valueOf(*correction, "airframe.arm.loss_factor"), test::kTrueArmLoss,
                0.1 * test::kTrueArmLoss);
}

// Oracle: the speeds of the craft that was heard. What is corrected may be KV or the curve; with it
// the craft turns as it did.
TEST(SampleRecordings, TheSoundMakesTheCraftTurnAsItDid)
{
    const std::vector<SteadyStretch> held = heldInSound();
    ASSERT_EQ(held.size(), std::size(test::kHeldThrottles));
    std::vector<SteadySpeed> readings;
    for (std::size_t h = 0; h < held.size(); ++h)
        readings.push_back({test::kHeldThrottles[h].stick, held[h].speed, {}});
    const auto reedbed = test::sampleCraft("reedbed");

    const auto correction = speedAtThrottle(reedbed, readings);

    ASSERT_TRUE(correction) << english(correction.error().what);
    const auto corrected = accept(reedbed, *correction, "2026-05-01");
    ASSERT_TRUE(corrected) << english(corrected.error().what);
    for (const test::HeldThrottle& truth : test::kHeldThrottles) {
        const double speed = test::trueSpeed(recordedCraft(), truth.stick);
        EXPECT_NEAR(test::trueSpeed(*corrected, truth.stick), speed, 0.01 * speed);
    }
}

}  // namespace
}  // namespace stillbay
