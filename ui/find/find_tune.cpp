// SPDX-License-Identifier: MIT
#include "ui/find/find_tune.h"

#include "core/search/known.h"

#include <algorithm>
#include <functional>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr double kBeyond = 0.01;  // of a range

/// Where one step beyond the end of a range would be sturdier.
std::vector<Knob> wouldWiden(const SearchSpace& space, const Candidate& sturdiest,
                             const std::function<Result<Robustness>(const Design&)>& robustOf)
{
    std::vector<Knob> knobs;
    for (const KnobRange& range : space.knobs) {
        const double value = valueOf(sturdiest.design, range.knob);
        const double step = kBeyond * (range.to - range.from);
        const bool isHigh = range.to - value < step;
        if (!isHigh && value - range.from >= step)
            continue;
        Design beyond = sturdiest.design;
        turn(beyond, range.knob, isHigh ? range.to + step : range.from - step);
        const auto robust = robustOf(beyond);
        if (robust && robust->isBetterThan(*sturdiest.robust))
            knobs.push_back(range.knob);
    }
    return knobs;
}

Setup withoutWords(Setup setup)
{
    setup.name.clear();
    setup.notes.clear();
    setup.tunes.clear();
    return setup;
}

}  // namespace

Result<FindAnswer> findTune(const FindQuestion& question, const SearchOptions& options,
                            const std::stop_token& stop, const Progress& progress)
{
    const auto& [setup, space] = question;
    FindAnswer answer{.setup = setup, .present = {}, .candidates = {}, .best = {}, .widen = {}};
    answer.present.design = designOf(setup);
    const Judge judge(setup);
    answer.present.verdict = judge.judge(answer.present.design);
    const std::size_t builds = options.robustBuilds;
    if (space) {
        auto found =
            findBest(setup, *space, options, knownDesigns(judge, setup, *space), stop,
                     [&](std::size_t done, std::size_t all) { progress(done, all + builds); });
        if (!found)
            return tl::unexpected(found.error());
        answer.candidates = std::move(found->candidates);
        answer.best = std::move(found->best.design);
        answer.tried = found->judged;
    }
    const Judge everywhere(setup, {}, Throttles::All);
    const auto robustOf = [&](const Design& design) {
        auto robust =
            robustness(everywhere, design, setup.limits.faint_px,
                       {.builds = builds, .seed = options.seed, .threads = options.threads}, stop,
                       [&](std::size_t done, std::size_t) {
                           progress(answer.tried + done, answer.tried + builds);
                       });
        answer.tried += builds;
        return robust;
    };
    auto robust = robustOf(answer.present.design);
    if (!robust)
        return tl::unexpected(robust.error());
    answer.present.robust = *std::move(robust);
    const std::vector<Candidate> rows = rowsOf(answer);
    if (space)
        answer.widen = wouldWiden(*space, rows[sturdiestOf(rows)], robustOf);
    return answer;
}

std::vector<Candidate> rowsOf(const FindAnswer& answer)
{
    std::vector<Candidate> rows = answer.candidates;
    if (std::none_of(rows.begin(), rows.end(),
                     [&](const Candidate& row) { return row.design == answer.present.design; }))
        rows.push_back(answer.present);
    return rows;
}

std::size_t sturdiestOf(const std::vector<Candidate>& rows)
{
    const auto sturdiest = std::min_element(
        rows.begin(), rows.end(),
        [](const Candidate& a, const Candidate& b) { return a.robust->isBetterThan(*b.robust); });
    return static_cast<std::size_t>(sturdiest - rows.begin());
}

bool sameForSearch(const Setup& a, const Setup& b)
{
    return withoutWords(a) == withoutWords(b);
}

}  // namespace stillbay::ui
