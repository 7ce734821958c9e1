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
}

TEST(CommonClock, SaysWhereNothingIsShared)
{
    const auto match = matchClocks(noise(1, 9000), 1000, noise(77, 9000), 1000);
    ASSERT_FALSE(match);
    EXPECT_EQ(match.error().code, Errc::NoAnswer);
}

}  // namespace
}  // namespace stillbay
