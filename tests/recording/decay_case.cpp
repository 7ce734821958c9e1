// SPDX-License-Identifier: MIT
#include "tests/recording/decay_case.h"

#include "core/base/solve.h"

#include <Eigen/Core>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

namespace stillbay::test {
namespace {

constexpr double kTau = 2.0 * std::numbers::pi;

// A decay of amplitude 1 and phase ψ.
double decayAt(const TrueMode& mode, double t, double psi)
{
    const double w = kTau * mode.frequency_hz, z = 0.5 * mode.lossFactor;
    return std::exp(-z * w * t) * std::cos(w * std::sqrt(1.0 - z * z) * t + psi);
}

}  // namespace

double Decays::at(double t, std::size_t channel) const
{
    const Pluck* last = nullptr;
    for (const Pluck& pluck : plucks)
        if (pluck.at <= t)
            last = &pluck;
    double sum = 0.0;
    if (last)
        for (std::size_t k = 0; k < modes.size(); ++k)
            sum += last->amplitude[k][channel] * decayAt(modes[k], t - last->at, last->phase[k]);
    return sum;
}

Recording Decays::recording(unsigned seed) const
{
    std::mt19937 random(seed);
    std::normal_distribution<double> normal;
    Recording recording;
    recording.rate = rate;
    const auto n = static_cast<std::size_t>(rate * duration);
    std::vector<double> stamps(n);
    for (std::size_t i = 0; i < n; ++i)
        stamps[i] = (static_cast<double>(i) + jitter * normal(random)) / rate;
    for (std::size_t c = 0; c < channels; ++c) {
        Channel channel{"a" + std::to_string(c), Quantity::Acceleration, std::vector<double>(n)};
        for (std::size_t i = 0; i < n; ++i)
            channel.values[i] =
                at(stamps[i], c) + offset[c] + drift[c] * stamps[i] + noise[c] * normal(random);
        recording.channels.push_back(std::move(channel));
    }
    return recording;
}

void Decays::bound()
{
    // Fisher's information of the noisy samples about every unknown: ln f and ln η of each mode,
    // and of each pluck and channel two amplitudes a mode, offset and drift, which are eliminated.
    const auto K = static_cast<Eigen::Index>(modes.size());
    Eigen::MatrixXd poles = Eigen::MatrixXd::Zero(2 * K, 2 * K);
    std::vector<double> energy(modes.size(), 0.0);
    for (std::size_t p = 0; p < plucks.size(); ++p) {
        const Pluck& pluck = plucks[p];
        const double end = p + 1 < plucks.size() ? plucks[p + 1].at : duration;
        const double step = 1.0 / rate;
        for (std::size_t c = 0; c < channels; ++c) {
            const Eigen::Index m = 4 * K + 2;
            Eigen::MatrixXd information = Eigen::MatrixXd::Zero(m, m);
            Eigen::VectorXd slope(m);
            const double first = std::ceil(pluck.at * rate) / rate;
            for (double t = first; t < end; t += step) {
                const double since = t - pluck.at;
                double velocity = 0.0;
                for (Eigen::Index k = 0; k < K; ++k) {
                    const auto at = static_cast<std::size_t>(k);
                    const TrueMode& mode = modes[at];
                    const double w = kTau * mode.frequency_hz, z = 0.5 * mode.lossFactor;
                    const double root = std::sqrt(1.0 - z * z);
                    const double a = pluck.amplitude[at][c], psi = pluck.phase[at];
                    const double value = a * decayAt(mode, since, psi);
                    const double quarter = a * decayAt(mode, since, psi + 0.5 * std::numbers::pi);
                    slope[2 * k] = -z * w * since * value + w * root * since * quarter;
                    slope[2 * k + 1] = -z * w * since * value - w * z * z / root * since * quarter;
                    slope[2 * K + 2 * k] = decayAt(mode, since, 0.0);
                    slope[2 * K + 2 * k + 1] = decayAt(mode, since, 0.5 * std::numbers::pi);
                    velocity += -z * w * value + w * root * quarter;
                    energy[at] += value * value;
                }
                slope[4 * K] = 1.0;
                slope[4 * K + 1] = since;
                const double uneven = velocity * jitter * step;
                information.selfadjointView<Eigen::Lower>().rankUpdate(
                    slope, 1.0 / (noise[c] * noise[c] + uneven * uneven));
            }
            information = information.selfadjointView<Eigen::Lower>();
            const Eigen::MatrixXd inside = information.bottomRightCorner(m - 2 * K, m - 2 * K);
            const Eigen::MatrixXd across = information.topRightCorner(2 * K, m - 2 * K);
            poles += information.topLeftCorner(2 * K, 2 * K) -
                     across * solveSymmetric(inside, across.transpose());
        }
    }
    const Eigen::MatrixXd covariance =
        solveSymmetric(poles, Eigen::MatrixXd::Identity(2 * K, 2 * K));
    double all = 0.0;
    for (const double each : energy)
        all += each;
    for (Eigen::Index k = 0; k < K; ++k) {
        TrueMode& mode = modes[static_cast<std::size_t>(k)];
        mode.share = energy[static_cast<std::size_t>(k)] / all;
        mode.frequencyBound = std::sqrt(covariance(2 * k, 2 * k));
        mode.lossBound = std::sqrt(covariance(2 * k + 1, 2 * k + 1));
    }
}

Decays randomDecays(unsigned number)
{
    std::mt19937 random(7000u + number);
    std::normal_distribution<double> normal;
    const auto between = [&](double a, double b) {
        return std::uniform_real_distribution<double>(a, b)(random);
    };
    const auto one = [&](int a, int b) {
        return std::uniform_int_distribution<int>(a, b)(random);
    };
    Decays decays;
    constexpr double kRates[] = {100.0, 200.0, 400.0, 500.0, 1000.0, 2000.0, 4000.0, 8000.0};
    decays.rate = kRates[one(0, 7)];
    const double highest = std::min(60.0, 0.35 * decays.rate);
    const int K = one(1, 6);
    while (static_cast<int>(decays.modes.size()) < K) {
        double f = 8.0 * std::pow(highest / 8.0, between(0.0, 1.0));
        if (!decays.modes.empty() && between(0.0, 1.0) < 0.35)  // close to one that is there
            f = decays
                    .modes[static_cast<std::size_t>(
                        one(0, static_cast<int>(decays.modes.size()) - 1))]
                    .frequency_hz *
                (1.0 + between(0.03, 0.12));
        const bool isApart =
            std::all_of(decays.modes.begin(), decays.modes.end(), [&](const TrueMode& mode) {
                return std::abs(f / mode.frequency_hz - 1.0) >= 0.03 && f < 1.1 * highest;
            });
        if (isApart)
            decays.modes.push_back({f, between(0.05, 0.25)});
    }
    decays.channels = static_cast<std::size_t>(one(1, 3));
    std::vector<std::vector<double>> shape(decays.modes.size());
    for (auto& mode : shape)
        for (std::size_t c = 0; c < decays.channels; ++c)
            mode.push_back(normal(random));
    const int plucks = one(1, 5);
    double t = between(0.4, 1.0);
    for (int p = 0; p < plucks; ++p) {
        Decays::Pluck pluck;
        pluck.at = t;
        for (std::size_t k = 0; k < decays.modes.size(); ++k) {
            const double strength = normal(random);
            pluck.amplitude.push_back(shape[k]);
            for (double& a : pluck.amplitude.back())
                a *= strength;
            pluck.phase.push_back(between(-std::numbers::pi, std::numbers::pi));
        }
        decays.plucks.push_back(std::move(pluck));
        t += between(1.5, 3.0);
    }
    decays.duration = t;
    // Signal to noise: mean square of the first half second after each pluck, all channels.
    double squares = 0.0;
    int count = 0;
    for (const auto& pluck : decays.plucks)
        for (std::size_t c = 0; c < decays.channels; ++c)
            for (int i = 0; i < 500; ++i, ++count)
                squares += std::pow(decays.at(pluck.at + 0.001 * i, c), 2);
    const double snr_db = between(20.0, 40.0);
    const double noise = std::sqrt(squares / count) * std::pow(10.0, -snr_db / 20.0);
    for (std::size_t c = 0; c < decays.channels; ++c) {
        decays.noise.push_back(noise * between(0.8, 1.25));
        decays.offset.push_back(between(-9.8, 9.8));
        decays.drift.push_back(0.05 * normal(random));
    }
    decays.jitter = between(0.0, 0.02);
    decays.bound();
    return decays;
}

}  // namespace stillbay::test
