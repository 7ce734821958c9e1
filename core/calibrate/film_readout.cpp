// SPDX-License-Identifier: MIT
#include "core/calibrate/film_readout.h"

#include "core/assess/texts.h"
#include "core/base/units.h"

#include <algorithm>
#include <cmath>

namespace stillbay {
namespace {

constexpr double kHighestAlias_hz = 400;
constexpr std::size_t kMostLinesAsked = 3;
constexpr double kLineSpreads = 4;  // a line is sought within so many of its own
constexpr double kLeastSought_hz = 0.3;
constexpr double kMostSought = 0.2;  // of the frame rate
constexpr double kOtherSpreads = 3, kOtherShare = 0.03;

// The reading with every alias of each line that the frames allow, whatever the rows said.
FilmReading withAllAliases(FilmReading reading, double frameRate_hz)
{
    for (FilmLine& line : reading.lines) {
        line.aliases_hz.clear();
        const double base =
            line.frequency_hz - frameRate_hz * std::round(line.frequency_hz / frameRate_hz);
        for (double k = 0; (k - 1) * frameRate_hz < kHighestAlias_hz; ++k)
            for (const double f_hz : {k * frameRate_hz + base, k * frameRate_hz - base})
                if (f_hz > 0 && f_hz <= kHighestAlias_hz && f_hz != line.frequency_hz)
                    line.aliases_hz.push_back(f_hz);
    }
    return reading;
}

// The match whose lines tell a readout; none: no speed is known well enough.
Result<std::optional<FilmMatch>> settledMatch(const Setup& setup, const ClipShifts& clip,
                                              const CraftFilm& film,
                                              const FilmMatchOptions& options)
{
    if (film.match && isSpeedSettled(*film.match) &&
        (film.match->isSpeedKnown || film.match->mark.quality == Quality::Good))
        return film.match;
    if (!options.throttle && !options.heard)
        return std::optional<FilmMatch>();
    auto match = matchFilm(setup, withAllAliases(film.reading, clip.facts.frameRate_hz), options);
    if (!match && match.error().code != Errc::NoAnswer)
        return tl::unexpected(match.error());
    if (!match || match->mark.quality == Quality::Poor || match->otherSpeed)
        return std::optional<FilmMatch>();
    return std::optional(*std::move(match));
}

}  // namespace

Result<std::optional<ReadoutOfFilm>> readoutOfFilm(const Setup& setup, const ClipShifts& clip,
                                                   const CraftFilm& film,
                                                   const FilmMatchOptions& options,
                                                   const std::stop_token& stop,
                                                   const Progress& progress)
{
    const auto match = settledMatch(setup, clip, film, options);
    if (!match)
        return tl::unexpected(match.error());
    if (!*match)
        return std::optional<ReadoutOfFilm>();
    std::size_t asked = 0;
    for (const MatchedLine& matched : (*match)->lines) {  // the strongest first
        const FilmLine& line = film.reading.lines[matched.line];
        const double tolerance_hz =
            std::max(kLeastSought_hz, kLineSpreads * line.uncertainty_hz + line.wander_hz);
        if (!matched.order || tolerance_hz > kMostSought * clip.facts.frameRate_hz)
            continue;
        if (asked++ == kMostLinesAsked)
            break;
        auto estimate =
            estimateReadout(clip.shifts, matched.frequency_hz, tolerance_hz, stop, progress);
        if (estimate)
            return std::optional(
                ReadoutOfFilm{*std::move(estimate), *matched.order, (*match)->speed});
        if (stop.stop_requested())
            return tl::unexpected(estimate.error());
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
        phrase("A readout of %1\u00A0ms was used; the film's own is %2 ± %3\u00A0ms, where its "
               "line at %4\u00A0Hz is %5 at %6 rpm.",
               rounded(used_s / unit::ms, 4), rounded(readout_s / unit::ms, 4),
               rounded(spread_s / unit::ms, 2), fixed(frequency_hz, 1),
               orderText(found.order, setup.drive.propeller.blades),
               fixed(found.speed / unit::rpm, 0))};
}

}  // namespace stillbay
