// SPDX-License-Identifier: MIT
#include "core/search/best.h"

#include "core/search/minimize.h"
#include "core/search/parallel.h"
#include "core/setup/validate.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <iterator>
#include <limits>
#include <mutex>
#include <utility>

namespace stillbay {
namespace {

constexpr double kOutOfQuestion = 30.0;  // above the logarithm of any wobble in px
constexpr double kFirstStep = 0.05;      // of a variable's range
constexpr double kSamePlace = 0.03;      // of a variable's range: nearer candidates are one
constexpr std::size_t kPolishPerVariable = 150;
constexpr std::size_t kRobustPerVariable = 40;
constexpr std::size_t kRobustSamples = 48;  // a coarse 90th percentile while looking
constexpr std::size_t kMostCandidates = 6;

/// A place that was evaluated.
struct Evaluated {
    std::size_t base = 0;  ///< which tube
    UnitPoint x;
    Evaluation evaluation;
};

// Smooths decades: the search compares ratios, not differences.
double logarithm(double wobble_px)
{
    return std::log(wobble_px + 1e-9);
}

double objectiveOf(const Evaluation& evaluation)
{
    return evaluation.feasible() ? logarithm(evaluation.worst_px()) : kOutOfQuestion;
}

std::optional<Error> fault(const Setup& setup, const SearchSpace& space)
{
    if (space.variables.empty() && space.stock.empty())
        return Error{Errc::BadInput, phrase("the search has nothing to choose"), ""};
    for (std::size_t i = 0; i < space.variables.size(); ++i) {
        const VariableRange& range = space.variables[i];
        const VariableField field = fieldOf(range.variable);
        if (!canSet(setup.mounts, range.variable))
            return Error{
                Errc::BadInput,
                phrase("%1 is decided by the holes of a drilled craft", phrase(field.label)),
                field.key};
        if (!(range.from <= range.to))
            return Error{Errc::BadInput, phrase("%1 needs a range that rises", phrase(field.label)),
                         field.key};
        for (std::size_t k = 0; k < i; ++k)
            if (space.variables[k].variable == range.variable)
                return Error{Errc::BadInput, phrase("%1 is there twice", phrase(field.label)),
                             field.key};
    }
    for (const StockTube& stock : space.stock) {
        Design design = designOf(setup);
        useTube(design, stock);
        if (const auto valid = validate(design.tube, setup.mounts); !valid)
            return valid.error();
    }
    return {};
}

Error nothingFeasible(const std::array<std::size_t, kConstraints>& refused)
{
    const auto commonest = std::max_element(refused.begin(), refused.end());
    const auto violated = static_cast<Constraint>(commonest - refused.begin());
    return {Errc::NoAnswer,
            phrase("no design within these limits holds; most often %1", violationText(violated)),
            "mounts"};
}

/// The search under way.
class Search {
public:
    Search(const Setup& setup, const SearchSpace& space, const SearchOptions& options,
           std::stop_token stop, const Progress& progress)
        : m_setup(setup),
          m_space(space),
          m_options(options),
          m_stop(std::move(stop)),
          m_evaluator(setup),
          m_count(expected(), progress)
    {
        for (const VariableRange& range : space.variables)
            if (range.from < range.to)
                m_variables.push_back(range);
        for (const StockTube& stock : tubes()) {
            Design base = designOf(setup);
            useTube(base, stock);
            for (const VariableRange& range : space.variables)
                setValue(base, range.variable, range.from);
            m_bases.push_back(base);
        }
    }

    Result<Found> run(std::span<const Design> known);

private:
    std::vector<StockTube> tubes() const
    {
        return m_space.stock.empty() ? std::vector{stockOf(m_setup.tube)} : m_space.stock;
    }
    std::size_t expected() const
    {
        const std::size_t d = m_space.variables.size(),
                          tubes = std::max<std::size_t>(m_space.stock.size(), 1);
        const std::size_t corners = std::size_t{1} << d;  // to tidy one place
        const std::size_t polish =
            m_options.starts * tubes * (kPolishPerVariable * d + 2 * corners);
        const std::size_t robust =
            m_options.robustSamples == 0
                ? 0
                : m_options.starts * (kRobustPerVariable * d * kRobustSamples + corners) +
                      kMostCandidates * m_options.robustSamples;
        return tubes * std::max<std::size_t>(m_options.samples * d, 1) + polish + robust;
    }

    Design designAt(std::size_t base, const UnitPoint& x) const;
    UnitPoint placeOf(const Design& design) const;
    Evaluation evaluated(const Design& design);
    Design tidied(std::size_t base, const UnitPoint& x);
    bool isSamePlace(const Candidate& a, const Candidate& b) const;
    void keepBest(std::vector<Candidate>& candidates, std::size_t most) const;
    std::vector<Evaluated> placesOf(std::span<const Design> known);
    bool forAll(std::size_t count, const std::function<void(std::size_t)>& work);

    void scan(std::size_t base);
    std::vector<Evaluated> starts() const;
    Candidate polished(const Evaluated& start);
    Candidate refined(const Evaluated& start);
    std::optional<double> robustnessOf(const Design& design);
    bool isOfTube(const Design& design, std::size_t base) const;
    Result<void> addRobustness(std::vector<Candidate>& candidates);
    Result<void> rank(std::vector<Candidate>& candidates, std::span<const Design> known);

    const Setup& m_setup;
    const SearchSpace& m_space;
    const SearchOptions& m_options;
    std::stop_token m_stop;
    Evaluator m_evaluator;
    StepCount m_count;                       // of designs and samples computed
    std::vector<VariableRange> m_variables;  // those with room to change
    std::vector<Design> m_bases;             // one a tube, its variables at an end of their range
    std::mutex m_mutex;
    std::vector<Evaluated> m_seen;  // feasible ones, guarded
    std::array<std::size_t, kConstraints> m_refused{};
};

Design Search::designAt(std::size_t base, const UnitPoint& x) const
{
    Design design = m_bases[base];
    for (std::size_t k = 0; k < m_variables.size(); ++k)
        setValue(design, m_variables[k].variable,
                 m_variables[k].from * (1 - x[k]) + m_variables[k].to * x[k]);
    return design;
}

UnitPoint Search::placeOf(const Design& design) const
{
    UnitPoint x;
    for (const VariableRange& range : m_variables)
        x.push_back((valueOf(design, range.variable) - range.from) / (range.to - range.from));
    return x;
}

// Once it is to stop, nothing is computed any more; nobody looks at what then comes out.
Evaluation Search::evaluated(const Design& design)
{
    if (m_stop.stop_requested())
        return {Constraint::OutsideLimits, {}, {}};
    if (m_space.kept) {
        const double value = valueOf(design, m_space.kept->variable);
        if (!(value >= m_space.kept->from && value <= m_space.kept->to))
            return {Constraint::OutsideLimits, {}, {}};
    }
    const Evaluation evaluation = m_evaluator.evaluate(design);
    m_count.add();
    return evaluation;
}

void Search::scan(std::size_t base)
{
    const Objective look = [&](const UnitPoint& x) -> std::optional<double> {
        const Evaluation evaluation = evaluated(designAt(base, x));
        {
            const std::lock_guard lock(m_mutex);
            if (evaluation.feasible())
                m_seen.push_back({base, x, evaluation});
            else
                ++m_refused.at(static_cast<std::size_t>(*evaluation.violated));
        }
        return m_stop.stop_requested() ? std::nullopt : std::optional(objectiveOf(evaluation));
    };
    if (m_variables.empty())
        look({});
    else
        minimizeGlobal(look, m_variables.size(), m_options.samples * m_variables.size());
}

// The best seen places of every tube that are not close to each other.
std::vector<Evaluated> Search::starts() const
{
    std::vector<Evaluated> sorted = m_seen;
    std::sort(sorted.begin(), sorted.end(), [](const Evaluated& a, const Evaluated& b) {
        return a.evaluation.isBetterThan(b.evaluation) ||
               (!b.evaluation.isBetterThan(a.evaluation) &&
                std::pair(a.base, a.x) < std::pair(b.base, b.x));
    });
    constexpr double kApart = 0.1;
    std::vector<Evaluated> chosen;
    for (const Evaluated& place : sorted) {
        std::size_t ofTube = 0;
        const bool isNew = std::none_of(chosen.begin(), chosen.end(), [&](const Evaluated& other) {
            if (other.base != place.base)
                return false;
            ++ofTube;
            double apart = 0.0;
            for (std::size_t k = 0; k < place.x.size(); ++k)
                apart = std::max(apart, std::abs(place.x[k] - other.x[k]));
            return apart < kApart;
        });
        if (isNew && ofTube < m_options.starts)
            chosen.push_back(place);
    }
    return chosen;
}

// To what a knife and a protractor can follow, on the feasible side.
Design Search::tidied(std::size_t base, const UnitPoint& x)
{
    const Design exact = designAt(base, x);
    Design best = exact;
    Evaluation evaluation{Constraint::OutsideLimits, {}, {}};
    for (unsigned corner = 0; corner < 1U << m_variables.size(); ++corner) {
        Design design = exact;
        for (std::size_t k = 0; k < m_variables.size(); ++k) {
            const double grain = 0.1 * std::pow(10.0, -fieldOf(m_variables[k].variable).decimals);
            const double cell = valueOf(exact, m_variables[k].variable) / grain;
            const double value = grain * (corner >> k & 1U ? std::ceil(cell) : std::floor(cell));
            setValue(design, m_variables[k].variable,
                     std::clamp(value, m_variables[k].from, m_variables[k].to));
        }
        const Evaluation here = evaluated(design);
        if (here.isBetterThan(evaluation)) {
            evaluation = here;
            best = design;
        }
    }
    return best;
}

bool Search::isSamePlace(const Candidate& a, const Candidate& b) const
{
    if (!(stockOf(a.design.tube) == stockOf(b.design.tube)) && m_space.stock.size() > 1)
        return false;
    const UnitPoint x = placeOf(a.design), y = placeOf(b.design);
    for (std::size_t k = 0; k < x.size(); ++k)
        if (std::abs(x[k] - y[k]) > kSamePlace)
            return false;
    return true;
}

Candidate Search::polished(const Evaluated& start)
{
    const Objective look = [&](const UnitPoint& x) -> std::optional<double> {
        const double value = objectiveOf(evaluated(designAt(start.base, x)));
        return m_stop.stop_requested() ? std::nullopt : std::optional(value);
    };
    const UnitPoint x =
        m_variables.empty()
            ? start.x
            : minimizeLocal(look, start.x, kFirstStep, kPolishPerVariable * m_variables.size());
    const Design design = tidied(start.base, x);
    return {design, evaluated(design), {}};
}

// Logarithm of the 90th percentile of some samples; above that of any wobble where too many fail.
//
// The samples lie about this very design: five points of hardness are more of a soft tube than
// of a hard one. Their points are the same each time, so that neighbours compare.
std::optional<double> Search::robustnessOf(const Design& design)
{
    const std::vector<ToleranceSample> builds =
        toleranceSamples(design, Tolerances{}, kRobustSamples, m_options.seed);
    std::vector<double> worst;
    double failed = 0.0;
    for (const ToleranceSample& build : builds) {
        if (m_stop.stop_requested())
            return {};
        const SampleWobble wobble = m_evaluator.wobbleOf(design, build);
        m_count.add();
        if (wobble.violated)
            ++failed;
        else
            worst.push_back(std::max(m_evaluator.overCruise(wobble.full_px).worst_px,
                                     m_evaluator.overCruise(wobble.empty_px).worst_px));
    }
    const auto all = static_cast<double>(builds.size());
    if (failed > (1 - kMostSamples) * all)
        return kOutOfQuestion * (1 + failed / all);
    worst.resize(builds.size(), std::numeric_limits<double>::infinity());
    return logarithm(*quantile(std::move(worst), kMostSamples));
}

Candidate Search::refined(const Evaluated& start)
{
    const Objective look = [&](const UnitPoint& x) {
        return robustnessOf(designAt(start.base, x));
    };
    const UnitPoint x =
        m_variables.empty()
            ? start.x
            : minimizeLocal(look, start.x, 2 * kFirstStep, kRobustPerVariable * m_variables.size());
    const Design design = tidied(start.base, x);
    return {design, evaluated(design), {}};
}

Result<void> Search::addRobustness(std::vector<Candidate>& candidates)
{
    const Evaluator everywhere(m_setup, {}, Throttles::All);
    for (Candidate& candidate : candidates) {
        std::size_t counted = 0;
        const Progress display = [&](std::size_t done, std::size_t) {
            m_count.add(done - std::exchange(counted, done));
        };
        auto robust = robustness(everywhere, candidate.design, m_setup.limits.faint_px,
                                 {.builds = m_options.robustSamples,
                                  .seed = m_options.seed,
                                  .threads = m_options.threads},
                                 m_stop, display);
        if (!robust)
            return tl::unexpected(robust.error());
        candidate.robust = *std::move(robust);
    }
    std::stable_sort(
        candidates.begin(), candidates.end(),
        [](const Candidate& a, const Candidate& b) { return a.robust->isBetterThan(*b.robust); });
    return {};
}

// The most robust first. What was known competes for that place and for no other.
Result<void> Search::rank(std::vector<Candidate>& candidates, std::span<const Design> known)
{
    const std::vector<Candidate> chosen = candidates;
    const auto isChosen = [&](const Design& design) {
        return std::any_of(chosen.begin(), chosen.end(),
                           [&](const Candidate& c) { return c.design == design; });
    };
    for (const Design& design : known)
        if (const Evaluation evaluation = evaluated(design);
            evaluation.feasible() && !isChosen(design))
            candidates.push_back({design, evaluation, {}});
    if (auto done = addRobustness(candidates); !done)
        return done;
    candidates.erase(
        std::remove_if(candidates.begin() + 1, candidates.end(),
                       [&](const Candidate& candidate) { return !isChosen(candidate.design); }),
        candidates.end());
    return {};
}

// Feasible ones, best first, without near copies.
void Search::keepBest(std::vector<Candidate>& candidates, std::size_t most) const
{
    std::erase_if(candidates, [](const Candidate& c) { return !c.evaluation.feasible(); });
    std::stable_sort(candidates.begin(), candidates.end(),
                     [](const Candidate& a, const Candidate& b) {
                         return a.evaluation.isBetterThan(b.evaluation);
                     });
    std::vector<Candidate> kept;
    for (Candidate& candidate : candidates)
        if (kept.size() < most && std::none_of(kept.begin(), kept.end(), [&](const Candidate& k) {
                return isSamePlace(k, candidate);
            }))
            kept.push_back(std::move(candidate));
    candidates = std::move(kept);
}

// Whether a design has the base's tube, but for what is searched of it.
bool Search::isOfTube(const Design& design, std::size_t base) const
{
    Design turned = design;
    for (const VariableRange& range : m_space.variables)
        setValue(turned, range.variable, valueOf(m_bases[base], range.variable));
    return stockOf(turned.tube) == stockOf(m_bases[base].tube);
}

// Places of designs that are worth starting from.
std::vector<Evaluated> Search::placesOf(std::span<const Design> known)
{
    std::vector<Evaluated> places;
    for (const Design& design : known)
        for (std::size_t base = 0; base < m_bases.size(); ++base)
            if (isOfTube(design, base)) {
                UnitPoint x = placeOf(design);
                for (double& coordinate : x)
                    coordinate = std::clamp(coordinate, 0.0, 1.0);
                places.push_back({base, x, evaluated(design)});
            }
    return places;
}

bool Search::forAll(std::size_t count, const std::function<void(std::size_t)>& work)
{
    return inParallel(count, m_options.threads, work, m_stop, {});
}

Result<Found> Search::run(std::span<const Design> known)
{
    const Error stopped = stoppedOnRequest();
    if (!forAll(m_bases.size(), [&](std::size_t base) { scan(base); }))
        return tl::unexpected(stopped);
    std::vector<Evaluated> places = placesOf(known);
    const std::vector<Evaluated> seen = starts();
    places.insert(places.end(), seen.begin(), seen.end());
    if (places.empty())
        return tl::unexpected(nothingFeasible(m_refused));

    std::vector<Candidate> candidates(places.size());
    if (!forAll(places.size(), [&](std::size_t i) { candidates[i] = polished(places[i]); }))
        return tl::unexpected(stopped);
    for (const Design& design : known)
        candidates.push_back({design, evaluated(design), {}});
    for (const Evaluated& place : places) {
        const Design design = tidied(place.base, place.x);
        candidates.push_back({design, evaluated(design), {}});
    }
    keepBest(candidates, kMostCandidates / 2);
    if (candidates.empty())  // only what was known, and that does not hold either
        return tl::unexpected(nothingFeasible(m_refused));
    Found found{.best = candidates.front(), .candidates = {}, .evaluated = 0};

    if (m_options.robustSamples > 0) {
        std::stable_sort(places.begin(), places.end(), [](const Evaluated& a, const Evaluated& b) {
            return a.evaluation.isBetterThan(b.evaluation);
        });
        places.resize(std::min(places.size(), m_options.starts));
        std::vector<Candidate> robust(places.size());
        if (!forAll(places.size(), [&](std::size_t i) { robust[i] = refined(places[i]); }))
            return tl::unexpected(stopped);
        keepBest(robust, kMostCandidates / 2);
        std::copy_if(robust.begin(), robust.end(), std::back_inserter(candidates),
                     [&](const Candidate& s) {
                         return std::none_of(candidates.begin(), candidates.end(),
                                             [&](const Candidate& c) { return isSamePlace(c, s); });
                     });
        if (const auto done = rank(candidates, known); !done)
            return tl::unexpected(done.error());
    }
    const auto best = std::find_if(candidates.begin(), candidates.end(), [&](const Candidate& c) {
        return c.design == found.best.design;
    });
    found.best = *best;
    found.candidates = std::move(candidates);
    found.evaluated = m_count.done();
    return found;
}

}  // namespace

Result<Found> findBest(const Setup& setup, const SearchSpace& space, const SearchOptions& options,
                       std::span<const Design> known, const std::stop_token& stop,
                       const Progress& progress)
{
    if (auto bad = fault(setup, space))
        return tl::unexpected<Error>(*std::move(bad));
    return Search(setup, space, options, stop, progress).run(known);
}

}  // namespace stillbay
