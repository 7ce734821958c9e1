// SPDX-License-Identifier: MIT
#include "core/calibrate/craft_film.h"

#include "core/calibrate/film_texts.h"
#include "core/craft/craft.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace stillbay {
namespace {

constexpr double kSameRate = 0.01;       // of the frame rate
constexpr double kSoughtStep_hz = 50.0;  // a craft that hardly changes leaves lines as they are

// Where the film cannot have been taken as the setup says.
std::vector<Warning> otherModeWarnings(const ClipFacts& facts, const Camera& camera)
{
    std::vector<Warning> warnings;
    if (facts.width != static_cast<unsigned>(camera.width_px))
        warnings.push_back(
            {"film_other_size",
             phrase("the film is %1 pixels wide, the camera of the setup %2: the prediction is "
                    "scaled, and the readout may be another",
                    whole(facts.width), whole(static_cast<std::size_t>(camera.width_px)))});
    else if (facts.height != static_cast<unsigned>(camera.height_px))
        warnings.push_back(
            {"film_other_height",
             phrase(
                 "the film has %1 rows, the camera of the setup %2: where rows were cut off, its "
                 "readout is shorter",
                 whole(facts.height), whole(static_cast<std::size_t>(camera.height_px)))});
    if (std::abs(facts.frameRate_hz - camera.frame_rate_hz) > kSameRate * camera.frame_rate_hz)
        warnings.push_back(
            {"film_other_rate",
             phrase("the film has %1 frames a second, the camera of the setup %2: its readout may "
                    "be another",
                    rounded(facts.frameRate_hz, 4), rounded(camera.frame_rate_hz, 4))});
    return warnings;
}

// The same in pixels of a camera of which one is so many of the film's.
FilmReading inPixelsOf(FilmReading reading, double filmedPx)
{
    for (FilmLine& line : reading.lines)
        for (double* const pixels : {&line.across_px, &line.up_px, &line.wobble_px,
                                     &line.wobbleUncertainty_px, &line.frameShake_px})
            *pixels /= filmedPx;
    for (double* const pixels : {&reading.wobble_px, &reading.frameShake_px, &reading.floor_px})
        *pixels /= filmedPx;
    return reading;
}

}  // namespace

Result<CraftFilm> filmOfCraft(const Setup& setup, const ClipFacts& facts,
                              const FilmReading& reading, const FilmMatchOptions& options)
{
    CraftFilm film;
    film.filmedPx = static_cast<double>(facts.width) / setup.camera.width_px;
    film.reading = inPixelsOf(reading, film.filmedPx);
    auto match = matchFilm(setup, film.reading, options);
    film.warnings = reading.warnings;
    if (match) {
        film.texts = filmTexts(setup, film.reading, *match);
        film.warnings.insert(film.warnings.end(), match->warnings.begin(), match->warnings.end());
        film.match = *std::move(match);
    } else if (match.error().code == Errc::NoAnswer) {
        film.texts = {match.error().what};
    } else {
        return tl::unexpected(match.error());
    }
    for (Warning& warning : otherModeWarnings(facts, setup.camera))
        film.warnings.push_back(std::move(warning));
    return film;
}

double soughtUpTo(const Setup& setup, const FilmMatchOptions& options)
{
    constexpr double kBeyond = 1.0 + 2 * kOrderWidth;  // motors differ, and so may the prediction
    const ExcitedAirframe craft = makeExcitedAirframe(setup);
    const double speed =
        options.heard ? options.heard->speed + options.heard->tolerance
                      : rotorSpeed(craft.drive, options.throttle.value_or(1.0), craft.fullVoltage);
    const double order = craft.blades * std::max(1.0, static_cast<double>(craft.bladePass.size()));
    const double wholeSteps_hz =
        kSoughtStep_hz * std::ceil(kBeyond * order * speed / kSoughtStep_hz);
    return std::clamp(wholeSteps_hz, FilmReadingOptions().highest_hz, kFarthestSought_hz);
}

}  // namespace stillbay
