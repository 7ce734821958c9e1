// SPDX-License-Identifier: MIT
#include "core/calibrate/film_readout.h"

#include "core/assess/texts.h"
#include "core/base/units.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

namespace stillbay {
namespace {

constexpr double kMotorsApart = 0.01;  // of the speed: the film's line and the sound's may differ
constexpr double kLineSpreads = 4;     // a line is sought within so many of its own
constexpr double kLeastSought_hz = 0.3;
constexpr double kMostSought = 0.2;  // of the frame rate
constexpr double kOtherSpreads = 3, kOtherShare = 0.03;

// A line of the film and what it is taken for.
struct KnownLine {
    std::size_t line = 0;
    double frequency_hz = 0.0;
    int order = 1;
    double speed = 0.0;
};

std::vector<KnownLine> linesOf(const FilmMatch& match)
{
    std::vector<KnownLine> known;
    for (const MatchedLine& matched : match.lines)
        if (matched.order)
            known.push_back({matched.line, matched.frequency_hz, *matched.order, match.speed});
    return known;
}

// The one alias of each line that is order 1 or the blade pass of the speed that is heard; a line
// that has two such is none.
std::vector<KnownLine> aliasesHeard(const Setup& setup, const std::vector<FilmLine>& lines,
                                    double frameRate_hz, const SpeedOfRotors& heard)
{
    std::vector<KnownLine> known;
    const double reach = heard.tolerance / heard.speed + kMotorsApart;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        std::vector<KnownLine> meant;
        for (const int order : {1, setup.drive.propeller.blades}) {
            const double middle_hz = order * heard.speed;
            const double from = middle_hz * (1 - reach), to = middle_hz * (1 + reach);
            for (const double sign : {1.0, -1.0}) {
                const double base = sign * lines[i].frequency_hz;
                for (double f_hz = base + frameRate_hz * std::ceil((from - base) / frameRate_hz);
                     f_hz <= to; f_hz += frameRate_hz)
                    meant.push_back({i, f_hz, order, f_hz / order});
            }
        }
        if (meant.size() == 1)
            known.push_back(meant.front());
    }
    return known;
}

// What may tell a readout, the strongest line first.
struct Witnesses {
    std::vector<KnownLine> lines;
    bool areSure = false;  // of their orders; else two have to agree
};

Witnesses witnesses(const Setup& setup, double frameRate_hz, const CraftFilm& film,
                    const FilmMatchOptions& options)
{
    if (film.match && isSpeedSettled(*film.match) &&
        (film.match->isSpeedKnown || film.match->mark.quality == Quality::Good))
        return {linesOf(*film.match), true};
    if (options.heard)
        return {aliasesHeard(setup, film.reading.lines, frameRate_hz, *options.heard)};
    return {};
}

// Whether a line of another order told the same readout before.
bool isConfirmed(const ReadoutOfFilm& found, const std::vector<ReadoutOfFilm>& before)
{
    return std::any_of(before.begin(), before.end(), [&](const ReadoutOfFilm& other) {
        return other.order != found.order &&
               std::abs(other.estimate.readout_s - found.estimate.readout_s) <
                   kOtherSpreads * std::hypot(other.estimate.spread_s, found.estimate.spread_s);
    });
}

}  // namespace

Result<std::optional<ReadoutOfFilm>> readoutOfFilm(const Setup& setup, const ClipFacts& facts,
                                                   const CraftFilm& film,
                                                   const FilmMatchOptions& options,
                                                   const ReadoutOfClip& estimate,
                                                   const std::stop_token& stop)
{
    std::size_t asked = 0;
    std::vector<ReadoutOfFilm> before;
    const Witnesses all = witnesses(setup, facts.frameRate_hz, film, options);
    for (const KnownLine& known : all.lines) {
        const FilmLine& line = film.reading.lines[known.line];
        const double tolerance_hz =
            std::max(kLeastSought_hz, kLineSpreads * line.uncertainty_hz + line.wander_hz);
        if (tolerance_hz > kMostSought * facts.frameRate_hz)
            continue;
        if (asked++ == kMostLinesAsked)
            break;
        const auto readout = estimate(known.frequency_hz, tolerance_hz);
        if (stop.stop_requested())
            return tl::unexpected(stoppedOnRequest());
        if (!readout)
            continue;
        const ReadoutOfFilm found{*readout, known.order, known.speed};
        if (all.areSure || isConfirmed(found, before))
            return std::optional(found);
        before.push_back(found);
    }
    return std::optional<ReadoutOfFilm>();
}

std::optional<Warning> otherReadout(const Setup& setup, const ReadoutOfFilm& found, double used_s)
{
    const auto& [readout_s, spread_s, frequency_hz] = found.estimate;
    const double off = std::abs(readout_s - used_s);
    if (off <= kOtherSpreads * spread_s || off <= kOtherShare * used_s)
        return {};
    return Warning{
        "film_readout",
        phrase("a readout of %1\u00A0ms was used; the film's own is %2 ± %3\u00A0ms, where its "
               "line at %4\u00A0Hz is %5 at %6 rpm",
               rounded(used_s / unit::ms, 4), rounded(readout_s / unit::ms, 4),
               rounded(spread_s / unit::ms, 2), fixed(frequency_hz, 1),
               orderText(found.order, setup.drive.propeller.blades),
               fixed(found.speed / unit::rpm, 0))};
}

}  // namespace stillbay
