// SPDX-License-Identifier: MIT
#include "core/recording/comb.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace stillbay {
namespace {

// Weights of the blade pass and its multiples: the higher, the weaker and the more easily hit by
// chance.
constexpr std::array<double, 6> kBladePass{1.0, 0.6, 0.5, 0.4, 0.3, 0.3};
constexpr double kHole = 0.35;         // of a tooth's weight, where a higher one is there
constexpr double kNoBladePass = 0.25;  // the fundamental itself
constexpr double kStray = 0.5;         // of a peak's clarity, where no tooth is
constexpr double kWrongOrder = 0.4;    // amplitudes 10 dB or more the wrong way round
constexpr double kTolerance = 0.01;    // of a tooth's frequency
constexpr double kThere = 0.2, kNotThere = 0.05;  // clarity
constexpr std::size_t kFloorBlock = 32;           // bins
constexpr double kNoise_db = 10, kClear_db = 30;  // over the floor: still noise; certain
constexpr std::size_t kMostPeaks = 40;
// Variance of a Hann window's lobe by power, in bins²: ∫w′²/∫w²/(2π)². And of time under its
// square.
constexpr double kLobeVariance = 1.0 / 3;
constexpr double kTimeVariance = 0.0200;

struct Tooth {
    double clarity = 0.0, power = 0.0;
};

Tooth toothAt(const CombSpectrum& spectrum, double f_hz)
{
    const double centre = f_hz / spectrum.resolution_hz;
    const double reach = std::max(1.0, kTolerance * centre);
    const auto from = static_cast<std::size_t>(std::max(0.0, std::ceil(centre - reach)));
    const auto to = static_cast<std::size_t>(std::floor(centre + reach));
    Tooth tooth;
    for (std::size_t k = from; k <= to && k < spectrum.clarity.size(); ++k) {
        const double off = (static_cast<double>(k) - centre) / reach;
        tooth.clarity = std::max(tooth.clarity, spectrum.clarity[k] * (1 - 0.5 * off * off));
        tooth.power = std::max(tooth.power, spectrum.power[k]);
    }
    return tooth;
}

// 0 where a is stronger, 1 where b is by 10 dB or more.
double exceeds(const Tooth& b, const Tooth& a)
{
    if (!(b.power > a.power) || b.clarity < kThere)
        return 0;
    return a.power > 0 ? std::min(1.0, std::log10(b.power / a.power)) : 1.0;
}

double strays(const CombSpectrum& spectrum, const Comb& comb, double speed)
{
    const auto blades = static_cast<double>(comb.blades);
    double penalty = 0;
    for (const std::size_t k : spectrum.peaks) {
        const double order = static_cast<double>(k) * spectrum.resolution_hz / speed;
        if (order > (static_cast<double>(kBladePass.size()) + 0.5) * blades)
            continue;
        const double reach =
            std::max(1.5 * spectrum.resolution_hz / speed, 1.5 * kTolerance * order);
        const double nearest = std::max(1.0, std::round(order / blades)) * blades;
        if (std::abs(order - nearest) > reach && std::abs(order - 1) > reach)
            penalty += kStray * spectrum.clarity[k];
    }
    return penalty;
}

// Power about a frequency, without the floor: its centre and variance.
struct Line {
    double centre_hz, variance, clarity;
};

std::optional<Line> lineAt(const CombSpectrum& spectrum, double f_hz)
{
    const double df = spectrum.resolution_hz;
    double centre = f_hz / df;
    double variance = 0, clarity = 0;
    for (int pass = 0; pass < 3; ++pass) {
        const double reach = std::max(3.0, 2.5 * kTolerance * centre);
        const auto from = static_cast<std::size_t>(std::max(0.0, std::ceil(centre - reach)));
        const auto to = static_cast<std::size_t>(std::floor(centre + reach));
        double sum = 0, first = 0, second = 0;
        clarity = 0;
        for (std::size_t k = from; k <= to && k < spectrum.power.size(); ++k) {
            const double power = std::max(0.0, spectrum.power[k] - 3 * spectrum.floor[k]);
            const double off = static_cast<double>(k) - centre;
            sum += power;
            first += power * off;
            second += power * off * off;
            clarity = std::max<double>(clarity, spectrum.clarity[k]);
        }
        if (!(sum > 0) || clarity < kThere)
            return std::nullopt;
        centre += first / sum;
        variance = second / sum - first / sum * (first / sum);
    }
    return Line{centre * df, std::max(0.0, variance) * df * df, clarity};
}

std::vector<double> floorOf(const std::vector<double>& power)
{
    std::vector<double> middles;
    for (std::size_t from = 0; from < power.size(); from += kFloorBlock) {
        std::vector<double> block(power.begin() + static_cast<std::ptrdiff_t>(from),
                                  power.begin() + static_cast<std::ptrdiff_t>(
                                                      std::min(from + kFloorBlock, power.size())));
        const auto middle = block.begin() + static_cast<std::ptrdiff_t>(block.size() / 2);
        std::nth_element(block.begin(), middle, block.end());
        middles.push_back(*middle);
    }
    // A straight line from one block's middle to the next.
    std::vector<double> floor(power.size());
    for (std::size_t k = 0; k < power.size(); ++k) {
        const double place = (static_cast<double>(k) + 0.5) / kFloorBlock - 0.5;
        const double below =
            std::clamp(std::floor(place), 0.0, static_cast<double>(middles.size() - 1));
        const auto block = static_cast<std::size_t>(below);
        const double next = middles[std::min(block + 1, middles.size() - 1)];
        const double share = std::clamp(place - below, 0.0, 1.0);
        floor[k] = (1 - share) * middles[block] + share * next;
    }
    return floor;
}

}  // namespace

CombSpectrum::CombSpectrum(std::vector<double> bins, double resolution)
    : resolution_hz(resolution),
      power(std::move(bins)),
      floor(floorOf(power)),
      clarity(power.size())
{
    // Below a part in 1e10 of the strongest a transform of rounded samples has no floor of its own.
    const double least = 1e-10 * *std::max_element(power.begin(), power.end());
    for (std::size_t k = 0; k < power.size(); ++k) {
        floor[k] = std::max({floor[k], least, 1e-300});
        if (power[k] > floor[k])
            clarity[k] = static_cast<float>(std::clamp(
                (10 * std::log10(power[k] / floor[k]) - kNoise_db) / (kClear_db - kNoise_db), 0.0,
                1.0));
    }
    for (std::size_t k = 1; k + 1 < power.size(); ++k)
        if (clarity[k] > kThere && power[k] > power[k - 1] && power[k] >= power[k + 1])
            peaks.push_back(k);
    if (peaks.size() > kMostPeaks) {
        std::nth_element(peaks.begin(), peaks.begin() + kMostPeaks, peaks.end(),
                         [&](std::size_t a, std::size_t b) { return power[a] > power[b]; });
        peaks.resize(kMostPeaks);
        std::sort(peaks.begin(), peaks.end());
    }
}

double combScore(const CombSpectrum& spectrum, const Comb& comb, double speed)
{
    const double highest_hz =
        static_cast<double>(spectrum.power.size() - 1) * spectrum.resolution_hz;
    const double blade_hz = static_cast<double>(comb.blades) * speed;
    const Tooth first = toothAt(spectrum, speed);
    std::array<Tooth, kBladePass.size()> teeth;
    std::size_t highest = 0;  // tooth that is there, from 1
    for (std::size_t k = 0; k < teeth.size() && static_cast<double>(k + 1) * blade_hz < highest_hz;
         ++k) {
        teeth[k] = toothAt(spectrum, static_cast<double>(k + 1) * blade_hz);
        if (teeth[k].clarity > kThere)
            highest = k + 1;
    }
    const double firstWeight = comb.isSound ? 0.7 : 1.0;
    double score = firstWeight * first.clarity;
    if (first.clarity < kNotThere && highest > 0)
        score -= comb.isSound ? 0.1 : 0.4;
    for (std::size_t k = 0; k < teeth.size(); ++k) {
        score += kBladePass[k] * teeth[k].clarity;
        if (k + 1 < highest && teeth[k].clarity < kNotThere)
            score -= k == 0 ? kNoBladePass : kHole * kBladePass[k];
    }
    if (comb.isSound && teeth[0].clarity >= kNotThere)
        score -= kWrongOrder * (exceeds(first, teeth[0]) + exceeds(teeth[1], teeth[0]));
    return score - strays(spectrum, comb, speed);
}

CombFit fitComb(const CombSpectrum& spectrum, const Comb& comb, double guess, double sweep)
{
    CombFit fit{guess, 0};
    std::vector<double> orders{1};
    for (std::size_t k = 1; k <= kBladePass.size(); ++k)
        orders.push_back(static_cast<double>(k * comb.blades));
    const double highest_hz =
        static_cast<double>(spectrum.power.size() - 1) * spectrum.resolution_hz;
    double weights = 0, speeds = 0, widthWeight = 0;
    for (const double order : orders) {
        if (1.03 * order * guess > highest_hz)
            break;
        const auto line = lineAt(spectrum, order * guess);
        if (!line || std::abs(line->centre_hz / (order * guess) - 1) > 3 * kTolerance)
            continue;
        const double weight = line->clarity * order;
        weights += weight;
        speeds += weight * line->centre_hz / order;
        // Order 1 is not every motor's; among the others the highest that is clear resolves most.
        if (order > 1 && weight > widthWeight) {
            widthWeight = weight;
            const double own = kLobeVariance * spectrum.resolution_hz * spectrum.resolution_hz +
                               kTimeVariance * order * order * sweep * sweep;
            fit.width = std::sqrt(std::max(0.0, line->variance - own)) / order;
        }
    }
    if (weights > 0)
        fit.speed = speeds / weights;
    return fit;
}

}  // namespace stillbay
