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

double halfFrame_s(const FilmedPart& a, const FilmedPart& b)
{
    return std::min(a.frame_s, b.frame_s) / 2;
}

bool haveSameFrames(const FilmedPart& a, const FilmedPart& b)
{
    const double half_s = halfFrame_s(a, b);
    return std::abs(a.first_s - b.first_s) <= half_s && std::abs(a.last_s - b.last_s) <= half_s;
}

bool shareMostOfOne(const FilmedPart& a, const FilmedPart& b)
{
    const double shared_s = std::min(a.last_s, b.last_s) - std::max(a.first_s, b.first_s);
    const double shorter_s = std::min(a.last_s - a.first_s, b.last_s - b.first_s);
    return shared_s > shorter_s / 2 + halfFrame_s(a, b);
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
    const double first_s = facts.frameTime_s.front(), last_s = facts.frameTime_s.back();
    const auto steps = static_cast<double>(facts.frameTime_s.size() - 1);
    return {file, first_s, last_s, steps > 0 ? (last_s - first_s) / steps : 0.0, std::move(name)};
}

std::optional<Phrase> whyRepeated(const FilmedPart& film, std::span<const FilmedPart> counted)
{
    const auto found = [&](bool (*isRepeated)(const FilmedPart&, const FilmedPart&)) {
        return std::find_if(counted.begin(), counted.end(), [&](const FilmedPart& other) {
            return isRepeated(other, film) && areOneFile(other.file, film.file);
        });
    };
    if (const auto same = found(haveSameFrames); same != counted.end())
        return phrase("the same part of the same file was named before, as %1", same->name);
    if (const auto other = found(shareMostOfOne); other != counted.end())
        return phrase(
            "the same file was named before, as %1, and the two parts share more than half of the "
            "shorter one",
            other->name);
    return {};
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
