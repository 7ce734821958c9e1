// SPDX-License-Identifier: MIT
#include "core/search/robust.h"

#include "core/base/check.h"
#include "core/search/parallel.h"
#include "core/tube/rubber.h"

#include <algorithm>
#include <boost/random/sobol.hpp>
#include <cmath>
#include <limits>
#include <numeric>
#include <random>

namespace stillbay {
namespace {

constexpr double kReading_c = 20.0;  // room temperature, where hardness and hang tests are read
constexpr double kZeroCelsius_k = 273.15;
constexpr std::size_t kCommon = 5;  // what scatters beside the cut of each tube
constexpr double kNoWobble = std::numeric_limits<double>::infinity();

/// Points of a unit cube, evenly spread.
class UnitPoints {
public:
    UnitPoints(std::size_t dimensions, std::uint64_t seed) : m_sobol(dimensions)
    {
        std::mt19937_64 random(seed);
        for (std::size_t k = 0; k < dimensions; ++k)
            m_shift.push_back(std::ldexp(static_cast<double>(random() >> 11U), -53));
    }

    std::vector<double> next()
    {
        std::vector<double> point;
        for (const double shift : m_shift) {
            const double x = std::ldexp(static_cast<double>(m_sobol()), -64) + shift;
            point.push_back(x - std::floor(x));
        }
        return point;
    }

private:
    boost::random::sobol m_sobol;
    std::vector<double> m_shift;
};

double between(double low, double high, double share)
{
    return low + (high - low) * share;
}

double modulusOfHardness(const TubeStock& tube, const Spread& spread, double share)
{
    if (tube.youngs_modulus_mpa)
        return between(1 - spread.measuredModulus, 1 + spread.measuredModulus, share);
    const double off = between(-spread.hardness_shore, spread.hardness_shore, share);
    const double hardness = std::clamp(tube.hardness_shore_a + off, 1.0, 99.0);
    return youngsModulusFromShoreA(hardness) / youngsModulusFromShoreA(tube.hardness_shore_a);
}

bool isClean(const BuildWobble& build, std::size_t throttle, double limit_px)
{
    return build.full_px[throttle] < limit_px && build.empty_px[throttle] < limit_px;
}

double worstCruise_px(const Judge& judge, const BuildWobble& build)
{
    if (build.objection)
        return kNoWobble;
    return std::max(judge.overCruise(build.full_px).worst_px,
                    judge.overCruise(build.empty_px).worst_px);
}

}  // namespace

double modulusAtTemperature(double temperature_c)
{
    return (temperature_c + kZeroCelsius_k) / (kReading_c + kZeroCelsius_k);
}

std::vector<Build> scatteredBuilds(const Design& design, const Spread& spread, std::size_t count,
                                   std::uint64_t seed)
{
    UnitPoints points(kCommon + design.mounts.points.size(), seed);
    std::vector<Build> builds(count);
    for (Build& build : builds) {
        const std::vector<double> u = points.next();
        build.modulus = modulusOfHardness(design.tube, spread, u[0]) *
                        modulusAtTemperature(between(spread.coldest_c, spread.warmest_c, u[1]));
        build.bay = between(1 - spread.bay, 1 + spread.bay, u[2]);
        build.battery = between(1 - spread.battery, 1 + spread.battery, u[3]);
        build.unbalance = std::pow(spread.unbalance, between(-1, 1, u[4]));
        for (std::size_t k = kCommon; k < u.size(); ++k)
            build.cuts_mm.push_back(between(-spread.cut_mm, spread.cut_mm, u[k]));
    }
    return builds;
}

std::optional<double> quantile(std::vector<double> values, double share)
{
    check(!values.empty() && share > 0 && share <= 1, "quantile: a share of some values");
    const auto rank =
        static_cast<std::ptrdiff_t>(std::ceil(share * static_cast<double>(values.size()) - 1e-9));
    const auto at = values.begin() + std::max<std::ptrdiff_t>(rank, 1) - 1;
    std::nth_element(values.begin(), at, values.end());
    return std::isfinite(*at) ? std::optional(*at) : std::nullopt;
}

std::optional<ThrottleSpan> cleanSpan(const std::vector<double>& throttle,
                                      const std::vector<BuildWobble>& builds, double limit_px,
                                      double share)
{
    const double wanted = share * static_cast<double>(builds.size()) - 1e-9;
    std::optional<ThrottleSpan> longest;
    // The start moves up; from each one the end goes as far as enough builds come along.
    for (std::size_t from = 0; from < throttle.size(); ++from) {
        std::vector<const BuildWobble*> along;
        for (const BuildWobble& build : builds)
            if (!build.objection)
                along.push_back(&build);
        for (std::size_t to = from; to < throttle.size(); ++to) {
            std::erase_if(along, [&](const BuildWobble* b) { return !isClean(*b, to, limit_px); });
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

Result<Robustness> robustness(const Judge& judge, const Design& design, double faint_px,
                              const RobustOptions& options, const std::stop_token& stop,
                              const Progress& progress)
{
    const std::vector<Build> builds =
        scatteredBuilds(design, options.spread, options.builds, options.seed);
    std::vector<BuildWobble> wobbles(builds.size());
    const bool isDone = inParallel(
        builds.size(), options.threads,
        [&](std::size_t i) { wobbles[i] = judge.wobbleOf(design, builds[i]); }, stop, progress);
    if (!isDone)
        return tl::unexpected(stoppedOnRequest());

    Robustness result{.builds = builds.size(), .refused = {}};
    std::vector<double> worst;
    for (const BuildWobble& wobble : wobbles) {
        worst.push_back(worstCruise_px(judge, wobble));
        if (wobble.objection)
            ++result.refused.at(static_cast<std::size_t>(*wobble.objection));
    }
    result.p10_px = quantile(worst, 0.1);
    result.p50_px = quantile(worst, 0.5);
    result.p90_px = quantile(worst, 0.9);
    result.clean = cleanSpan(judge.throttle(), wobbles, faint_px, kMostBuilds);
    const auto clean =
        std::count_if(worst.begin(), worst.end(), [&](double w) { return w < faint_px; });
    result.cleanCruise = static_cast<double>(clean) / static_cast<double>(builds.size());
    return result;
}

Phrase robustInWords(const Robustness& robustness)
{
    if (!robustness.clean)
        return phrase("At no throttle do 9 of 10 builds stay clean.");
    return phrase("9 of 10 builds stay clean from %1 % to %2 % throttle.",
                  fixed(100 * robustness.clean->from, 0), fixed(100 * robustness.clean->to, 0));
}

}  // namespace stillbay
