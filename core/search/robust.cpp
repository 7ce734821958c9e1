// SPDX-License-Identifier: MIT
#include "core/search/robust.h"

#include "core/base/parallel.h"
#include "core/base/unit_points.h"
#include "core/response/wobble_curve.h"
#include "core/tube/rubber.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace stillbay {
namespace {

constexpr std::size_t kCommon = 5;   // what scatters beside each tube
constexpr std::size_t kPerTube = 5;  // cut, place of its holes in three axes, direction
constexpr double kNoWobble = std::numeric_limits<double>::infinity();

double between(double low, double high, double share)
{
    return low + (high - low) * share;
}

double modulusOfHardness(const TubeKind& tube, const Tolerances& tolerances, double share)
{
    if (tube.youngs_modulus_mpa)
        return between(1 - tolerances.measuredModulus, 1 + tolerances.measuredModulus, share);
    const double off = between(-tolerances.hardness_shore, tolerances.hardness_shore, share);
    const double hardness = std::clamp(tube.hardness_shore_a + off, 1.0, 99.0);
    return youngsModulusFromShoreA(hardness) / youngsModulusFromShoreA(tube.hardness_shore_a);
}

// At each throttle the larger of both packs.
std::vector<double> worstOfPacks(const std::vector<double>& throttle, const FlightWobble& flight)
{
    const auto over = [&throttle](const PackWobble& pack) {
        return highestNear(wobbleCurve(pack.throttle, pack.wobble_px, pack.peaks), throttle);
    };
    std::vector<double> worst = over(flight.full);
    const std::vector<double> empty = over(flight.empty);
    for (std::size_t i = 0; i < worst.size(); ++i)
        worst[i] = std::max(worst[i], empty[i]);
    return worst;
}

}  // namespace

std::vector<ToleranceSample> toleranceSamples(const Design& design, const Tolerances& tolerances,
                                              std::size_t count, std::uint64_t seed)
{
    std::vector<ToleranceSample> samples;
    for (const std::vector<double>& u :
         unitPoints(count, kCommon + kPerTube * design.mounts.points.size(), seed)) {
        ToleranceSample& sample = samples.emplace_back();
        sample.modulus =
            modulusOfHardness(design.tube, tolerances, u[0]) *
            modulusAtTemperature(between(tolerances.coldest_c, tolerances.warmest_c, u[1]));
        sample.bay = between(1 - tolerances.bay, 1 + tolerances.bay, u[2]);
        sample.battery = between(1 - tolerances.battery, 1 + tolerances.battery, u[3]);
        sample.unbalance = std::pow(tolerances.unbalance, between(-1, 1, u[4]));
        // The coordinates of a sequence are the better spread the earlier: cuts first.
        const std::size_t tubes = design.mounts.points.size();
        const auto either = [&u](double most, std::size_t k) {
            return between(-most, most, u[k]);
        };
        for (std::size_t i = 0; i < tubes; ++i) {
            const std::size_t hole = kCommon + tubes + 3 * i;
            sample.cuts_mm.push_back(either(tolerances.cut_mm, kCommon + i));
            sample.holes_mm.push_back({either(tolerances.hole_mm, hole),
                                       either(tolerances.hole_mm, hole + 1),
                                       either(tolerances.hole_mm, hole + 2)});
            sample.directions_deg.push_back(
                either(tolerances.direction_deg, kCommon + 4 * tubes + i));
        }
    }
    return samples;
}

double worstCruise_px(const Evaluator& evaluator, const SampleWobble& sample)
{
    if (sample.violated)
        return kNoWobble;
    return evaluator.overCruise(sample.flight).worst_px();
}

std::optional<ThrottleSpan> cleanSpan(const std::vector<double>& throttle,
                                      const std::vector<std::vector<double>>& samples_px,
                                      double limit_px, double share)
{
    const double wanted = share * static_cast<double>(samples_px.size()) - 1e-9;
    std::optional<ThrottleSpan> longest;
    // The start moves up; from each one the end goes as far as enough samples come along.
    for (std::size_t from = 0; from < throttle.size(); ++from) {
        std::vector<const std::vector<double>*> along;
        for (const std::vector<double>& sample : samples_px)
            if (!sample.empty())
                along.push_back(&sample);
        for (std::size_t to = from; to < throttle.size(); ++to) {
            std::erase_if(along, [&](const auto* sample) { return !((*sample)[to] < limit_px); });
            if (along.empty() || static_cast<double>(along.size()) < wanted)
                break;
            if (!longest || throttle[to] - throttle[from] > longest->to - longest->from + 1e-9)
                longest = {throttle[from], throttle[to]};
        }
    }
    return longest;
}

bool Robustness::isBetterThan(const Robustness& other) const
{
    const auto rank = [](const Robustness& r) {
        return std::pair(r.p90_px.value_or(kNoWobble), r.p50_px.value_or(kNoWobble));
    };
    return rank(*this) < rank(other);
}

Result<Robustness> robustness(const Evaluator& evaluator, const Design& design, double faint_px,
                              const RobustOptions& options, const std::stop_token& stop,
                              const Progress& progress)
{
    const std::vector<ToleranceSample> samples =
        toleranceSamples(design, options.tolerances, options.samples, options.seed);
    std::vector<SampleWobble> wobbles(samples.size());
    const bool isDone = inParallel(
        samples.size(), options.threads,
        [&](std::size_t i) { wobbles[i] = evaluator.wobbleOf(design, samples[i]); }, stop,
        progress);
    if (!isDone)
        return tl::unexpected(stoppedOnRequest());

    Robustness result{.samples = samples.size()};
    std::vector<double> worst;
    std::vector<std::vector<double>> everywhere;
    for (const SampleWobble& wobble : wobbles) {
        worst.push_back(worstCruise_px(evaluator, wobble));
        everywhere.emplace_back();
        if (wobble.violated)
            ++result.violations.at(static_cast<std::size_t>(*wobble.violated));
        else
            everywhere.back() = worstOfPacks(evaluator.throttle(), wobble.flight);
    }
    result.p10_px = quantile(worst, 0.1);
    result.p50_px = quantile(worst, 0.5);
    result.p90_px = quantile(worst, 0.9);
    result.clean = cleanSpan(evaluator.throttle(), everywhere, faint_px, kMostSamples);
    const auto clean =
        std::count_if(worst.begin(), worst.end(), [&](double w) { return w < faint_px; });
    result.cleanCruise = static_cast<double>(clean) / static_cast<double>(samples.size());
    return result;
}

Phrase robustText(const Robustness& robustness)
{
    if (!robustness.clean)
        return phrase("At no throttle do 9 of 10 builds stay clean.");
    return phrase("9 of 10 builds stay clean from %1 % to %2 % throttle.",
                  fixed(100 * robustness.clean->from, 0), fixed(100 * robustness.clean->to, 0));
}

}  // namespace stillbay
