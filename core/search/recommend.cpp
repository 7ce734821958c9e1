// SPDX-License-Identifier: MIT
#include "core/search/recommend.h"

#include "core/search/known.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace stillbay {
namespace {

constexpr double kBeyond = 0.01;  // of a range
constexpr double kSame = 1e-6;    // a variable that does not change

Setup withoutTexts(Setup setup)
{
    setup.name.clear();
    setup.notes.clear();
    setup.tunes.clear();
    return setup;
}

/// One question on its way to the answer.
class Inquiry {
public:
    Inquiry(const RecommendQuestion& question, const RecommendOptions& options,
            std::stop_token stop, const Progress& progress)
        : m_setup(question.setup),
          m_space(question.space),
          m_options(options),
          m_stop(std::move(stop)),
          m_progress(progress),
          m_evaluator(question.setup)
    {
        m_answer.setup = question.setup;
        m_answer.craft = m_evaluator.craft();
    }

    Result<Recommendation> run()
    {
        const Design present = wholeDesignOf(m_setup);
        m_answer.present = {present, m_evaluator.evaluate(present), {}};
        if (m_space) {
            if (const auto done = search(); !done)
                return tl::unexpected(done.error());
            tryAlone();
        }
        if (m_options.search.robustSamples == 0)
            return std::move(m_answer);
        const Evaluator everywhere(m_setup, {}, Throttles::All);
        auto robust = robustOf(everywhere, present);
        if (!robust)
            return tl::unexpected(robust.error());
        m_answer.present.robust = *std::move(robust);
        if (m_space)
            lookBeyond(everywhere);
        return std::move(m_answer);
    }

private:
    Result<void> search()
    {
        if (const auto valid = validate(*m_space, m_setup); !valid)
            return valid;
        std::vector<Design> known = knownDesigns(m_evaluator, m_setup, *m_space);
        if (const auto done = findFrom(known); !done)
            return done;
        m_answer.mapBase = m_answer.best.design;
        if (const auto done = drawMap(); !done)
            return done;
        const auto best = m_answer.map ? m_answer.map->best() : std::nullopt;
        if (!best || !m_answer.map->cells[*best].isBetterThan(m_answer.best.evaluation))
            return {};
        const std::size_t up = m_answer.map->y.count;
        known.push_back(m_answer.map->design(m_answer.mapBase, *best / up, *best % up));
        return findFrom(known);
    }

    Result<void> findFrom(const std::vector<Design>& known)
    {
        auto found = findBest(m_setup, *m_space, m_options.search, known, m_stop, further());
        if (!found)
            return tl::unexpected(found.error());
        m_answer.best = std::move(found->best);
        m_answer.candidates = std::move(found->candidates);
        m_answer.evaluated += found->evaluated;
        return {};
    }

    Result<void> drawMap()
    {
        std::vector<MapAxis> axes;
        for (const VariableRange& range : m_space->variables)
            if (axes.size() < 2 && range.from < range.to)
                axes.push_back({range.variable, range.from, range.to,
                                axes.empty() ? m_options.across : m_options.up});
        if (axes.empty())
            return {};
        if (axes.size() == 1) {
            const Variable other =
                axes[0].variable == Variable::Stretch ? Variable::FreeLength : Variable::Stretch;
            const double value = valueOf(m_answer.mapBase, other);
            axes.push_back({other, value, value, 1});
        }
        auto map =
            mapDesigns(m_evaluator, m_answer.mapBase, axes[0], axes[1], m_options.search.threads,
                       m_stop, further(), {}, hangingOf(m_setup, m_space->level));
        if (!map)
            return tl::unexpected(map.error());
        m_answer.evaluated += map->cells.size();
        m_answer.map = *std::move(map);
        keepWithin(*m_answer.map);
        return {};
    }

    // Designs that leave the range of what is not set but must stay within are outside the limits.
    void keepWithin(DesignMap& map) const
    {
        for (std::size_t k = 0; k < map.cells.size(); ++k) {
            const Design design = map.design(m_answer.mapBase, k / map.y.count, k % map.y.count);
            if (!m_space->keeps(design))
                map.cells[k] = {Constraint::OutsideLimits, {}};
        }
    }

    Result<Robustness> robustOf(const Evaluator& everywhere, const Design& design)
    {
        const std::size_t samples = m_options.search.robustSamples;
        auto robust = robustness(everywhere, design, m_setup.limits.faint_px,
                                 {.samples = samples,
                                  .seed = m_options.search.seed,
                                  .threads = m_options.search.threads},
                                 m_stop, further());
        m_answer.evaluated += samples;
        return robust;
    }

    // One at a time from the present, not in turn: what one brings may need another first.
    void tryAlone()
    {
        const Hanging hanging = hangingOf(m_setup, m_space->level);
        const Design& present = m_answer.present.design;
        const Design& wanted = m_answer.candidates.front().design;
        for (const VariableRange& range : m_space->variables) {
            const double from = valueOf(present, range.variable),
                         to = valueOf(wanted, range.variable);
            if (std::abs(to - from) < kSame * std::max(1.0, std::abs(from)))
                continue;
            Design design = present;
            setValue(design, range.variable, to);
            m_answer.alone.push_back(
                {range.variable, from, to, m_evaluator.evaluate(hanging.hung(std::move(design)))});
            ++m_answer.evaluated;
        }
        std::stable_sort(m_answer.alone.begin(), m_answer.alone.end(),
                         [](const VariableEffect& a, const VariableEffect& b) {
                             return a.evaluation.isBetterThan(b.evaluation);
                         });
    }

    // Where one step beyond the end of a range would be more robust.
    void lookBeyond(const Evaluator& everywhere)
    {
        const std::vector<Candidate> rows = rowsOf(m_answer);
        const Candidate& mostRobust = rows[mostRobustOf(rows)];
        for (const VariableRange& range : m_space->variables) {
            const double value = valueOf(mostRobust.design, range.variable);
            const double step = kBeyond * (range.to - range.from);
            const bool isHigh = range.to - value < step;
            if (!isHigh && value - range.from >= step)
                continue;
            Design beyond = mostRobust.design;
            setValue(beyond, range.variable, isHigh ? range.to + step : range.from - step);
            beyond = hangingOf(m_setup, m_space->level).hung(std::move(beyond));
            const auto robust = robustOf(everywhere, beyond);
            if (robust && robust->isBetterThan(*mostRobust.robust))
                m_answer.widen.push_back(range.variable);
        }
    }

    // Steps on top of those that are done.
    Progress further() const
    {
        if (!m_progress)
            return {};
        return [this, before = m_answer.evaluated](std::size_t done, std::size_t all) {
            m_progress(before + done, before + all + m_options.search.robustSamples);
        };
    }

    const Setup& m_setup;
    const std::optional<SearchSpace>& m_space;
    const RecommendOptions& m_options;
    std::stop_token m_stop;
    const Progress& m_progress;
    Evaluator m_evaluator;
    Recommendation m_answer;
};

}  // namespace

Result<Recommendation> recommend(const RecommendQuestion& question, const RecommendOptions& options,
                                 const std::stop_token& stop, const Progress& progress)
{
    return Inquiry(question, options, stop, progress).run();
}

std::vector<Candidate> rowsOf(const Recommendation& answer)
{
    std::vector<Candidate> rows = answer.candidates;
    if (!hasDesign(rows, answer.present.design))
        rows.push_back(answer.present);
    return rows;
}

std::size_t mostRobustOf(const std::vector<Candidate>& rows)
{
    const auto mostRobust = std::min_element(
        rows.begin(), rows.end(),
        [](const Candidate& a, const Candidate& b) { return a.robust->isBetterThan(*b.robust); });
    return static_cast<std::size_t>(mostRobust - rows.begin());
}

std::vector<Phrase> widenTexts(const Recommendation& answer)
{
    std::vector<Phrase> sentences;
    for (const Variable variable : answer.widen)
        sentences.push_back(phrase(
            "The range of “%1” ends where it still gets more robust: widen it and find again.",
            Phrase{fieldOf(variable).label, {}}));
    return sentences;
}

bool sameForSearch(const Setup& a, const Setup& b)
{
    return withoutTexts(a) == withoutTexts(b);
}

}  // namespace stillbay
