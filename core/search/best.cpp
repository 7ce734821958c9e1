// SPDX-License-Identifier: MIT
#include "core/search/best.h"

#include "core/base/parallel.h"
#include "core/search/polish.h"
#include "core/search/starts.h"

#include <algorithm>
#include <array>
#include <functional>
#include <utility>

namespace stillbay {
namespace {

constexpr std::size_t kMostCandidates = 6;  // half of them as planned, half robust

// Designs and samples at most.
std::size_t expectedSteps(const SearchSpace& space, const SearchOptions& options)
{
    const std::size_t d = space.variables.size(),
                      tubes = std::max<std::size_t>(space.stock.size(), 1);
    const std::size_t corners = std::size_t{1} << d;  // to round one place
    const std::size_t polish = options.starts * tubes * (kPolishPerVariable * d + 2 * corners);
    const std::size_t robust =
        options.robustSamples == 0
            ? 0
            : options.starts * (kRefinePerVariable * d * kRobustSamples + corners) +
                  kMostCandidates * options.robustSamples;
    return tubes * std::max<std::size_t>(options.samples * d, 1) + polish + robust;
}

Error nothingFeasible(const std::array<std::size_t, kConstraints>& violations)
{
    const auto most = std::max_element(violations.begin(), violations.end());
    const auto commonest = static_cast<Constraint>(most - violations.begin());
    return {Errc::NoAnswer,
            phrase("no design within these limits holds; most often %1", violationText(commonest)),
            "mounts"};
}

/// The search under way.
class Search {
public:
    Search(const Setup& setup, const SearchSpace& space, const SearchOptions& options,
           std::stop_token stop, const Progress& progress)
        : m_setup(setup),
          m_options(options),
          m_stop(std::move(stop)),
          m_cube(wholeDesignOf(setup), space, hangingOf(setup, space.level)),
          m_count(expectedSteps(space, options), progress),
          m_evaluator(setup, space, m_stop, m_count)
    {
    }

    Result<Found> run(std::span<const Design> known);

private:
    Result<std::vector<Start>> findStarts(std::span<const Design> known);
    Result<std::vector<Candidate>> bestAsPlanned(const std::vector<Start>& starts,
                                                 std::span<const Design> known);
    Result<std::vector<Candidate>> mostRobust(std::vector<Start> starts);
    Result<void> rank(std::vector<Candidate>& candidates, std::span<const Design> known);

    Result<void> addRobustness(std::vector<Candidate>& candidates);
    bool forAll(std::size_t count, const std::function<void(std::size_t)>& work) const;

    const Setup& m_setup;
    const SearchOptions& m_options;
    std::stop_token m_stop;
    DesignCube m_cube;
    StepCount m_count;  // of designs and samples computed
    SearchEvaluator m_evaluator;
    std::array<std::size_t, kConstraints> m_violations{};  // while scanning
};

Result<Found> Search::run(std::span<const Design> known)
{
    const auto starts = findStarts(known);
    if (!starts)
        return tl::unexpected(starts.error());
    auto candidates = bestAsPlanned(*starts, known);
    if (!candidates)
        return tl::unexpected(candidates.error());
    const Design best = candidates->front().design;
    if (m_options.robustSamples > 0) {
        const auto robust = mostRobust(*starts);
        if (!robust)
            return tl::unexpected(robust.error());
        addNew(*candidates, *robust, m_cube);
        if (const auto done = rank(*candidates, known); !done)
            return tl::unexpected(done.error());
    }
    const auto ranked =
        std::find_if(candidates->begin(), candidates->end(),
                     [&](const Candidate& candidate) { return candidate.design == best; });
    Found found{.best = *ranked, .candidates = {}, .evaluated = m_count.done()};
    found.candidates = *std::move(candidates);
    return found;
}

// Known designs, and the best places of a look over everything.
Result<std::vector<Start>> Search::findStarts(std::span<const Design> known)
{
    std::vector<Scan> scans(m_cube.tubes());
    const std::size_t evaluations = m_options.samples * m_cube.dimensions();
    if (!forAll(scans.size(), [&](std::size_t tube) {
            scans[tube] = scanTube(m_evaluator, m_cube, tube, evaluations);
        }))
        return tl::unexpected(stoppedOnRequest());
    std::vector<Start> seen;
    for (const Scan& scan : scans) {
        seen.insert(seen.end(), scan.feasible.begin(), scan.feasible.end());
        std::transform(scan.violations.begin(), scan.violations.end(), m_violations.begin(),
                       m_violations.begin(), std::plus<>());
    }
    std::vector<Start> starts = startsOf(known, m_evaluator, m_cube);
    const std::vector<Start> best = bestStarts(std::move(seen), m_options.starts);
    starts.insert(starts.end(), best.begin(), best.end());
    if (starts.empty())
        return tl::unexpected(nothingFeasible(m_violations));
    return starts;
}

// The best first. What a start was is not lost where polishing or rounding leads astray.
Result<std::vector<Candidate>> Search::bestAsPlanned(const std::vector<Start>& starts,
                                                     std::span<const Design> known)
{
    std::vector<Candidate> candidates(starts.size());
    if (!forAll(starts.size(),
                [&](std::size_t i) { candidates[i] = polished(starts[i], m_evaluator, m_cube); }))
        return tl::unexpected(stoppedOnRequest());
    for (const Design& design : known)
        candidates.push_back(candidateOf(design, m_evaluator));
    for (const Start& start : starts)
        candidates.push_back(roundedAt(start.tube, start.x, m_evaluator, m_cube));
    keepBest(candidates, m_cube, kMostCandidates / 2);
    if (candidates.empty())  // only what was known, and that does not hold either
        return tl::unexpected(nothingFeasible(m_violations));
    return candidates;
}

// Refined from the best starts; their robustness is not computed yet.
Result<std::vector<Candidate>> Search::mostRobust(std::vector<Start> starts)
{
    std::stable_sort(starts.begin(), starts.end(), [](const Start& a, const Start& b) {
        return a.evaluation.isBetterThan(b.evaluation);
    });
    starts.resize(std::min(starts.size(), m_options.starts));
    std::vector<Candidate> candidates(starts.size());
    if (!forAll(starts.size(), [&](std::size_t i) {
            candidates[i] = refined(starts[i], m_evaluator, m_cube, m_options.seed);
        }))
        return tl::unexpected(stoppedOnRequest());
    keepBest(candidates, m_cube, kMostCandidates / 2);
    return candidates;
}

// The most robust first. What was known competes for that place and for no other.
Result<void> Search::rank(std::vector<Candidate>& candidates, std::span<const Design> known)
{
    const std::vector<Candidate> chosen = candidates;
    for (const Design& design : known)
        if (const Candidate candidate = candidateOf(design, m_evaluator);
            candidate.evaluation.feasible() && !hasDesign(chosen, design))
            candidates.push_back(candidate);
    if (auto done = addRobustness(candidates); !done)
        return done;
    candidates.erase(std::remove_if(candidates.begin() + 1, candidates.end(),
                                    [&](const Candidate& candidate) {
                                        return !hasDesign(chosen, candidate.design);
                                    }),
                     candidates.end());
    return {};
}

Result<void> Search::addRobustness(std::vector<Candidate>& candidates)
{
    const Evaluator everywhere(m_setup, {}, Throttles::All);
    for (Candidate& candidate : candidates) {
        std::size_t counted = 0;
        const Progress count = [&](std::size_t done, std::size_t) {
            m_count.add(done - std::exchange(counted, done));
        };
        auto robust = robustness(everywhere, candidate.design, m_setup.limits.faint_px,
                                 {.samples = m_options.robustSamples,
                                  .seed = m_options.seed,
                                  .threads = m_options.threads},
                                 m_stop, count);
        if (!robust)
            return tl::unexpected(robust.error());
        candidate.robust = *std::move(robust);
    }
    sortByRobustness(candidates);
    return {};
}

bool Search::forAll(std::size_t count, const std::function<void(std::size_t)>& work) const
{
    return inParallel(count, m_options.threads, work, m_stop, {});
}

}  // namespace

Result<Found> findBest(const Setup& setup, const SearchSpace& space, const SearchOptions& options,
                       std::span<const Design> known, const std::stop_token& stop,
                       const Progress& progress)
{
    if (const auto done = validate(space, setup); !done)
        return tl::unexpected(done.error());
    return Search(setup, space, options, stop, progress).run(known);
}

}  // namespace stillbay
