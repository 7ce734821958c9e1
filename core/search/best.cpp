// SPDX-License-Identifier: MIT
#include "core/search/best.h"

#include "core/search/minimise.h"
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
constexpr double kFirstStep = 0.05;      // of a knob's range
constexpr double kSamePlace = 0.03;      // of a knob's range: nearer candidates are one
constexpr std::size_t kPolishPerKnob = 150;
constexpr std::size_t kSturdyPerKnob = 40;
constexpr std::size_t kSturdyBuilds = 48;  // a coarse 90th percentile while looking
constexpr std::size_t kMostCandidates = 6;

/// A place that was judged.
struct Judged {
    std::size_t base = 0;  ///< which tube
    UnitPoint x;
    Judgement verdict;
};

// Smooths decades: the search compares ratios, not differences.
double logarithm(double wobble_px)
{
    return std::log(wobble_px + 1e-9);
}

double objectiveOf(const Judgement& verdict)
{
    return verdict.feasible() ? logarithm(verdict.worst_px()) : kOutOfQuestion;
}

std::optional<Error> fault(const Setup& setup, const SearchSpace& space)
{
    if (space.knobs.empty() && space.stock.empty())
        return Error{Errc::BadInput, phrase("the search has nothing to choose"), ""};
    for (std::size_t i = 0; i < space.knobs.size(); ++i) {
        const KnobRange& range = space.knobs[i];
        const KnobField field = fieldOf(range.knob);
        if (!canTurn(setup.mounts, range.knob))
            return Error{
                Errc::BadInput,
                phrase("%1 is decided by the holes of a drilled craft", phrase(field.label)),
                field.key};
        if (!(range.from <= range.to))
            return Error{Errc::BadInput, phrase("%1 needs a range that rises", phrase(field.label)),
                         field.key};
        for (std::size_t k = 0; k < i; ++k)
            if (space.knobs[k].knob == range.knob)
                return Error{Errc::BadInput, phrase("%1 is there twice", phrase(field.label)),
                             field.key};
    }
    for (const StockTube& stock : space.stock) {
        Design design = designOf(setup);
        takeTube(design, stock);
        if (const auto valid = validate(design.tube, setup.mounts); !valid)
            return valid.error();
    }
    return {};
}

Error nothingFeasible(const std::array<std::size_t, kObjections>& refused)
{
    const auto commonest = std::max_element(refused.begin(), refused.end());
    const auto objection = static_cast<Objection>(commonest - refused.begin());
    return {
        Errc::NoAnswer,
        phrase("no design within these limits holds; most often %1", objectionInWords(objection)),
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
          m_judge(setup),
          m_count(expected(), progress)
    {
        for (const KnobRange& range : space.knobs)
            if (range.from < range.to)
                m_knobs.push_back(range);
        for (const StockTube& stock : tubes()) {
            Design base = designOf(setup);
            takeTube(base, stock);
            for (const KnobRange& range : space.knobs)
                turn(base, range.knob, range.from);
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
        const std::size_t d = m_space.knobs.size(),
                          tubes = std::max<std::size_t>(m_space.stock.size(), 1);
        const std::size_t corners = std::size_t{1} << d;  // to tidy one place
        const std::size_t polish = m_options.starts * tubes * (kPolishPerKnob * d + 2 * corners);
        const std::size_t sturdy =
            m_options.robustBuilds == 0
                ? 0
                : m_options.starts * (kSturdyPerKnob * d * kSturdyBuilds + corners) +
                      kMostCandidates * m_options.robustBuilds;
        return tubes * std::max<std::size_t>(m_options.samples * d, 1) + polish + sturdy;
    }

    Design designAt(std::size_t base, const UnitPoint& x) const;
    UnitPoint placeOf(const Design& design) const;
    Judgement judged(const Design& design);
    Design tidied(std::size_t base, const UnitPoint& x);
    bool isSamePlace(const Candidate& a, const Candidate& b) const;
    void keepBest(std::vector<Candidate>& candidates, std::size_t most) const;
    std::vector<Judged> placesOf(std::span<const Design> known);
    bool forAll(std::size_t count, const std::function<void(std::size_t)>& work);

    void scan(std::size_t base);
    std::vector<Judged> starts() const;
    Candidate polished(const Judged& start);
    Candidate sturdied(const Judged& start);
    std::optional<double> sturdiness(const Design& design);
    bool isOfTube(const Design& design, std::size_t base) const;
    Result<void> addRobustness(std::vector<Candidate>& candidates);
    Result<void> rank(std::vector<Candidate>& candidates, std::span<const Design> known);

    const Setup& m_setup;
    const SearchSpace& m_space;
    const SearchOptions& m_options;
    std::stop_token m_stop;
    Judge m_judge;
    StepCount m_count;               // of designs and builds computed
    std::vector<KnobRange> m_knobs;  // those with room to turn
    std::vector<Design> m_bases;     // one a tube, its knobs at an end of their range
    std::mutex m_mutex;
    std::vector<Judged> m_seen;  // feasible ones, guarded
    std::array<std::size_t, kObjections> m_refused{};
};

Design Search::designAt(std::size_t base, const UnitPoint& x) const
{
    Design design = m_bases[base];
    for (std::size_t k = 0; k < m_knobs.size(); ++k)
        turn(design, m_knobs[k].knob, m_knobs[k].from * (1 - x[k]) + m_knobs[k].to * x[k]);
    return design;
}

UnitPoint Search::placeOf(const Design& design) const
{
    UnitPoint x;
    for (const KnobRange& range : m_knobs)
        x.push_back((valueOf(design, range.knob) - range.from) / (range.to - range.from));
    return x;
}

// Once it is to stop, nothing is computed any more; nobody looks at what then comes out.
Judgement Search::judged(const Design& design)
{
    if (m_stop.stop_requested())
        return {Objection::OutsideLimits, {}, {}};
    if (m_space.kept) {
        const double value = valueOf(design, m_space.kept->knob);
        if (!(value >= m_space.kept->from && value <= m_space.kept->to))
            return {Objection::OutsideLimits, {}, {}};
    }
    const Judgement verdict = m_judge.judge(design);
    m_count.add();
    return verdict;
}

void Search::scan(std::size_t base)
{
    const Objective look = [&](const UnitPoint& x) -> std::optional<double> {
        const Judgement verdict = judged(designAt(base, x));
        {
            const std::lock_guard lock(m_mutex);
            if (verdict.feasible())
                m_seen.push_back({base, x, verdict});
            else
                ++m_refused.at(static_cast<std::size_t>(*verdict.objection));
        }
        return m_stop.stop_requested() ? std::nullopt : std::optional(objectiveOf(verdict));
    };
    if (m_knobs.empty())
        look({});
    else
        scanCube(look, m_knobs.size(), m_options.samples * m_knobs.size());
}

// The best seen places of every tube that are not close to each other.
std::vector<Judged> Search::starts() const
{
    std::vector<Judged> sorted = m_seen;
    std::sort(sorted.begin(), sorted.end(), [](const Judged& a, const Judged& b) {
        return a.verdict.isBetterThan(b.verdict) ||
               (!b.verdict.isBetterThan(a.verdict) &&
                std::pair(a.base, a.x) < std::pair(b.base, b.x));
    });
    constexpr double kApart = 0.1;
    std::vector<Judged> chosen;
    for (const Judged& place : sorted) {
        std::size_t ofTube = 0;
        const bool isNew = std::none_of(chosen.begin(), chosen.end(), [&](const Judged& other) {
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
    Judgement verdict{Objection::OutsideLimits, {}, {}};
    for (unsigned corner = 0; corner < 1U << m_knobs.size(); ++corner) {
        Design design = exact;
        for (std::size_t k = 0; k < m_knobs.size(); ++k) {
            const double grain = 0.1 * std::pow(10.0, -fieldOf(m_knobs[k].knob).decimals);
            const double cell = valueOf(exact, m_knobs[k].knob) / grain;
            const double value = grain * (corner >> k & 1U ? std::ceil(cell) : std::floor(cell));
            turn(design, m_knobs[k].knob, std::clamp(value, m_knobs[k].from, m_knobs[k].to));
        }
        const Judgement here = judged(design);
        if (here.isBetterThan(verdict)) {
            verdict = here;
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

Candidate Search::polished(const Judged& start)
{
    const Objective look = [&](const UnitPoint& x) -> std::optional<double> {
        const double value = objectiveOf(judged(designAt(start.base, x)));
        return m_stop.stop_requested() ? std::nullopt : std::optional(value);
    };
    const UnitPoint x =
        m_knobs.empty() ? start.x
                        : goDownhill(look, start.x, kFirstStep, kPolishPerKnob * m_knobs.size());
    const Design design = tidied(start.base, x);
    return {design, judged(design), {}};
}

// Logarithm of the 90th percentile of some builds; above that of any wobble where too many fail.
//
// The builds scatter about this very design: five points of hardness are more of a soft tube than
// of a hard one. Their points are the same each time, so that neighbours compare.
std::optional<double> Search::sturdiness(const Design& design)
{
    const std::vector<Build> builds =
        scatteredBuilds(design, Spread{}, kSturdyBuilds, m_options.seed);
    std::vector<double> worst;
    double failed = 0.0;
    for (const Build& build : builds) {
        if (m_stop.stop_requested())
            return {};
        const BuildWobble wobble = m_judge.wobbleOf(design, build);
        m_count.add();
        if (wobble.objection)
            ++failed;
        else
            worst.push_back(std::max(m_judge.overCruise(wobble.full_px).worst_px,
                                     m_judge.overCruise(wobble.empty_px).worst_px));
    }
    const auto all = static_cast<double>(builds.size());
    if (failed > (1 - kMostBuilds) * all)
        return kOutOfQuestion * (1 + failed / all);
    worst.resize(builds.size(), std::numeric_limits<double>::infinity());
    return logarithm(*quantile(std::move(worst), kMostBuilds));
}

Candidate Search::sturdied(const Judged& start)
{
    const Objective look = [&](const UnitPoint& x) {
        return sturdiness(designAt(start.base, x));
    };
    const UnitPoint x = m_knobs.empty() ? start.x
                                        : goDownhill(look, start.x, 2 * kFirstStep,
                                                     kSturdyPerKnob * m_knobs.size());
    const Design design = tidied(start.base, x);
    return {design, judged(design), {}};
}

Result<void> Search::addRobustness(std::vector<Candidate>& candidates)
{
    const Judge everywhere(m_setup, {}, Throttles::All);
    for (Candidate& candidate : candidates) {
        std::size_t counted = 0;
        const Progress tell = [&](std::size_t done, std::size_t) {
            m_count.add(done - std::exchange(counted, done));
        };
        auto robust = robustness(everywhere, candidate.design, m_setup.limits.faint_px,
                                 {.builds = m_options.robustBuilds,
                                  .seed = m_options.seed,
                                  .threads = m_options.threads},
                                 m_stop, tell);
        if (!robust)
            return tl::unexpected(robust.error());
        candidate.robust = *std::move(robust);
    }
    std::stable_sort(
        candidates.begin(), candidates.end(),
        [](const Candidate& a, const Candidate& b) { return a.robust->isBetterThan(*b.robust); });
    return {};
}

// The sturdiest first. What was known competes for that place and for no other.
Result<void> Search::rank(std::vector<Candidate>& candidates, std::span<const Design> known)
{
    const std::vector<Candidate> chosen = candidates;
    const auto isChosen = [&](const Design& design) {
        return std::any_of(chosen.begin(), chosen.end(),
                           [&](const Candidate& c) { return c.design == design; });
    };
    for (const Design& design : known)
        if (const Judgement verdict = judged(design); verdict.feasible() && !isChosen(design))
            candidates.push_back({design, verdict, {}});
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
    std::erase_if(candidates, [](const Candidate& c) { return !c.verdict.feasible(); });
    std::stable_sort(
        candidates.begin(), candidates.end(),
        [](const Candidate& a, const Candidate& b) { return a.verdict.isBetterThan(b.verdict); });
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
    for (const KnobRange& range : m_space.knobs)
        turn(turned, range.knob, valueOf(m_bases[base], range.knob));
    return stockOf(turned.tube) == stockOf(m_bases[base].tube);
}

// Places of designs that are worth starting from.
std::vector<Judged> Search::placesOf(std::span<const Design> known)
{
    std::vector<Judged> places;
    for (const Design& design : known)
        for (std::size_t base = 0; base < m_bases.size(); ++base)
            if (isOfTube(design, base)) {
                UnitPoint x = placeOf(design);
                for (double& coordinate : x)
                    coordinate = std::clamp(coordinate, 0.0, 1.0);
                places.push_back({base, x, judged(design)});
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
    std::vector<Judged> places = placesOf(known);
    const std::vector<Judged> seen = starts();
    places.insert(places.end(), seen.begin(), seen.end());
    if (places.empty())
        return tl::unexpected(nothingFeasible(m_refused));

    std::vector<Candidate> candidates(places.size());
    if (!forAll(places.size(), [&](std::size_t i) { candidates[i] = polished(places[i]); }))
        return tl::unexpected(stopped);
    for (const Design& design : known)
        candidates.push_back({design, judged(design), {}});
    for (const Judged& place : places) {
        const Design design = tidied(place.base, place.x);
        candidates.push_back({design, judged(design), {}});
    }
    keepBest(candidates, kMostCandidates / 2);
    if (candidates.empty())  // only what was known, and that does not hold either
        return tl::unexpected(nothingFeasible(m_refused));
    Found found{.best = candidates.front(), .candidates = {}, .judged = 0};

    if (m_options.robustBuilds > 0) {
        std::stable_sort(places.begin(), places.end(), [](const Judged& a, const Judged& b) {
            return a.verdict.isBetterThan(b.verdict);
        });
        places.resize(std::min(places.size(), m_options.starts));
        std::vector<Candidate> sturdy(places.size());
        if (!forAll(places.size(), [&](std::size_t i) { sturdy[i] = sturdied(places[i]); }))
            return tl::unexpected(stopped);
        keepBest(sturdy, kMostCandidates / 2);
        std::copy_if(sturdy.begin(), sturdy.end(), std::back_inserter(candidates),
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
    found.judged = m_count.done();
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
