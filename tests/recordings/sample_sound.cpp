// SPDX-License-Identifier: MIT
#include "tests/recordings/noise.h"
#include "tests/recordings/samples.h"
#include "tests/recordings/true_reedbed.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <numbers>

namespace stillbay::test {
namespace {

constexpr double kDuration = 14.3;  // [s]
constexpr double kRunUp = 0.25;     // [s] in which the motors come to speed
constexpr int kBlades = 2;
constexpr int kPolePairs = 7;
constexpr double kWander = 0.0012;  // of the speed, up and down
// Of the blade pass and its multiples, and of one turn, at 100 rev/s; of full scale.
constexpr std::array<double, 6> kBladePass{0.045, 0.022, 0.013, 0.009, 0.005, 0.003};
constexpr double kTurn = 0.006, kPoles = 0.004;
constexpr double kStream = 0.012, kRoom = 0.0008;  // of the air about the blades, of the room

// Slow and quick changes of the speed, together nothing.
struct Wander {
    std::array<double, 3> frequency_hz{0.37, 0.83, 1.9}, phase{};

    explicit Wander(Noise& noise)
    {
        for (double& each : phase)
            each = noise.phase();
    }
    double at(double t) const
    {
        double sum = 0;
        for (std::size_t k = 0; k < phase.size(); ++k)
            sum += std::sin(2 * std::numbers::pi * frequency_hz[k] * t + phase[k]);
        return sum / static_cast<double>(phase.size());
    }
};

struct Voice {
    double multiple = 1.0;  // of the speed
    double loudness = 0.0, phase = 0.0;
};

std::vector<Voice> voicesOfOneMotor(Noise& noise)
{
    std::vector<Voice> voices{{1.0, kTurn, noise.phase()},
                              {2.0 * kPolePairs, kPoles, noise.phase()}};
    for (std::size_t h = 0; h < kBladePass.size(); ++h)
        voices.push_back({kBlades * static_cast<double>(h + 1),
                          kBladePass[h] * (0.8 + 0.4 * noise.even()), noise.phase()});
    return voices;
}

// From 0 to 1 and back, of the speed, smoothly.
double running(const HeldThrottle& held, double t)
{
    const double up = (t - (held.from - kRunUp)) / kRunUp, down = (held.to + kRunUp - t) / kRunUp;
    const double x = std::clamp(std::min(up, down), 0.0, 1.0);
    return x * x * (3 - 2 * x);
}

using Speeds = std::array<double, std::size(kHeldThrottles)>;  // [rev/s] where each is held

double speedAt(const Speeds& held, double t)
{
    double n = 0;
    for (std::size_t h = 0; h < held.size(); ++h)
        n += held[h] * running(kHeldThrottles[h], t);
    return n;
}

// As thrust grows.
double loudness(double n)
{
    return n * n / 1e4;
}

void addMotor(SampleSound& sound, const Speeds& held, double offset, Noise& noise)
{
    const Wander wander(noise);
    const std::vector<Voice> voices = voicesOfOneMotor(noise);
    double turns = 0;
    for (std::size_t k = 0; k < sound.values.size(); ++k) {
        const double t = static_cast<double>(k) / sound.rate_hz;
        const double n = speedAt(held, t) * (1 + offset) * (1 + kWander * wander.at(t));
        turns += n / sound.rate_hz;
        if (n <= 0)
            continue;
        for (const Voice& voice : voices)
            sound.values[k] +=
                loudness(n) * voice.loudness *
                std::sin(2 * std::numbers::pi * voice.multiple * turns + voice.phase);
    }
}

// Rushing air: noise that falls with the frequency, as loud as the motors turn.
void addAir(SampleSound& sound, const Speeds& held, Noise& noise)
{
    double low = 0;
    for (std::size_t k = 0; k < sound.values.size(); ++k) {
        const double white = noise.normal();
        low += 0.35 * (white - low);
        const double n = speedAt(held, static_cast<double>(k) / sound.rate_hz);
        sound.values[k] += kStream * loudness(n) * low + kRoom * white;
    }
}

}  // namespace

SampleSound motorSound(const Setup& trueCraft)
{
    Noise noise(20264);
    SampleSound sound;
    sound.values.assign(static_cast<std::size_t>(kDuration * sound.rate_hz), 0.0);
    Speeds held{};
    for (std::size_t h = 0; h < held.size(); ++h)
        held[h] = trueSpeed(trueCraft, kHeldThrottles[h].stick);
    for (const double offset : kTrueSpeedOffset)
        addMotor(sound, held, offset, noise);
    addAir(sound, held, noise);
    return sound;
}

}  // namespace stillbay::test
