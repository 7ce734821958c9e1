// SPDX-License-Identifier: MIT
#include "core/recording/common_clock.h"

#include "core/recording/read_recording.h"
#include "tests/recording/noise.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

namespace stillbay {
namespace {

// What both sensors feel, in closed form: tones that swell and fade, among them a steady one.
class Motion {
public:
    Motion()
    {
        const std::vector<double> random = noise(21, 200);
        for (std::size_t k = 0; k + 5 <= random.size(); k += 5)
            m_tones.push_back({200 + 330 * random[k], random[k + 1] + 0.6, 7 * random[k + 2],
                               3 + 4 * random[k + 3], 7 * random[k + 4]});
    }

    double at(double t) const
    {
        const double turn = 2 * std::numbers::pi;
        double sum = 2 * std::sin(turn * 91.3 * t);
        for (const Tone& tone : m_tones)
            sum += tone.amplitude * std::sin(turn * tone.f_hz * t + tone.phase) *
                   std::sin(turn * tone.swell_hz * t + tone.swellPhase);
        return sum;
    }

    // From `begin`, by a clock that runs `drift` slow of the motion's time.
    std::vector<double> sampled(double begin, double drift, double rate, double duration,
                                std::uint32_t seed) const
    {
        std::vector<double> x = noise(seed, static_cast<std::size_t>(duration * rate));
        for (std::size_t n = 0; n < x.size(); ++n)
            x[n] = 3 * x[n] + 9.81 + at(begin + (1 + drift) * static_cast<double>(n) / rate);
        return x;
    }

private:
    struct Tone {
        double f_hz, amplitude, phase, swell_hz, swellPhase;
    };
    std::vector<Tone> m_tones;
};

// Oracle: the times at which the two were sampled: 1.234 s later, by a clock 37 ppm slow; each has
// its own rate and noise. Twelve places within half a minute found to a twentieth of a sample give
// the offset to some 20 µs and the drift to a few ppm.
TEST(CommonClock, FindsOffsetAndDrift)
{
    const Motion motion;
    const double drift = 37e-6, offset = 1.234;
    const std::vector<double> a = motion.sampled(0, 0, 1000, 30, 31);
    const std::vector<double> b = motion.sampled(offset, drift, 1600, 25, 32);
    const auto match = matchClocks(a, 1000, b, 1600);
    ASSERT_TRUE(match);
    EXPECT_NEAR(match->offset, offset, 5e-5);
    EXPECT_NEAR(match->drift, drift, 3e-6);
    EXPECT_GE(match->agreeing, 10U);

    const auto joined = onOneClock({1000, 5, {{"base", Quantity::Acceleration, a}}, {}},
                                   {1600, 0, {{"bay", Quantity::Acceleration, b}}, {}}, *match);
    ASSERT_TRUE(joined);
    EXPECT_EQ(joined->rate, 1000);
    EXPECT_NEAR(joined->start, 5 + offset, 1e-3);
    ASSERT_EQ(joined->channels.size(), 2U);
    double worst = 0;  // the noise of both is even, 1.5 either way, and passes a filter
    for (std::size_t n = 100; n + 100 < joined->samples(); ++n) {
        const double t = joined->start - 5 + static_cast<double>(n) / 1000;
        worst = std::max(worst, std::abs(joined->channels[1].values[n] - 9.81 - motion.at(t)));
    }
    EXPECT_LT(worst, 3.5);
    EXPECT_EQ(joined->flaws.back().kind, RecordingFlaw::Kind::Resampled);
    const std::string text = english(joined->flaws.back().text);
    EXPECT_NE(text.find("begins 1.234"), std::string::npos) << text;
    EXPECT_NEAR(std::stod(text.substr(text.find("differs by ") + 11)), 1e6 * drift, 3.0) << text;
}

// Oracle: as above, the second begun before the first and ended after it, at a third of the rate.
TEST(CommonClock, FindsASecondThatBeganBefore)
{
    const Motion motion;
    const std::vector<double> a = motion.sampled(8, 0, 3000, 12, 33);
    const std::vector<double> b = motion.sampled(2.5, -80e-6, 1000, 24, 34);
    const auto match = matchClocks(a, 3000, b, 1000);
    ASSERT_TRUE(match);
    EXPECT_NEAR(match->offset, -5.5, 1e-3);  // at b's start, where a had not begun
    EXPECT_NEAR(match->drift, -80e-6, 10e-6);
}

// Oracle: the sample's own page: the bay's recorder began 0.3513 s later and ran 40 ppm fast. What
// lies between both is a sweep through the tubes' resonances, which turn it round and delay it by
// up to some periods of 10 ms: the offset stays within its spread, the drift is not told.
TEST(CommonClock, LaysASweepThroughTubesOverEachOther)
{
    const auto airframe = readRecording(STILLBAY_SAMPLES_DIR "/recordings/sweep-airframe.csv");
    const auto bay = readRecording(STILLBAY_SAMPLES_DIR "/recordings/sweep-bay.csv");
    ASSERT_TRUE(airframe && bay);
    const auto match = matchClocks(airframe->channels.at(1).values, airframe->rate,
                                   bay->channels.at(0).values, bay->rate);
    ASSERT_TRUE(match) << english(match.error().what);
    EXPECT_NEAR(match->offset, 0.3513, 0.015);
    EXPECT_GT(match->offsetSpread, 0.002);
    EXPECT_LT(match->offsetSpread, 0.1);
}

// Oracle: Monte Carlo, the errors that the noise of 25 pairs of recorders makes. The drift's is
// as told, the offset's in the middle of what they share: the root mean square of either, of 25
// known to a seventh, lies by its mean spread.
TEST(CommonClock, TellsSpreadsAsLargeAsTheErrors)
{
    const Motion motion;
    const double drift = 120e-6, offset = 0.4;
    double offsetErrors = 0, driftErrors = 0, offsetSpreads = 0, driftSpreads = 0;
    constexpr std::uint32_t kPairs = 25;
    for (std::uint32_t pair = 0; pair < kPairs; ++pair) {
        const auto match = matchClocks(motion.sampled(0, 0, 1000, 4, 100 + pair), 1000,
                                       motion.sampled(offset, drift, 800, 3, 200 + pair), 800);
        ASSERT_TRUE(match);
        ASSERT_GE(match->agreeing, 10U);
        const double middle = 1.5;  // by b's clock
        offsetErrors += std::pow(match->offset - offset + (match->drift - drift) * middle, 2);
        driftErrors += std::pow(match->drift - drift, 2);
        offsetSpreads += match->offsetSpread / kPairs;
        driftSpreads += match->driftSpread / kPairs;
    }
    EXPECT_NEAR(std::sqrt(offsetErrors / kPairs) / offsetSpreads, 1, 0.35) << offsetSpreads;
    EXPECT_NEAR(std::sqrt(driftErrors / kPairs) / driftSpreads, 1, 0.35) << driftSpreads;
}

// Oracle: what a rate can hold. A tone that the second recorder alone can sample is gone where both
// are on the first one's clock, and does not fold; what both hold is there, in time.
TEST(CommonClock, LeavesOutWhatTheLowerRateCannotHold)
{
    const auto wave = [](double f_hz, double rate, double begin) {
        std::vector<double> x(static_cast<std::size_t>(3 * rate));
        for (std::size_t n = 0; n < x.size(); ++n)
            x[n] = std::sin(2 * std::numbers::pi * f_hz * (begin + static_cast<double>(n) / rate));
        return x;
    };
    const ClockMatch match{.offset = 0.7};
    for (const double f_hz : {60.0, 320.0}) {
        const auto joined = onOneClock(
            {500, 2, {{"a", Quantity::Acceleration, wave(35, 500, 0)}}, {}},
            {1100, 9, {{"b", Quantity::Acceleration, wave(f_hz, 1100, 0.7)}}, {}}, match);
        ASSERT_TRUE(joined);
        EXPECT_NEAR(joined->start, 2.7, 0.002);
        EXPECT_NEAR(static_cast<double>(joined->samples()), 2.3 * 500, 2);
        for (std::size_t n = 60; n + 60 < joined->samples(); ++n) {
            const double t = joined->start - 2 + static_cast<double>(n) / 500;
            const auto tone = [&](double f) {
                return std::sin(2 * std::numbers::pi * f * t);
            };
            ASSERT_NEAR(joined->channels[0].values[n], tone(35), 1e-3) << n;
            ASSERT_NEAR(joined->channels[1].values[n], f_hz < 250 ? tone(f_hz) : 0, 1e-3) << n;
        }
    }
}

// Oracle: the drift that was made, nearly the largest that is looked for: it moves the second by
// nearly ten samples against the first, far more than one block's place is known to.
TEST(CommonClock, FindsTheLargestDrift)
{
    const Motion motion;
    for (const double drift : {480e-6, -480e-6}) {
        const auto match = matchClocks(motion.sampled(0, 0, 800, 28, 41), 800,
                                       motion.sampled(1.1, drift, 800, 25, 42), 800);
        ASSERT_TRUE(match) << drift;
        EXPECT_NEAR(match->offset, 1.1, 1e-4) << drift;
        EXPECT_NEAR(match->drift, drift, 10e-6);
        EXPECT_GE(match->agreeing, 10U);
    }
}

TEST(CommonClock, SaysWhereNothingIsShared)
{
    const auto match = matchClocks(noise(1, 9000), 1000, noise(77, 9000), 1000);
    ASSERT_FALSE(match);
    EXPECT_EQ(match.error().code, Errc::NoAnswer);

    const auto ofShort = matchClocks(noise(1, 9000), 1000, noise(77, 450), 500);
    ASSERT_FALSE(ofShort);
    EXPECT_EQ(english(ofShort.error().what),
              "holds 450 samples, which is too few: at least 501 are needed");

    const Recording a{100, 0, {{"a", Quantity::Acceleration, noise(1, 300)}}, {}};
    const Recording b{100, 0, {{"b", Quantity::Acceleration, noise(2, 500)}}, {}};
    for (const double offset : {2.2, -4.2}) {  // of 3 s and 5 s 0.8 s are shared
        const auto joined = onOneClock(a, b, ClockMatch{.offset = offset});
        ASSERT_FALSE(joined);
        EXPECT_EQ(english(joined.error().what), "the two recordings overlap by less than 1\u00A0s");
    }
}

}  // namespace
}  // namespace stillbay
