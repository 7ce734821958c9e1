// SPDX-License-Identifier: MIT
#include "core/recording/rotor_speed.h"

#include "core/recording/read_recording.h"
#include "tests/recording/rotor_sound.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stillbay {
namespace {

double worstError(const RotorSpeedTrack& track, const RotorSound& sound)
{
    double worst = 0;
    for (std::size_t n = 0; n < track.time.size(); ++n)
        worst = std::max(worst, std::abs(track.speed[n] / sound.speed(track.time[n]) - 1));
    return worst;
}

// Oracle: the speed that the sound was made with, half a percent of it as promised; up and down
// by up to 12 % a second.
TEST(RotorSpeed, FollowsASweep)
{
    RotorSound sound;
    sound.speed = [](double t) {
        return 70 * std::exp(0.3 * std::sin(0.02 * t * t + 0.9));
    };
    sound.teeth = {{1, 0.1}, {2, 1}, {4, 0.4}, {6, 0.2}};
    const auto track = followRotorSpeed(sound.samples(6000, 10), 6000);
    ASSERT_TRUE(track);
    EXPECT_LT(worstError(*track, sound), 5e-3);
    EXPECT_GT(track->margin, 0.1);
}

// Oracle: the three speeds that were held, to half a percent. Combs with teeth missing, of two and
// three blades, heard and felt: none may be taken for a multiple or fraction of the speed.
TEST(RotorSpeed, FindsTheThrottlesThatWereHeld)
{
    struct Case {
        std::size_t blades;
        bool isSound;
        std::vector<RotorSound::Tooth> teeth;
    };
    const std::vector<Case> cases{
        {2, true, {{1, 0.15}, {2, 1}, {4, 0.5}, {6, 0.25}, {8, 0.12}}},
        {2, true, {{2, 1}, {4, 0.5}, {6, 0.25}}},           // no order 1
        {2, true, {{1, 0.5}, {2, 1}}},                      // nothing above the blade pass
        {2, true, {{2, 1}, {4, 0.4}}},                      // two teeth alone
        {2, true, {{1, 0.2}, {2, 1}, {6, 0.5}, {8, 0.2}}},  // no second multiple
        {2, true, {{4, 1}, {6, 0.7}, {8, 0.5}}},            // not even the blade pass
        {3, true, {{1, 0.2}, {3, 1}, {6, 0.4}}},
        {3, true, {{3, 1}, {6, 0.4}, {9, 0.3}}},
        {2, false, {{1, 1}, {2, 0.4}, {4, 0.1}}},  // felt: unbalance is the strongest
        {2, false, {{1, 1}, {2, 0.3}}},
        {2, false, {{2, 1}, {4, 0.5}, {6, 0.3}}},  // well balanced
        {3, false, {{1, 0.7}, {3, 1}, {6, 0.2}}},
    };
    for (std::size_t c = 0; c < cases.size(); ++c) {
        RotorSound sound;
        sound.teeth = cases[c].teeth;
        const double held[] = {61.3, 88.9, 117.4};
        sound.speed = [&](double t) {
            return held[std::min(2, static_cast<int>(t / 2.4))];
        };
        RotorSpeedOptions options;
        options.blades = cases[c].blades;
        options.isSound = cases[c].isSound;
        const auto track = followRotorSpeed(sound.samples(3000, 7.2), 3000, options);
        ASSERT_TRUE(track) << c;
        const std::vector<SteadyStretch> stretches = steadyStretches(*track, 1.2);
        ASSERT_EQ(stretches.size(), 3U) << c;
        for (std::size_t k = 0; k < 3; ++k) {
            EXPECT_NEAR(stretches[k].speed, held[k], 5e-3 * held[k]) << c;
            EXPECT_NEAR(stretches[k].from, 2.4 * static_cast<double>(k), 0.5) << c;
            EXPECT_NEAR(stretches[k].to, 2.4 * static_cast<double>(k + 1), 0.5) << c;
        }
    }
}

// Oracle: mean and standard deviation of the four speeds that were made, weighted alike; beats over
// the stretch leave a tenth of the width.
TEST(RotorSpeed, GivesSeveralMotorsAsAWidth)
{
    RotorSound sound;
    sound.teeth = {{1, 0.1}, {2, 1}, {4, 0.5}, {6, 0.3}};
    sound.speed = [](double) {
        return 93.7;
    };
    sound.motors = {0.985, 0.996, 1.003, 1.016};
    const auto track = followRotorSpeed(sound.samples(4000, 12), 4000);
    ASSERT_TRUE(track);
    const std::vector<SteadyStretch> stretches = steadyStretches(*track, 3, 0.03);
    ASSERT_EQ(stretches.size(), 1U);
    EXPECT_NEAR(stretches[0].speed, 93.7, 5e-3 * 93.7);
    EXPECT_NEAR(stretches[0].width, 0.01130 * 93.7, 0.25 * 0.0113 * 93.7);

    sound.motors = {1};
    const auto one = followRotorSpeed(sound.samples(4000, 4), 4000);
    ASSERT_TRUE(one);
    EXPECT_LT(steadyStretches(*one)[0].width, 0.002 * 93.7);
}

// Oracle: the sample's own page: 51.41, 79.29 and 107.19 turns a second, four motors within 0.4 %.
// The mean is by power, which the motors do not share alike: half a percent, as promised.
TEST(RotorSpeed, HearsTheThrottlesOfTheSample)
{
    const auto sound = readRecording(STILLBAY_SAMPLES_DIR "/recordings/motor-sound.flac");
    ASSERT_TRUE(sound) << english(sound.error().what);
    const auto track = followRotorSpeed(sound->channels.at(0).values, sound->rate);
    ASSERT_TRUE(track);
    EXPECT_GT(track->margin, 0.1);
    const std::vector<SteadyStretch> stretches = steadyStretches(*track);
    ASSERT_EQ(stretches.size(), 3U);
    const double speeds[] = {51.41, 79.29, 107.19};
    for (std::size_t k = 0; k < 3; ++k) {
        EXPECT_NEAR(stretches[k].speed, speeds[k], 5e-3 * speeds[k]);
        EXPECT_LT(stretches[k].width, 6e-3 * speeds[k]);
    }
}

// Oracle: definition. The unit of a record is none of the speed's: the same turned into a millionth
// or a million of it has the same speeds, widths and qualities.
TEST(RotorSpeed, IsTheSameInAnyUnit)
{
    RotorSound sound;
    sound.teeth = {{1, 0.1}, {2, 1}, {4, 0.5}, {6, 0.3}};
    sound.speed = [](double t) {
        return 70 + 5 * t;
    };
    sound.motors = {0.99, 1.01};
    const std::vector<double> x = sound.samples(3000, 2.5);
    const auto track = followRotorSpeed(x, 3000);
    ASSERT_TRUE(track);
    for (const double unit : {1e-6, 1e6}) {
        std::vector<double> other = x;
        for (double& value : other)
            value *= unit;
        const auto same = followRotorSpeed(other, 3000);
        ASSERT_TRUE(same);
        ASSERT_EQ(same->speed.size(), track->speed.size());
        EXPECT_NEAR(same->margin, track->margin, 1e-6);
        for (std::size_t n = 0; n < track->speed.size(); ++n) {
            EXPECT_NEAR(same->speed[n], track->speed[n], 1e-6) << unit;
            EXPECT_NEAR(same->width[n], track->width[n], 1e-6) << unit;
            EXPECT_NEAR(same->quality[n], track->quality[n], 1e-6) << unit;
        }
    }
}

// Oracle: what was made, one motor alone. However fast it speeds up, that is no width among motors:
// within a window the speed runs over 6 turns a second, under the window's square with a deviation
// of 0.14 of it; the grid of speeds leaves a half of that at most.
TEST(RotorSpeed, TakesNoSweepForAWidth)
{
    RotorSound sound;
    sound.teeth = {{1, 0.1}, {2, 1}, {4, 0.5}, {6, 0.3}};
    sound.speed = [](double t) {
        return 60 + 12 * t;
    };
    sound.noisiness = 0.02;
    const auto track = followRotorSpeed(sound.samples(4000, 4), 4000);
    ASSERT_TRUE(track);
    double mean = 0;
    for (std::size_t n = 1; n + 1 < track->width.size(); ++n)
        mean += track->width[n] / static_cast<double>(track->width.size() - 2);
    EXPECT_LT(mean, 0.5 * 0.14 * 6);
}

// Oracle: by hand. Two clear teeth are all that is asked for; one alone, heard, is the blade pass
// without order 1, (1 − 0.1)/1.6, or order 1, 0.7, which is 0.22 less of it.
TEST(RotorSpeed, TellsHowMuchOfACombThereIs)
{
    RotorSound sound;
    sound.speed = [](double) {
        return 80;
    };
    sound.noisiness = 0.01;
    sound.teeth = {{1, 0.1}, {2, 1}, {4, 0.5}, {6, 0.4}};
    const auto whole = followRotorSpeed(sound.samples(3000, 3), 3000);
    sound.teeth = {{2, 1}};
    const auto lone = followRotorSpeed(sound.samples(3000, 3), 3000);
    ASSERT_TRUE(whole && lone);
    for (std::size_t n = 0; n < whole->quality.size(); ++n)
        EXPECT_EQ(whole->quality[n], 1.0);
    for (std::size_t n = 0; n < lone->quality.size(); ++n)
        EXPECT_NEAR(lone->quality[n], 0.9 / 1.6, 0.02);
    EXPECT_NEAR(lone->margin, 1 - 0.7 / 0.9, 0.03);
    EXPECT_GT(whole->margin, 0.3);
}

// Oracle: by hand. Within 2 % of the slowest is one stretch, from its first window to its last;
// speed and quality are means, the width a root of mean squares.
TEST(RotorSpeed, TellsAStretchByItsMeans)
{
    RotorSpeedTrack track;
    for (int n = 0; n < 9; ++n)
        track.time.push_back(0.25 + 0.5 * n);
    track.speed = {100, 101, 101.5, 100.5, 104, 105, 105, 104, 60};
    track.width = {3, 4, 0, 5, 1, 7, 1, 7, 2};
    track.quality = {0.4, 0.6, 0.8, 1.0, 0.9, 0.9, 0.5, 0.5, 0.1};
    const std::vector<SteadyStretch> stretches = steadyStretches(track, 1.5, 0.02);
    ASSERT_EQ(stretches.size(), 2U);
    EXPECT_DOUBLE_EQ(stretches[0].from, 0.25);
    EXPECT_DOUBLE_EQ(stretches[0].to, 1.75);
    EXPECT_DOUBLE_EQ(stretches[0].speed, 100.75);
    EXPECT_DOUBLE_EQ(stretches[0].width, std::sqrt(12.5));
    EXPECT_DOUBLE_EQ(stretches[0].quality, 0.7);
    EXPECT_DOUBLE_EQ(stretches[1].from, 2.25);
    EXPECT_DOUBLE_EQ(stretches[1].to, 3.75);
    EXPECT_DOUBLE_EQ(stretches[1].speed, 104.5);
    EXPECT_DOUBLE_EQ(stretches[1].width, 5);
    EXPECT_DOUBLE_EQ(stretches[1].quality, 0.7);
    EXPECT_TRUE(steadyStretches(track, 1.6, 0.02).empty());
}

// A silence between is said by its quality, noise alone by a refusal.
TEST(RotorSpeed, KnowsSilence)
{
    RotorSound sound;
    sound.teeth = {{2, 1}, {4, 0.5}};
    sound.speed = [](double) {
        return 80;
    };
    std::vector<double> x = sound.samples(3000, 9);
    const std::vector<double> hiss = noise(44, x.size());
    for (std::size_t n = 9000; n < 18000; ++n)
        x[n] = hiss[n];
    const auto track = followRotorSpeed(x, 3000);
    ASSERT_TRUE(track);
    const std::vector<SteadyStretch> stretches = steadyStretches(*track);
    ASSERT_EQ(stretches.size(), 2U);
    EXPECT_NEAR(stretches[0].to, 3, 0.4);
    EXPECT_NEAR(stretches[1].from, 6, 0.4);

    const auto nothing = followRotorSpeed(hiss, 3000);
    ASSERT_FALSE(nothing);
    EXPECT_EQ(nothing.error().code, Errc::NoAnswer);
    const auto slow = followRotorSpeed(x, 1000);
    ASSERT_FALSE(slow);
    EXPECT_EQ(english(slow.error().what),
              "a rate of 1000\u00A0Hz is too low to hear the blade pass up to 350 turns a second: "
              "at least "
              "1540\u00A0Hz are needed");
    const auto brief = followRotorSpeed(std::span(x).first(900), 3000);
    ASSERT_FALSE(brief);
    EXPECT_EQ(english(brief.error().what),
              "holds 900 samples, which is too few: at least 1501 are needed");
    std::stop_source stop;
    stop.request_stop();
    EXPECT_FALSE(followRotorSpeed(x, 3000, {}, stop.get_token()));
}

}  // namespace
}  // namespace stillbay
