// SPDX-License-Identifier: MIT
#include "core/search/search_evaluator.h"

#include "core/search/robust.h"

#include <cmath>
#include <utility>
#include <vector>

namespace stillbay {
namespace {

constexpr double kOutOfQuestion = 30.0;  // above the logarithm of any wobble in px

// Smooths decades: the search compares ratios, not differences.
double logarithm(double wobble_px)
{
    return std::log(wobble_px + 1e-9);
}

}  // namespace

SearchEvaluator::SearchEvaluator(const Setup& setup, const SearchSpace& space, std::stop_token stop,
                                 StepCount& count)
    : m_space(space), m_stop(std::move(stop)), m_count(count), m_evaluator(setup)
{
}

Evaluation SearchEvaluator::evaluate(const Design& design)
{
    if (m_stop.stop_requested() || !m_space.keeps(design))
        return {Constraint::OutsideLimits, {}};
    const Evaluation evaluation = m_evaluator.evaluate(design);
    m_count.add();
    return evaluation;
}

std::optional<double> SearchEvaluator::plannedObjective(const Evaluation& evaluation) const
{
    if (m_stop.stop_requested())
        return {};
    return evaluation.feasible() ? logarithm(evaluation.cruise.worst_px()) : kOutOfQuestion;
}

std::optional<double> SearchEvaluator::robustObjective(const Design& design, std::uint64_t seed)
{
    const std::vector<ToleranceSample> samples =
        toleranceSamples(design, Tolerances{}, kRobustSamples, seed);
    std::vector<double> worst;
    double violating = 0.0;
    for (const ToleranceSample& sample : samples) {
        if (m_stop.stop_requested())
            return {};
        const SampleWobble wobble = m_evaluator.wobbleOf(design, sample);
        m_count.add();
        worst.push_back(worstCruise_px(m_evaluator, wobble));
        if (wobble.violated)
            ++violating;
    }
    const auto all = static_cast<double>(samples.size());
    if (violating > (1 - kMostSamples) * all)
        return kOutOfQuestion * (1 + violating / all);
    return logarithm(*quantile(std::move(worst), kMostSamples));
}

}  // namespace stillbay
