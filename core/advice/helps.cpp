// SPDX-License-Identifier: MIT
#include "core/advice/helps.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <string_view>
#include <utility>

namespace stillbay {
namespace {

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

}  // namespace

std::vector<Help> Helps::best(std::size_t most) const
{
    std::vector<Help> result;
    for (const Help& help : all)
        if (result.size() < most && before_px && help.after_px <= kWorthSaying * *before_px &&
            *before_px > 0)
            result.push_back(help);
    return result;
}

Result<Helps> whatHelps(const Setup& setup, const AssessOptions& options,
                        const std::stop_token& stop, const Progress& progress)
{
    AssessOptions lean = options;
    lean.frequency_hz = {1.0, 1.0, 1.0};  // the wobble does not look at these curves
    Assessor assessor;
    const auto before = assessor.assess(setup, lean);
    if (!before)
        return tl::unexpected(before.error());
    if (!before->cruise)
        return Helps{};
    Helps helps{before->cruise->worst_px, {}, false};

    std::vector<PracticalStep> steps = practicalSteps(setup);
    for (std::size_t i = 0; i < steps.size(); ++i) {
        helps.stopped = stop.stop_requested();
        if (helps.stopped)
            break;
        if (const auto after = assessor.assess(steps[i].setup, lean); after && after->cruise)
            helps.all.push_back({std::move(steps[i]), after->cruise->worst_px,
                                 added(before->warnings, after->warnings)});
        if (progress)
            progress(i + 1, steps.size());
    }
    std::stable_sort(helps.all.begin(), helps.all.end(),
                     [](const Help& a, const Help& b) { return a.after_px < b.after_px; });
    return helps;
}

Phrase dangerInWords(const Warning& warning)
{
    constexpr std::array<std::pair<std::string_view, const char*>, 9> kDangers{{
        {"tube-slack", words("a tube goes slack")},
        {"tube-buckled", words("a tube buckles")},
        {"tube-bent", words("a tube bends too far")},
        {"over-stretched", words("a tube is stretched beyond its limit")},
        {"over-stretched-3g", words("a tube is stretched beyond its limit at 3 g")},
        {"no-rest-3g", words("the bay finds no rest at 3 g")},
        {"travel", words("the bay hits in a 3 g pull-up")},
        {"swings-with-craft", words("the bay swings with the craft")},
        {"cannot-hover", words("the pack cannot hold the craft")},
    }};
    for (const auto& [code, danger] : kDangers)
        if (warning.code == code)
            return phrase(danger);
    return {};
}

}  // namespace stillbay
