// SPDX-License-Identifier: MIT
#include "app/commands/read_film.h"

#include "app/commands/terminal_progress.h"
#include "core/base/units.h"
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

// The lines beside the craft, and the readout that they tell.
Result<void> layBeside(const FilmAsked& asked, const std::stop_token& stop,
                       const Progress& progress, FilmRead& read)
{
    const FilmMatchOptions known = knownOf(asked, read.heard);
    auto craft = filmOfCraft(*asked.setup, read.clip.facts, read.clip.reading, known);
    if (!craft)
        return tl::unexpected(craft.error());
    auto readout = readoutOfFilm(*asked.setup, read.clip, *craft, known, stop, progress);
    if (!readout)
        return tl::unexpected(readout.error());
    read.craft = *std::move(craft);
    read.readout = *std::move(readout);
    read.ofReadout = read.readout
                         ? otherReadout(*asked.setup, *read.readout, asked.options.readout_s)
                         : std::nullopt;
    return {};
}

tl::expected<FilmRead, RecordingFault> besideCraft(const FilmAsked& asked, FilmRead read,
                                                   const std::stop_token& stop,
                                                   const Progress& progress)
{
    if (!asked.setup)
        return read;
    if (const auto beside = layBeside(asked, stop, progress, read); !beside)
        return tl::unexpected(
            RecordingFault{beside.error(), stop.stop_requested() ? asked.file : asked.setupFile});
    return read;
}

}  // namespace

std::vector<Warning> warningsOf(const FilmRead& film)
{
    std::vector<Warning> all = film.clip.warnings;
    if (film.ofSound)
        all.push_back(*film.ofSound);
    const auto& lines = film.craft ? film.craft->warnings : film.clip.reading.warnings;
    all.insert(all.end(), lines.begin(), lines.end());
    if (film.ofReadout)
        all.push_back(*film.ofReadout);
    return all;
}

tl::expected<FilmRead, RecordingFault> readFilmFile(const FilmAsked& asked,
                                                    const std::stop_token& stop, std::ostream& err)
{
    const auto ofFile = [&](const Error& error) {
        return tl::unexpected(RecordingFault{error, asked.file});
    };
    TerminalProgress terminal(err);
    auto facts = probeClip(asked.file, asked.part, stop);
    if (!facts)
        return ofFile(facts.error());
    if (const auto may = timesMayFit(*facts, asked.options); !may)
        return ofFile(may.error());
    auto heard = hear(asked, *facts, stop);
    if (!heard)
        return ofFile(heard.error());
    FilmRead read;
    read.heard = heard->speed;
    read.ofSound = std::move(heard->warning);
    auto clip = readClip(asked.file, *std::move(facts), asked.part, optionsOf(asked, read.heard),
                         stop, {terminal.of("reading frames"), terminal.of("seeking lines")});
    if (!clip)
        return ofFile(clip.error());
    read.clip = *std::move(clip);
    return besideCraft(asked, std::move(read), stop, terminal.of("seeking the readout"));
}

tl::expected<FilmRead, RecordingFault> withOwnReadout(const FilmAsked& asked, FilmRead film,
                                                      const std::stop_token& stop,
                                                      std::ostream& err)
{
    if (!asked.setup || !film.ofReadout)
        return film;
    TerminalProgress terminal(err);
    Setup craft = *asked.setup;
    FilmAsked again = asked;
    again.setup = &craft;
    again.options.readout_s = film.readout->estimate.readout_s;
    craft.camera.readout_ms = again.options.readout_s / unit::ms;
    auto lines =
        readLines(film.clip, optionsOf(again, film.heard), stop, terminal.of("seeking lines"));
    if (!lines)
        return tl::unexpected(RecordingFault{lines.error(), asked.file});
    film.clip.reading = *std::move(lines);
    return besideCraft(again, std::move(film), stop, terminal.of("seeking the readout"));
}

}  // namespace stillbay
