// SPDX-License-Identifier: MIT
#include "core/recording/ring_down.h"

#include "core/base/format.h"
#include "core/recording/read_recording.h"
#include "tests/recording/decay_case.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <random>
#include <string>

namespace stillbay {
namespace {

using test::Decays;

constexpr double kTurn = 2.0 * std::numbers::pi;

Recording oneChannel(double rate, std::vector<double> values)
{
    Recording recording;
    recording.rate = rate;
    recording.channels.push_back({"x", Quantity::Acceleration, std::move(values)});
    return recording;
}

// White noise of deviation 1 in some channels.
Recording noiseOnly(unsigned seed, std::size_t channels, double rate, std::size_t samples)
{
    std::mt19937 random(seed);
    std::normal_distribution<double> normal;
    Recording recording = oneChannel(rate, std::vector<double>(samples));
    recording.channels.resize(channels, recording.channels[0]);
    for (Channel& channel : recording.channels)
        for (double& value : channel.values)
            value = normal(random);
    return recording;
}

// One pluck of two modes on three axes, the third nearly silent.
Decays twoModes(double rate)
{
    Decays decays;
    decays.rate = rate;
    decays.duration = 3.0;
    decays.modes = {{14.6, 0.06}, {22.3, 0.11}};
    decays.channels = 3;
    decays.noise = {0.02, 0.03, 0.02};
    decays.offset = {0.3, -9.7, 1.1};
    decays.drift = {0.02, -0.05, 0.0};
    decays.plucks.push_back({0.7037, {{2.0, 0.9, 0.01}, {-0.5, 1.6, 0.03}}, {0.4, -1.1}});
    return decays;
}

const DecayingMode* nearest(const RingDown& answer, double frequency_hz)
{
    const auto found = std::min_element(answer.modes.begin(), answer.modes.end(),
                                        [&](const auto& a, const auto& b) {
                                            return std::abs(a.frequency_hz - frequency_hz) <
                                                   std::abs(b.frequency_hz - frequency_hz);
                                        });
    return found == answer.modes.end() ? nullptr : &*found;
}

// Holds the modes of a case to 1 % in frequency and 10 % in loss, and to no further one.
void expectModes(const Recording& recording, const Decays& truth)
{
    const auto answer = ringDown(recording);
    ASSERT_TRUE(answer) << english(answer.error().what);
    EXPECT_EQ(answer->modes.size(), truth.modes.size());
    EXPECT_EQ(answer->plucks.size(), truth.plucks.size());
    for (const test::TrueMode& mode : truth.modes) {
        const DecayingMode* const found = nearest(*answer, mode.frequency_hz);
        EXPECT_NEAR(found->frequency_hz, mode.frequency_hz, 0.01 * mode.frequency_hz);
        EXPECT_NEAR(found->lossFactor, mode.lossFactor, 0.10 * mode.lossFactor);
    }
}

std::string refusal(const Recording& recording, Errc code)
{
    const auto answer = ringDown(recording);
    if (answer)
        return "it found " + std::to_string(answer->modes[0].frequency_hz) + " Hz";
    EXPECT_EQ(answer.error().code, code);
    return english(answer.error().what);
}

// Oracle: Thomson, Theory of Vibration, ex. 2.7-1 (from memory, recomputed with g = 386 in/s²): 10
// lb on 30 lb/in with 0.12 lb s/in has ωn = 34.0294 rad/s, ζ = 0.068059, logarithmic decrement
// 0.428620. Its exact free decay, without noise: only rounding is left, and 1e-6 is far above it.
TEST(RingDown, FindsTheTextbooksLogarithmicDecrement)
{
    const double omega = 34.0294, zeta = 0.068059, rate = 200.0;
    std::vector<double> values(600);
    for (std::size_t i = 0; i < values.size(); ++i) {
        const double t = static_cast<double>(i) / rate;
        values[i] = std::exp(-zeta * omega * t) * std::cos(omega * std::sqrt(1 - zeta * zeta) * t);
    }

    const auto answer = ringDown(oneChannel(rate, values));

    ASSERT_TRUE(answer) << english(answer.error().what);
    ASSERT_EQ(answer->modes.size(), 1u);
    const double found = 0.5 * answer->modes[0].lossFactor;
    EXPECT_NEAR(answer->modes[0].frequency_hz, omega / kTurn, 1e-6 * 5.4);
    EXPECT_NEAR(kTurn * found / std::sqrt(1 - found * found), 0.428620, 2e-6);
    EXPECT_DOUBLE_EQ(answer->modes[0].share, 1.0);
    EXPECT_NEAR(answer->modes[0].pole().real(), -zeta * omega, 1e-5);
    EXPECT_NEAR(answer->modes[0].pole().imag(), 33.9505, 1e-3);
    EXPECT_EQ(answer->mark.quality, Quality::Good);
}

// Oracle: there is none to find. Nothing may be claimed.
TEST(RingDown, ClaimsNothingOutOfNoise)
{
    for (unsigned seed = 0; seed < 100; ++seed)
        ASSERT_EQ(refusal(noiseOnly(seed, 1 + seed % 3, 200.0, 800), Errc::NoAnswer),
                  "nothing rings down: no pluck stands out of the noise and dies away")
            << "seed " << seed;
}

// Oracle: definition. The same with the stretches given, so that no onset has to be found.
TEST(RingDown, ClaimsNothingOutOfNoiseThatIsCalledAPluck)
{
    for (unsigned seed = 0; seed < 30; ++seed) {
        const auto answer = ringDown(noiseOnly(seed, 1 + seed % 3, 200.0, 800),
                                     {.stretches = {{100, 400}, {450, 750}}});
        ASSERT_FALSE(answer) << "seed " << seed << ": " << answer->modes[0].frequency_hz << " Hz";
        EXPECT_EQ(answer.error().code, Errc::NoAnswer);
    }
}

// Oracle: definition. A tone that goes on, from the beginning or switched on midway, rings not
// down.
TEST(RingDown, ClaimsNothingOfASteadyTone)
{
    for (const std::size_t on : {std::size_t{0}, std::size_t{731}}) {
        Recording recording = noiseOnly(5, 2, 500.0, 2000);
        for (std::size_t c = 0; c < 2; ++c)
            for (std::size_t i = on; i < 2000; ++i)
                recording.channels[c].values[i] +=
                    20.0 * std::sin(0.2 * static_cast<double>(i) + static_cast<double>(c));
        const std::string what = refusal(recording, Errc::NoAnswer);
        EXPECT_TRUE(what.starts_with("nothing rings down")) << what;
    }
}

// Oracle: definition. One plain sentence each.
TEST(RingDown, RefusesWhatIsNoRecordingOfADecay)
{
    EXPECT_EQ(refusal({}, Errc::BadInput), "the recording holds no samples");
    EXPECT_EQ(refusal(oneChannel(100.0, std::vector<double>(10, 1.0)), Errc::BadInput),
              "the recording is too short: 10 samples, and at least 32 are needed");
    EXPECT_EQ(refusal(oneChannel(100.0, std::vector<double>(500, 9.81)), Errc::BadInput),
              "nothing moves: every sample has the same value");
    Recording broken = noiseOnly(1, 1, 100.0, 500);
    broken.channels[0].values[41] = std::numeric_limits<double>::quiet_NaN();
    EXPECT_EQ(refusal(broken, Errc::BadInput), "sample 42 of column x is no number");
    broken.rate = 0.0;
    EXPECT_EQ(refusal(broken, Errc::BadInput), "the recording has no sampling rate");
    const auto missing = ringDown(noiseOnly(1, 1, 100.0, 500), {.channels = {3}});
    ASSERT_FALSE(missing);
    EXPECT_EQ(english(missing.error().what), "the recording has 1 columns, not 4");
}

// Oracle: the case's own modes; noise 35 dB below them leaves a tenth of these tolerances.
TEST(RingDown, HoldsAtAnyRateWithGravityDriftAndASilentAxis)
{
    for (const double rate : {100.0, 1000.0, 8000.0}) {
        SCOPED_TRACE(rate);
        const Decays truth = twoModes(rate);
        expectModes(truth.recording(3), truth);
    }
}

// Oracle: the case's own modes. The pause between holds neither modes nor plucks.
TEST(RingDown, LeavesThePauseBetweenTwoPlucksOut)
{
    Decays truth = twoModes(500.0);
    truth.duration = 9.0;
    truth.plucks.push_back({6.2011, {{-0.6, -0.27, -0.003}, {0.8, -2.5, -0.05}}, {2.0, 0.3}});
    const Recording recording = truth.recording(11);
    expectModes(recording, truth);

    const auto answer = ringDown(recording);

    ASSERT_TRUE(answer);
    ASSERT_EQ(answer->plucks.size(), 2u);
    for (std::size_t p = 0; p < 2; ++p) {
        const double from = static_cast<double>(answer->plucks[p].from) / 500.0;
        EXPECT_GE(from, truth.plucks[p].at - 0.002);
        EXPECT_LE(from, truth.plucks[p].at + 0.5 / 14.6);  // half a period of the slower mode
        EXPECT_LT(answer->plucks[p].to,
                  static_cast<std::size_t>(500.0 * (truth.plucks[p].at + 2.5)));
    }
}

// Oracle: the case's own amplitudes: real multiples, so that the shape is real, and its own shares.
TEST(RingDown, TellsShapesAndShares)
{
    Decays truth = twoModes(1000.0);
    truth.bound();

    const auto answer = ringDown(truth.recording(17));

    ASSERT_TRUE(answer);
    ASSERT_EQ(answer->modes.size(), 2u);
    // Noise of 0.02 to 0.03 averages over some hundred samples: 0.01 of the largest amplitude.
    const double expected[2][3] = {{1.0, 0.45, 0.005}, {-0.3125, 1.0, 0.01875}};
    for (std::size_t k = 0; k < 2; ++k) {
        for (std::size_t c = 0; c < 3; ++c) {
            EXPECT_NEAR(answer->modes[k].shape[c].real(), expected[k][c], 0.02) << k << c;
            EXPECT_NEAR(answer->modes[k].shape[c].imag(), 0.0, 0.02) << k << c;
        }
        const double since = 1e-3 * static_cast<double>(answer->plucks.at(0).from) - 0.7037;
        const double fall = 0.5 * truth.modes[k].lossFactor * kTurn * truth.modes[k].frequency_hz;
        ASSERT_EQ(answer->modes[k].amplitudes.size(), 1U);
        EXPECT_NEAR(answer->modes[k].amplitudes[0], (k == 0 ? 2.0 : 1.6) * std::exp(-fall * since),
                    0.01);
        // Of decays from the stretch's first sample, a quarter of a period at most behind the
        // pluck.
        EXPECT_NEAR(answer->modes[k].share, truth.modes[k].share, 0.1);
    }
}

// Oracle: the case's own modes. The sensor's range is half of the largest value.
TEST(RingDown, LeavesClippedSamplesOut)
{
    const Decays truth = twoModes(1000.0);
    Recording recording = truth.recording(23);
    for (Channel& channel : recording.channels) {
        double offset = 0.0, largest = 0.0;
        for (std::size_t i = 0; i < 600; ++i)
            offset += channel.values[i] / 600.0;
        for (const double x : channel.values)
            largest = std::max(largest, std::abs(x - offset));
        if (largest > 0.5)
            for (double& x : channel.values)
                x = std::clamp(x, offset - 0.5 * largest, offset + 0.5 * largest);
    }
    const auto answer = ringDown(recording);
    ASSERT_TRUE(answer) << english(answer.error().what);
    for (const test::TrueMode& mode : truth.modes) {
        const DecayingMode* const found = nearest(*answer, mode.frequency_hz);
        EXPECT_NEAR(found->frequency_hz, mode.frequency_hz, 0.01 * mode.frequency_hz);
        EXPECT_NEAR(found->lossFactor, mode.lossFactor, 0.10 * mode.lossFactor);
    }
}

// x'' + 2ζω x' + ω²(x − εx³) = 0 let go from x after half a second, a thousand samples a second.
std::vector<double> duffingDecay(double omega, double zeta, double epsilon, double x)
{
    std::vector<double> values(2500, 0.0);
    double v = 0.0;
    const auto force = [&](double at, double speed) {
        return -2 * zeta * omega * speed - omega * omega * (at - epsilon * at * at * at);
    };
    for (std::size_t i = 500; i < values.size(); ++i) {
        values[i] = x;
        const double h = 1e-3;
        const double k1 = v, l1 = force(x, v);
        const double k2 = v + 0.5 * h * l1, l2 = force(x + 0.5 * h * k1, v + 0.5 * h * l1);
        const double k3 = v + 0.5 * h * l2, l3 = force(x + 0.5 * h * k2, v + 0.5 * h * l2);
        const double k4 = v + h * l3, l4 = force(x + h * k3, v + h * l3);
        x += h / 6 * (k1 + 2 * k2 + 2 * k3 + k4);
        v += h / 6 * (l1 + 2 * l2 + 2 * l3 + l4);
    }
    return values;
}

void addNoise(std::vector<double>& values, double deviation, unsigned seed)
{
    std::mt19937 random(seed);
    std::normal_distribution<double> normal(0.0, deviation);
    for (double& value : values)
        value += normal(random);
}

// Oracle: Duffing's softening spring x'' + 2ζω x' + ω²(x − εx³) = 0, integrated in time by Runge
// and Kutta's method; its frequency at amplitude A is ω(1 − 3εA²/8) to 0.02 % for εA² below 0.1
// (from memory, any text on nonlinear vibration). A row's window falls by a factor e, over which A²
// and with it the frequency's drop change by half to either side: a third of the largest drop
// of 2.2 %. The loss factor 2ζω/ω_A rises by as little; read out of a window of some swings in
// noise of 0.2 % it is within a twentieth.
TEST(RingDown, ShowsAFrequencyThatRisesAsTheModeDies)
{
    const double zeta = 0.04, epsilon = 0.06, rate = 1000.0;
    std::vector<double> values = duffingDecay(kTurn * 18.0, zeta, epsilon, 1.0);
    addNoise(values, 0.002, 3);

    const auto answer = ringDown(oneChannel(rate, values));

    ASSERT_TRUE(answer) << english(answer.error().what);
    const auto main = std::max_element(
        answer->modes.begin(), answer->modes.end(),
        [](const DecayingMode& a, const DecayingMode& b) { return a.share < b.share; });
    ASSERT_GE(main->softening.size(), 3u);
    for (const SofteningRow& row : main->softening) {
        EXPECT_NEAR(row.frequency_hz, 18.0 * (1 - 3 * epsilon * row.amplitude * row.amplitude / 8),
                    0.008 * 18.0)
            << "at " << row.amplitude;
        EXPECT_NEAR(row.lossFactor, 2 * zeta, 0.05 * 2 * zeta) << "at " << row.amplitude;
    }
    EXPECT_LT(main->softening.front().frequency_hz, 0.992 * main->softening.back().frequency_hz);
    EXPECT_EQ(answer->mark.quality, Quality::Fair);
}

// Three plucks of two modes, each with amplitudes and phases of its own.
Decays threePlucks()
{
    Decays decays;
    decays.rate = 500.0;
    decays.duration = 7.0;
    decays.modes = {{17.0, 0.06}, {26.0, 0.05}};
    decays.channels = 2;
    decays.noise = {0.004, 0.004};
    decays.offset = {0.0, 9.8};
    decays.drift = {0.0, 0.0};
    decays.plucks = {{0.6, {{2.0, 0.6}, {-0.5, 1.6}}, {0.4, -1.1}},
                     {2.7, {{1.4, 0.42}, {0.8, -2.56}}, {-0.7, 0.5}},
                     {4.8, {{2.6, 0.78}, {0.4, -1.28}}, {1.9, 1.2}}};
    return decays;
}

// Oracle: what was made. A bend with the product of two motions is no mode: 17 Hz and 26 Hz make
// 43 Hz and 9 Hz. A true mode of 43 Hz that dies as fast as both together, 0.0540 = (17 · 0.06 +
// 26 · 0.05) / 43, and is as weak, but as large in each pluck as it likes, is one.
TEST(RingDown, TellsAnOvertoneFromAMode)
{
    const Decays made = threePlucks();
    Recording bent = made.recording(5);
    Decays first = made, second = made;
    first.modes.resize(1);
    second.modes.erase(second.modes.begin());
    for (Decays::Pluck& pluck : second.plucks) {
        pluck.amplitude.erase(pluck.amplitude.begin());
        pluck.phase.erase(pluck.phase.begin());
    }
    for (std::size_t i = 0; i < bent.samples(); ++i) {
        const double t = static_cast<double>(i) / made.rate;
        const double product = first.at(t, 0) * second.at(t, 1);
        bent.channels[0].values[i] += 0.05 * product;
        bent.channels[1].values[i] -= 0.02 * product;
    }
    const auto answer = ringDown(bent);
    ASSERT_TRUE(answer) << english(answer.error().what);
    ASSERT_EQ(answer->modes.size(), 2U);
    ASSERT_GE(answer->overtones.size(), 1U);
    for (const Overtone& overtone : answer->overtones) {
        EXPECT_NEAR(std::min(overtone.first_hz, overtone.second_hz), 17.0, 0.1);
        EXPECT_NEAR(std::max(overtone.first_hz, overtone.second_hz), 26.0, 0.1);
    }

    Decays three = made;
    three.modes.push_back({43.0, 0.0540});
    const double strength[] = {0.10, 0.04, -0.12}, phase[] = {2.1, 0.3, -1.4};
    for (std::size_t p = 0; p < 3; ++p) {
        three.plucks[p].amplitude.push_back({strength[p], -0.4 * strength[p]});
        three.plucks[p].phase.push_back(phase[p]);
    }
    const auto true43 = ringDown(three.recording(6));
    ASSERT_TRUE(true43) << english(true43.error().what);
    EXPECT_EQ(true43->modes.size(), 3U);
    EXPECT_TRUE(true43->overtones.empty());
}

// The three plucks with a third motion, in each pluck of the size and phase that the product of the
// other two has.
Decays withProduct(double frequency_hz, double lossFactor, double gain)
{
    Decays decays = threePlucks();
    decays.modes.push_back({frequency_hz, lossFactor});
    for (Decays::Pluck& pluck : decays.plucks) {
        const double size = gain * pluck.amplitude[0][0] * pluck.amplitude[1][1];
        pluck.amplitude.push_back({size, -0.4 * size});
        pluck.phase.push_back(pluck.phase[0] + pluck.phase[1]);
    }
    return decays;
}

// Oracle: what was made. All that a product has is asked for: in each pluck as large as that, what
// lies a hertz beside the sum, dies half as fast as both together or holds more than a twentieth of
// their energy is a mode; only what has all three is none.
TEST(RingDown, CallsAnOvertoneOnlyWhatIsOneInAllItsMarks)
{
    struct Case {
        double frequency_hz, lossFactor, gain;
        std::size_t modes;
    };
    for (const Case& made : std::vector<Case>{{43.0, 0.0540, 0.03, 2},
                                              {44.0, 0.0540, 0.03, 3},
                                              {43.0, 0.0270, 0.03, 3},
                                              {43.0, 0.0540, 0.2, 3}}) {
        const auto answer =
            ringDown(withProduct(made.frequency_hz, made.lossFactor, made.gain).recording(8));
        ASSERT_TRUE(answer) << english(answer.error().what);
        EXPECT_EQ(answer->modes.size(), made.modes)
            << made.frequency_hz << " " << made.lossFactor << " " << made.gain;
        EXPECT_EQ(answer->overtones.size(), 3 - made.modes);
        if (made.modes == 2) {
            EXPECT_NEAR(answer->overtones.at(0).frequency_hz, 43.0, 0.2);
        }
    }
}

// Oracle: Cramér and Rao's bound on the case's own noise (decay_case.cpp), which least squares
// reach; the noise of ten recordings is known from some thousand samples to two per cent.
TEST(RingDown, TellsSpreadsAsWideAsTheNoiseMakesThem)
{
    Decays truth = twoModes(200.0);
    truth.bound();
    double frequency[2] = {}, loss[2] = {};
    for (unsigned seed = 5; seed < 15; ++seed) {
        const auto answer = ringDown(truth.recording(seed));
        ASSERT_TRUE(answer) << english(answer.error().what);
        ASSERT_EQ(answer->modes.size(), 2U);
        for (std::size_t k = 0; k < 2; ++k) {
            frequency[k] += answer->modes[k].frequencySpread / truth.modes[k].frequencyBound / 10;
            loss[k] += answer->modes[k].lossSpread / truth.modes[k].lossBound / 10;
        }
    }
    for (std::size_t k = 0; k < 2; ++k) {
        EXPECT_NEAR(frequency[k], 1.0, 0.05);
        EXPECT_NEAR(loss[k], 1.0, 0.05);
    }
}

// Oracle: the case's own decays and noise, sample by sample over the stretch: at that rate nearly
// all blocks are a sample. What no mode explains is the noise; gravity is none of it.
TEST(RingDown, TellsHowFarTheDecaysStandAboveTheNoise)
{
    for (const double louder : {1.0, 4.0}) {
        Decays truth = twoModes(100.0);
        for (double& noise : truth.noise)
            noise *= louder;
        const auto answer = ringDown(truth.recording(29));
        ASSERT_TRUE(answer) << english(answer.error().what);
        ASSERT_EQ(answer->plucks.size(), 1U);
        double power = 0.0, count = 0.0;
        for (std::size_t i = answer->plucks[0].from; i < answer->plucks[0].to; ++i)
            for (std::size_t c = 0; c < 3; ++c, ++count)
                power +=
                    std::pow(truth.at(static_cast<double>(i) / 100.0, c) / truth.noise[c], 2.0);
        power /= count;
        EXPECT_NEAR(answer->signalToNoise_db, 10.0 * std::log10(power), 0.5);
        EXPECT_NEAR(answer->residual * (power + 1.0), 1.0, 0.1);
        EXPECT_EQ(english(answer->mark.reason),
                  formatted(louder > 1.0 ? "the decays stand only %.0f dB above the noise"
                                         : "one pluck, %.0f dB above the noise",
                            answer->signalToNoise_db));
    }
}

// Oracle: the case's own modes. A blow in the first samples, five deviations of the noise, is none
// of them: shares are of the modes alone.
TEST(RingDown, GivesABlowNoShare)
{
    Decays truth = twoModes(500.0);
    truth.bound();
    for (unsigned seed = 0; seed < 4; ++seed) {
        Recording recording = truth.recording(12);
        for (Channel& channel : recording.channels) {
            std::vector<double> blow(8, 0.0);
            addNoise(blow, 0.1, seed);
            for (std::size_t i = 0; i < blow.size(); ++i)
                channel.values[352 + i] += blow[i];
        }
        const auto answer = ringDown(recording);
        ASSERT_TRUE(answer) << english(answer.error().what);
        ASSERT_EQ(answer->modes.size(), 2U);
        for (std::size_t k = 0; k < 2; ++k)
            EXPECT_NEAR(answer->modes[k].share, truth.modes[k].share, 0.05) << seed;
        EXPECT_NEAR(answer->modes[0].share + answer->modes[1].share, 1.0, 1e-12);
    }
}

// Oracle: Duffing's spring again, to first order 3εA²/8 off where it is let go, softer or stiffer
// as ε has its sign, beside a smaller mode that does neither; alone, with gravity, and once more
// let go from two fifths.
TEST(RingDown, TellsByHowMuchAModeSoftensOrStiffens)
{
    for (const double epsilon : {0.08, -0.08, 0.04})
        for (const bool isTwice : {false, true}) {
            std::vector<double> values = duffingDecay(kTurn * 18.0, 0.03, epsilon, 1.0);
            const double w = kTurn * 31.0, z = 0.05;
            for (std::size_t i = 500; i < values.size(); ++i) {
                const double t = 1e-3 * static_cast<double>(i - 500);
                values[i] += 0.3 * std::exp(-z * w * t) * std::cos(w * std::sqrt(1 - z * z) * t);
            }
            if (isTwice) {
                const auto second = duffingDecay(kTurn * 18.0, 0.03, epsilon, 0.4);
                values.insert(values.end(), second.begin(), second.end());
            }
            addNoise(values, 0.002, 7);
            for (double& value : values)
                value += 9.8;
            const auto answer = ringDown(oneChannel(1000.0, values));
            ASSERT_TRUE(answer) << english(answer.error().what);
            ASSERT_EQ(answer->modes.size(), 2U);
            EXPECT_NEAR(answer->modes[0].frequency_hz, 18.0, 0.03);
            EXPECT_NEAR(answer->modes[0].softens, 3 * epsilon / 8, 0.0025) << isTwice;
            EXPECT_NEAR(answer->modes[1].frequency_hz, 31.0, 0.1);
            EXPECT_EQ(answer->modes[1].softens, 0.0);
            // Energies A²/ζω: 1/(0.03 · 18) beside 0.09/(0.05 · 31), a part of it let go from 0.4.
            EXPECT_NEAR(answer->modes[0].share, isTwice ? 0.974 : 0.970, 0.004);
            EXPECT_EQ(answer->mark.quality, Quality::Fair);
            EXPECT_EQ(english(answer->mark.reason),
                      formatted("the mode at %.1f\u00A0Hz %s: %.1f\u00A0%% %s while it is large",
                                answer->modes[0].frequency_hz, epsilon > 0 ? "softens" : "stiffens",
                                100 * std::abs(answer->modes[0].softens),
                                epsilon > 0 ? "lower" : "higher"));
        }
}

// Oracle: the spreads that it tells, over the modes that hold more than a twentieth.
TEST(RingDown, SaysHowPoorlyAModeIsKnown)
{
    for (const double noise : {0.15, 0.2, 0.25}) {
        Decays truth = twoModes(100.0);
        truth.noise.assign(3, noise);
        const auto answer = ringDown(truth.recording(2));
        ASSERT_TRUE(answer) << english(answer.error().what);
        const auto poor =
            std::find_if(answer->modes.begin(), answer->modes.end(), [](const DecayingMode& mode) {
                return mode.frequencySpread > 0.006 || mode.lossSpread > 0.08;
            });
        ASSERT_NE(poor, answer->modes.end());
        EXPECT_EQ(answer->mark.quality, Quality::Fair);
        EXPECT_EQ(
            english(answer->mark.reason),
            formatted("the mode at %.1f\u00A0Hz is known only to %.2g\u00A0%% in frequency and "
                      "%.2g\u00A0%% in loss",
                      poor->frequency_hz, 100 * poor->frequencySpread, 100 * poor->lossSpread));
    }
}

// Oracle: the shapes that were made. Two modes within half their width of each other move alike
// where one column, or each of several, moves them in the same proportion; one of as much energy is
// no softening of the other, however fast it dies.
TEST(RingDown, SaysWhichModesMoveAlike)
{
    struct Case {
        test::TrueMode low, high;
        std::vector<double> ofLow, ofHigh;
        bool isAlike;
    };
    const test::TrueMode low{14.6, 0.12}, high{15.2, 0.13};
    for (const Case& made : std::vector<Case>{{low, high, {2}, {-1.7}, true},
                                              {low, {22.3, 0.11}, {2}, {-1.7}, false},
                                              {{14.6, 0.06}, {14.7, 0.1}, {2}, {-2.4}, true},
                                              {low, high, {2, 2, 1.8}, {-1.7, -1.68, -1.5}, true},
                                              {low, high, {2, 2, 1.8}, {-1.7, -0.34, 0.51}, false},
                                              {low, high, {-1.7, -0.34, 0.51}, {2, 2, 1.8}, false},
                                              {low, high, {1.8, 0.2, 0.1}, {0, 1.7, 0.3}, false}}) {
        Decays truth;
        truth.rate = 400.0;
        truth.modes = {made.low, made.high};
        truth.channels = made.ofLow.size();
        truth.noise.assign(truth.channels, truth.channels == 1 ? 1e-4 : 1e-3);
        truth.offset.assign(truth.channels, 0.3);
        truth.drift.assign(truth.channels, 0.0);
        truth.plucks = {{0.7, {made.ofLow, made.ofHigh}, {0.4, -1.1}}};
        const auto answer = ringDown(truth.recording(3));
        ASSERT_TRUE(answer) << english(answer.error().what);
        ASSERT_EQ(answer->modes.size(), 2U);
        EXPECT_EQ(
            english(answer->mark.reason) ==
                formatted("the modes at %.1f\u00A0Hz and %.1f\u00A0Hz move alike: more columns, "
                          "or a pluck in another direction, tell them apart",
                          made.low.frequency_hz, made.high.frequency_hz),
            made.isAlike)
            << english(answer->mark.reason);
    }
}

// Oracle: closed form, ω(1 − β|a|/a₀) integrated along exp(−ζωt): β is told of the strongest pluck,
// and holds at two fifths of its size two fifths of that; the frequency is that of small motion.
// Gravity, an offset, is no motion: with it everything is as without.
TEST(RingDown, TellsASofteningInProportionToTheMotion)
{
    struct Case {
        double beta, zeta;
    };
    for (const Case& made : std::vector<Case>{{0.02, 0.03}, {0.05, 0.06}, {0.08, 0.03}}) {
        const double w = kTurn * 17.0, fall = made.zeta * w;
        std::vector<double> values;
        for (const double size : {1.0, 0.4}) {
            values.insert(values.end(), 250, 0.0);
            for (int n = 0; n < 1000; ++n) {
                const double t = n / 500.0, lag = -std::expm1(-fall * t) / fall;
                values.push_back(size * std::exp(-fall * t) *
                                 std::cos(w * std::sqrt(1 - made.zeta * made.zeta) * t -
                                          w * made.beta * size * lag));
            }
        }
        addNoise(values, 0.003, 4);
        const auto answer = ringDown(oneChannel(500.0, values));
        for (double& value : values)
            value += 9.8;
        const auto heavy = ringDown(oneChannel(500.0, values));
        ASSERT_TRUE(answer && heavy);
        ASSERT_EQ(answer->modes.size(), 1U);
        ASSERT_EQ(heavy->modes.size(), 1U);
        EXPECT_NEAR(answer->modes[0].frequency_hz, 17.0, 0.01);
        EXPECT_NEAR(answer->modes[0].lossFactor, 2 * made.zeta, 0.001);
        EXPECT_NEAR(answer->modes[0].softens, made.beta, 0.002);
        EXPECT_NEAR(heavy->modes[0].frequency_hz, answer->modes[0].frequency_hz, 1e-4);
        EXPECT_NEAR(heavy->modes[0].softens, answer->modes[0].softens, 1e-4);
        EXPECT_NEAR(heavy->signalToNoise_db, answer->signalToNoise_db, 0.01);
        EXPECT_NEAR(heavy->residual, answer->residual, 1e-4 * answer->residual);
    }
}

// Oracle: the case's own modes. Of eight plucks the six strongest choose them; the shortest is the
// only one that tells the higher mode, which is left out where it is not among them.
TEST(RingDown, ChoosesByTheStrongestOfManyPlucks)
{
    Decays truth;
    truth.rate = 200.0;
    truth.modes = {{14.6, 0.06}, {22.3, 0.11}};
    truth.channels = 2;
    truth.noise = {0.02, 0.02};
    truth.offset = {9.8, -3.0};
    truth.drift = {0.0, 0.0};
    RingDownOptions options;
    for (std::size_t p = 0; p < 8; ++p) {
        const double at = 0.7 + 2.2 * static_cast<double>(p);
        const double a = p == 4 ? 0.02 : 0.5, b = p == 4 ? 3.0 : 0.001;
        truth.plucks.push_back({at, {{a, 0.4 * a}, {0.3 * b, b}}, {0.3, -0.5}});
        const auto from = static_cast<std::size_t>(std::ceil(at * truth.rate));
        options.stretches.push_back({from, from + (p == 4 ? 90 : 260)});
    }
    truth.duration = 18.3;
    const auto answer = ringDown(truth.recording(4), options);
    ASSERT_TRUE(answer) << english(answer.error().what);
    ASSERT_EQ(answer->modes.size(), 2U);
    EXPECT_NEAR(answer->modes[0].frequency_hz, 14.6, 0.05);
    EXPECT_NEAR(answer->modes[1].frequency_hz, 22.3, 0.05);
    EXPECT_NEAR(answer->modes[1].lossFactor, 0.11, 0.005);
    EXPECT_EQ(answer->plucks, options.stretches);
}

// Oracle: Monte Carlo, one mode in noise: the errors of each row's frequency and loss over the
// spread that it is told with have a mean square of 1; of some 150 rows known to an eighth.
TEST(RingDown, TellsTheSpreadsOfItsRows)
{
    Decays truth;
    truth.rate = 250.0;
    truth.duration = 2.5;
    truth.modes = {{17.0, 0.06}};
    truth.noise = {0.01};
    truth.offset = truth.drift = {0.0};
    truth.plucks = {{0.6, {{1.0}}, {0.4}}};
    double frequencyErrors = 0.0, lossErrors = 0.0, count = 0.0;
    for (unsigned seed = 0; seed < 40; ++seed) {
        const auto answer = ringDown(truth.recording(300 + seed));
        ASSERT_TRUE(answer);
        ASSERT_EQ(answer->modes.size(), 1U);
        for (const SofteningRow& row : answer->modes[0].softening) {
            frequencyErrors += std::pow((row.frequency_hz / 17.0 - 1) / row.frequencySpread, 2);
            lossErrors += std::pow((row.lossFactor / 0.06 - 1) / row.lossSpread, 2);
            ++count;
        }
    }
    EXPECT_GT(count, 80);
    EXPECT_NEAR(std::sqrt(frequencyErrors / count), 1.0, 0.2);
    EXPECT_NEAR(std::sqrt(lossErrors / count), 1.0, 0.2);
}

// Oracle: the sample was made of a bay with six modes, integrated in time with tubes that bend
// (tests/recordings/).
TEST(RingDown, FindsSixModesOfTheSampleAndNoMore)
{
    const auto recording = readRecording(STILLBAY_SAMPLES_DIR "/recordings/pluck-sideways.csv");
    ASSERT_TRUE(recording) << english(recording.error().what);
    const auto answer = ringDown(*recording);
    ASSERT_TRUE(answer) << english(answer.error().what);
    EXPECT_EQ(answer->modes.size(), 6U);
    EXPECT_LT(answer->modes.back().frequency_hz, 30.0);
}

}  // namespace
}  // namespace stillbay
