// SPDX-License-Identifier: MIT
#include "tests/recordings/noise.h"
#include "tests/recordings/sample_film.h"
#include "tests/recordings/samples.h"
#include "tests/recordings/true_reedbed.h"
#include "tests/recordings/wander.h"

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

void addVoices(double& sample, const std::vector<Voice>& voices, double n, double turns)
{
    for (const Voice& voice : voices)
        sample += loudness(n) * voice.loudness *
                  std::sin(2 * std::numbers::pi * voice.multiple * turns + voice.phase);
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
        addVoices(sound.values[k], voices, n, turns);
    }
}

// Rushing air: noise that falls with the frequency, as loud as the motors turn.
template <class SpeedAt>
void addAir(SampleSound& sound, const SpeedAt& speedAtTime, Noise& noise)
{
    double low = 0;
    for (std::size_t k = 0; k < sound.values.size(); ++k) {
        const double white = noise.normal();
        low += 0.35 * (white - low);
        const double n = speedAtTime(static_cast<double>(k) / sound.rate_hz);
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
    addAir(
        sound, [&](double t) { return speedAt(held, t); }, noise);
    return sound;
}

SampleSound soundOf(const SampleFilm& film)
{
    Noise noise(film.seed + 1);
    SampleSound sound;
    sound.values.assign(static_cast<std::size_t>(film.duration() * sound.rate_hz), 0.0);
    double speed = 0;
    for (const FilmedMotor& motor : film.motors) {
        const std::vector<Voice> voices = voicesOfOneMotor(noise);
        for (std::size_t k = 0; k < sound.values.size(); ++k)
            addVoices(sound.values[k], voices, motor.speed,
                      motor.turns(static_cast<double>(k) / sound.rate_hz));
        speed += motor.speed / static_cast<double>(film.motors.size());
    }
    addAir(
        sound, [&](double) { return speed; }, noise);
    return sound;
}

}  // namespace stillbay::test
