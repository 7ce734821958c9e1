// SPDX-License-Identifier: MIT
#include "core/advice/suggestions.h"

#include "core/assess/constraints.h"
#include "core/response/cruise.h"

#include <algorithm>
#include <iterator>
#include <utility>

namespace stillbay {
namespace {

constexpr double kWorse = 1.1;         // wobble elsewhere, over what it was
constexpr double kWorthSaying = 0.99;  // of the wobble as it is; less is lost in the model's error

std::vector<Warning> added(const std::vector<Warning>& before, const std::vector<Warning>& after)
{
    std::vector<Warning> result;
    std::copy_if(after.begin(), after.end(), std::back_inserter(result), [&](const Warning& w) {
        return std::none_of(before.begin(), before.end(),
                            [&](const Warning& old) { return old.code == w.code; });
    });
    return result;
}

// The worst outside of the cruise window, at the full pack.
WobbleAt worstOutside(const Setup& setup, const Assessment& assessment)
{
    const CruiseWindow window(setup.flight);
    WobbleAt worst;
    for (const WobbleAt& at : assessment.curve)
        if (!window.contains(at.throttle) && at.wobble_px > worst.wobble_px)
            worst = at;
    return worst;
}

std::optional<WobbleAt> movedTo(const Setup& setup, const WobbleAt& before, const Assessment& after)
{
    const WobbleAt now = worstOutside(setup, after);
    const bool isWorse =
        now.wobble_px > kWorse * before.wobble_px && now.wobble_px >= setup.limits.faint_px;
    return isWorse ? std::optional(now) : std::nullopt;
}

}  // namespace

std::vector<Suggestion> Suggestions::best(std::size_t most) const
{
    std::vector<Suggestion> result;
    for (const Suggestion& suggestion : all)
        if (result.size() < most && before_px &&
            (suggestion.mends ||
             (*before_px > 0 && suggestion.after_px <= kWorthSaying * *before_px)))
            result.push_back(suggestion);
    return result;
}

std::optional<Suggestion> Suggestions::next() const
{
    const std::vector<Suggestion> first = best(1);
    return first.empty() || !first.front().mayFly ? std::nullopt : std::optional(first.front());
}

Result<Suggestions> findSuggestions(const Setup& setup, const AssessOptions& options,
                                    const std::stop_token& stop, const Progress& progress)
{
    AssessOptions lean = options;
    lean.frequency_hz = {1.0, 1.0, 1.0};  // the wobble does not look at these curves
    Assessor assessor;
    const auto before = assessor.assess(setup, lean);
    if (!before)
        return tl::unexpected(before.error());
    if (!before->cruise)
        return Suggestions{};
    Suggestions suggestions{before->cruise->worst_px(), {}, false};
    const WobbleAt outside = worstOutside(setup, *before);

    std::vector<PracticalStep> steps = practicalSteps(setup);
    for (std::size_t i = 0; i < steps.size(); ++i) {
        suggestions.stopped = stop.stop_requested();
        if (suggestions.stopped)
            break;
        if (const auto after = assessor.assess(steps[i].setup, lean); after && after->cruise)
            suggestions.all.push_back({std::move(steps[i]), after->cruise->worst_px(),
                                       added(before->warnings, after->warnings),
                                       after->status.flyable,
                                       !before->status.flyable && after->status.flyable,
                                       movedTo(setup, outside, *after)});
        if (progress)
            progress(i + 1, steps.size());
    }
    std::stable_sort(suggestions.all.begin(), suggestions.all.end(),
                     [](const Suggestion& a, const Suggestion& b) {
                         return std::pair(!a.mayFly, a.after_px) < std::pair(!b.mayFly, b.after_px);
                     });
    return suggestions;
}

Phrase movedText(const WobbleAt& to)
{
    return phrase("outside of cruise %1 px at %2 % throttle", rounded(to.wobble_px, 2),
                  fixed(100 * to.throttle, 0));
}

Phrase dangerText(const Warning& warning)
{
    const ConstraintRow* const row = rowOf(warning.code);
    return row ? phrase(row->text) : Phrase{};
}

}  // namespace stillbay
