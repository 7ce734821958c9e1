// SPDX-License-Identifier: MIT
#include "app/commands/read_film.h"

#include "app/commands/terminal_progress.h"
#include "core/calibrate/film_sound.h"
#include "core/clip/sound_track.h"

#include <utility>

namespace stillbay {
namespace {

// By the sound of the part, where there is one; what it does not tell is a warning.
Result<HeardOnFilm> hear(const FilmAsked& asked, const ClipFacts& facts,
                         const std::stop_token& stop)
{
    if (!facts.hasSound || !asked.setup)
        return HeardOnFilm{};
    return heardOnFilm(*asked.setup, readSoundTrack(asked.file, facts, asked.part, stop), stop);
}

FilmMatchOptions knownOf(const FilmAsked& asked, const std::optional<SpeedOfRotors>& heard)
{
    return {asked.throttle, heard};
}

FilmReadingOptions optionsOf(const FilmAsked& asked, const std::optional<SpeedOfRotors>& heard)
{
    FilmReadingOptions options = asked.options;
    if (asked.setup)
        options.highest_hz = soughtUpTo(*asked.setup, knownOf(asked, heard));
    return options;
}

// What it is asked for is computed, and how far that is, told.
AskedClip askedClip(const ClipShifts& clip, const std::stop_token& stop, TerminalProgress& terminal)
{
    return {clip.facts,
            [&](const FilmReadingOptions& options) {
                return readLines(clip, options, stop, terminal.of("seeking lines"));
            },
            [&](double about_hz, double tolerance_hz) {
                return estimateReadout(clip.shifts, about_hz, tolerance_hz, stop,
                                       terminal.of("seeking the readout"));
            }};
}

tl::unexpected<RecordingFault> ofFile(const FilmAsked& asked, const Error& error)
{
    return tl::unexpected(RecordingFault{error, asked.file});
}

// The craft was refused, or it was stopped.
tl::unexpected<RecordingFault> notBeside(const FilmAsked& asked, const Error& error,
                                         const std::stop_token& stop)
{
    return tl::unexpected(
        RecordingFault{error, stop.stop_requested() ? asked.file : asked.setupFile});
}

}  // namespace

std::vector<Warning> warningsOf(const FilmRead& film)
{
    std::vector<Warning> all = film.clip.warnings;
    if (film.ofSound)
        all.push_back(*film.ofSound);
    const auto& lines = film.beside ? film.beside->film.warnings : film.clip.reading.warnings;
    all.insert(all.end(), lines.begin(), lines.end());
    if (film.beside && film.beside->ofReadout)
        all.push_back(*film.beside->ofReadout);
    return all;
}

tl::expected<ClipFacts, RecordingFault> probeFilmFile(const FilmAsked& asked,
                                                      const std::stop_token& stop)
{
    auto facts = probeClip(asked.file, asked.part, stop);
    if (!facts)
        return ofFile(asked, facts.error());
    if (const auto may = timesMayFit(*facts, asked.options); !may)
        return ofFile(asked, may.error());
    return *std::move(facts);
}

tl::expected<FilmRead, RecordingFault> readFilmFile(const FilmAsked& asked, ClipFacts facts,
                                                    const std::stop_token& stop, std::ostream& err)
{
    TerminalProgress terminal(err);
    auto heard = hear(asked, facts, stop);
    if (!heard)
        return ofFile(asked, heard.error());
    FilmRead read;
    read.heard = heard->speed;
    read.ofSound = std::move(heard->warning);
    auto clip = readClip(asked.file, std::move(facts), asked.part, optionsOf(asked, read.heard),
                         stop, {terminal.of("reading frames"), terminal.of("seeking lines")});
    if (!clip)
        return ofFile(asked, clip.error());
    read.clip = *std::move(clip);
    if (!asked.setup)
        return read;
    auto beside = filmBeside(*asked.setup, askedClip(read.clip, stop, terminal), read.clip.reading,
                             asked.options, knownOf(asked, read.heard), stop);
    if (!beside)
        return notBeside(asked, beside.error(), stop);
    read.beside = *std::move(beside);
    return read;
}

tl::expected<FilmBeside, RecordingFault> besideWithOwnReadout(const FilmAsked& asked,
                                                              const FilmRead& film,
                                                              const std::stop_token& stop,
                                                              std::ostream& err)
{
    TerminalProgress terminal(err);
    AskedClip clip = askedClip(film.clip, stop, terminal);
    bool isOfLines = false;
    clip.lines = [&, lines = clip.lines](const FilmReadingOptions& options) {
        auto reading = lines(options);
        isOfLines = !reading;
        return reading;
    };
    auto own = withOwnReadout(*asked.setup, clip, *film.beside, optionsOf(asked, film.heard),
                              knownOf(asked, film.heard), stop);
    if (!own && isOfLines)
        return tl::unexpected(RecordingFault{own.error(), asked.file});
    if (!own)
        return notBeside(asked, own.error(), stop);
    return *std::move(own);
}

}  // namespace stillbay
