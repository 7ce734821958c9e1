// SPDX-License-Identifier: MIT
#include "core/advice/uncertainty.h"

#include "core/advice/sampled_cruise.h"
#include "core/base/quantile.h"
#include "core/setup/validate.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>

namespace stillbay {
namespace {

constexpr double kNone = std::numeric_limits<double>::quiet_NaN();
constexpr double kUnflyable = std::numeric_limits<double>::infinity();

/// What is kept of each craft, in this order.
enum Answer { Flyable, Worst, BadFrom, BadTo };
constexpr std::size_t kAnswers = 4;

std::vector<double> answersOf(const SampledCruise& cruise)
{
    std::vector<double> answers(kAnswers, kNone);
    answers[Flyable] = cruise.flyable && cruise.worst_px ? 1 : 0;
    answers[Worst] = cruise.worst_px.value_or(kNone);
    if (cruise.bad) {
        answers[BadFrom] = cruise.bad->from;
        answers[BadTo] = cruise.bad->to;
    }
    return answers;
}

// The coordinates of each input that is not known, in turn, and last those of all builds.
std::vector<std::vector<std::size_t>> groupsOf(const std::vector<UncertainInput>& inputs)
{
    std::vector<std::vector<std::size_t>> groups;
    std::vector<std::size_t> builds;
    std::size_t next = 0;
    for (const UncertainInput& input : inputs) {
        std::vector<std::size_t> own;
        for (std::size_t k = 0; k < input.dimensions; ++k)
            own.push_back(next++);
        if (input.doubt == Doubt::BuildToBuild)
            builds.insert(builds.end(), own.begin(), own.end());
        else
            groups.push_back(std::move(own));
    }
    groups.push_back(std::move(builds));
    return groups;
}

Percentiles percentilesOf(const std::vector<double>& values)
{
    if (values.empty())
        return {};
    return {quantile(values, 0.1), quantile(values, 0.5), quantile(values, 0.9)};
}

void addCounts(const CubeSample& sample, const Limits& limits, Uncertainty& result)
{
    std::vector<double> worst, from, to;
    for (const std::vector<double>& answers : sample.outputs) {
        if (answers[Flyable] == 0) {
            ++result.unflyable;
            worst.push_back(kUnflyable);
            continue;
        }
        const double px = answers[Worst];
        ++(px < limits.faint_px ? result.clean : px < limits.bad_px ? result.faint : result.bad);
        worst.push_back(px);
        if (std::isnan(answers[BadFrom]))
            continue;
        from.push_back(answers[BadFrom]);
        to.push_back(answers[BadTo]);
    }
    result.crafts = sample.outputs.size();
    result.worst_px = percentilesOf(worst);
    result.badFrom = percentilesOf(from);
    result.badTo = percentilesOf(to);
}

void addShares(const CubeSample& sample, const std::vector<UncertainInput>& inputs,
               Uncertainty& result)
{
    const std::vector<std::vector<std::size_t>> groups = groupsOf(inputs);
    constexpr std::array<std::pair<Answer, std::optional<VarianceShare> AnswerShares::*>, 3> kParts{
        {{Worst, &AnswerShares::worst},
         {BadFrom, &AnswerShares::badFrom},
         {BadTo, &AnswerShares::badTo}}};
    for (const auto& [answer, member] : kParts) {
        std::vector<double> values;
        for (const std::vector<double>& answers : sample.outputs) {
            const double value = answers[answer];
            if (answer == Worst)
                values.push_back(value > 0 ? std::log(value) : kNone);
            else
                values.push_back(value);
        }
        const auto shares = firstOrderShares(sample.points, values, groups);
        if (!shares)
            continue;
        for (std::size_t i = 0; i < result.notKnown.size(); ++i)
            result.notKnown[i].shares.*member = (*shares)[i];
        result.buildToBuild.*member = shares->back();
    }
}

}  // namespace

Result<Uncertainty> uncertainty(const Setup& setup, const UncertaintyOptions& options,
                                const std::stop_token& stop, const Progress& progress)
{
    if (const auto valid = validate(setup); !valid)
        return tl::unexpected(valid.error());
    const std::vector<UncertainInput> inputs = uncertainInputs(setup);
    const auto sample = sampleCube(
        dimensionsOf(inputs),
        [&](std::span<const double> point) {
            return answersOf(
                sampledCruise(craftAt(setup, inputs, point), options.flexible_airframe));
        },
        {options.crafts, options.seed, options.threads}, stop, progress);
    if (!sample)
        return tl::unexpected(stoppedOnRequest());

    Uncertainty result;
    for (const UncertainInput& input : inputs)
        if (input.doubt == Doubt::NotKnownYet)
            result.notKnown.push_back({input.key, input.label, input.measurement, {}});
    addCounts(*sample, setup.limits, result);
    addShares(*sample, inputs, result);
    std::stable_sort(result.notKnown.begin(), result.notKnown.end(),
                     [](const NotKnown& a, const NotKnown& b) {
                         return a.shares.worst && b.shares.worst &&
                                a.shares.worst->share > b.shares.worst->share;
                     });
    return result;
}

}  // namespace stillbay
