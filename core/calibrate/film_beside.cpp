// SPDX-License-Identifier: MIT
#include "core/calibrate/film_beside.h"

#include "core/base/units.h"

#include <algorithm>
#include <cmath>
#include <system_error>
#include <utility>

namespace stillbay {
namespace {

bool areOneFile(const std::filesystem::path& a, const std::filesystem::path& b)
{
    std::error_code fault;
    return a == b || std::filesystem::equivalent(a, b, fault);
}

}  // namespace

Result<FilmBeside> filmBeside(const Setup& setup, const AskedClip& clip, const FilmReading& lines,
                              const FilmReadingOptions& options, const FilmMatchOptions& known,
                              const std::stop_token& stop)
{
    auto film = filmOfCraft(setup, clip.facts, lines, known);
    if (!film)
        return tl::unexpected(film.error());
    const auto readout = readoutOfFilm(setup, clip.facts, *film, known, clip.readout, stop);
    if (!readout)
        return tl::unexpected(readout.error());
    return FilmBeside{*std::move(film), *readout,
                      *readout ? otherReadout(setup, **readout, options.readout_s) : std::nullopt};
}

Result<FilmBeside> withOwnReadout(const Setup& setup, const AskedClip& clip, FilmBeside film,
                                  const FilmReadingOptions& options, const FilmMatchOptions& known,
                                  const std::stop_token& stop)
{
    if (!film.ofReadout)
        return film;
    const Warning& other = *film.ofReadout;
    const Warning readAgain{other.code, phrase("%1: read once more with its own", other.text)};
    FilmReadingOptions again = options;
    again.readout_s = film.readout->estimate.readout_s;
    Setup craft = setup;
    craft.camera.readout_ms = again.readout_s / unit::ms;
    const auto reading = clip.lines(again);
    if (!reading)
        return tl::unexpected(reading.error());
    auto own = filmBeside(craft, clip, *reading, again, known, stop);
    if (own)
        own->film.warnings.insert(own->film.warnings.begin(), readAgain);
    return own;
}

std::optional<Phrase> whyLeftOut(const FilmBeside& film)
{
    const auto& match = film.film.match;
    if (film.film.reading.isStabilised)
        return phrase("the film was stabilised");
    if (!match)
        return film.film.texts.front();
    if (!isSpeedSettled(*match))
        return match->mark.reason;
    if (!match->predicted_px)
        return phrase("this craft's full pack does not reach its speed");
    if (film.ofReadout)
        return phrase("no readout puts its lines where its sound or throttle has them");
    const bool isOtherRate =
        std::any_of(film.film.warnings.begin(), film.film.warnings.end(),
                    [](const Warning& warning) { return warning.code == "film_other_rate"; });
    if (isOtherRate && !film.readout)
        return phrase(
            "at another frame rate than the camera's its readout is not known, and it "
            "does not tell it");
    return {};
}

FilmedPart filmedPart(const std::filesystem::path& file, const ClipFacts& facts, std::string name)
{
    return {file, facts.frameTime_s.front(), facts.frameTime_s.back(), std::move(name)};
}

std::optional<Phrase> whyRepeated(const FilmedPart& film, std::span<const FilmedPart> counted)
{
    const auto same = std::find_if(counted.begin(), counted.end(), [&](const FilmedPart& other) {
        return other.first_s == film.first_s && other.last_s == film.last_s &&
               areOneFile(other.file, film.file);
    });
    if (same == counted.end())
        return {};
    return phrase("the same part of the same file was named before, as %1", same->name);
}

std::optional<Correction> readoutCorrection(const Setup& setup, const FilmBeside& film)
{
    const bool isOtherMode =
        std::any_of(film.film.warnings.begin(), film.film.warnings.end(),
                    [](const Warning& each) { return each.code.starts_with("film_other_"); });
    if (!film.ofReadout || isOtherMode)
        return {};
    const auto& [readout_s, spread_s, frequency_hz] = film.readout->estimate;
    const double before_ms = setup.camera.readout_ms, after_ms = readout_s / unit::ms;
    Correction correction;
    correction.measurement = phrase("film of a line at %1 Hz", fixed(frequency_hz, 1));
    correction.values.push_back({"camera.readout_ms", phrase("readout of the camera"), "ms",
                                 before_ms, after_ms, spread_s / readout_s});
    correction.residual = spread_s / readout_s;
    correction.residualBefore = std::abs(after_ms - before_ms) / after_ms;
    correction.mark = {Quality::Fair, phrase("one line of one film tells it")};
    return correction;
}

std::optional<FilmMatch> matchForUnbalance(const FilmBeside& film)
{
    const auto& match = film.film.match;
    const bool isTaken = match && (film.film.reading.isStabilised || !isSpeedSettled(*match) ||
                                   !match->predicted_px || !whyLeftOut(film));
    return isTaken ? match : std::nullopt;
}

}  // namespace stillbay
