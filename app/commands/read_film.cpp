// SPDX-License-Identifier: MIT
#include "app/commands/read_film.h"

#include "app/commands/terminal_progress.h"
#include "core/calibrate/film_sound.h"
#include "core/clip/sound_track.h"

#include <utility>

namespace stillbay {
namespace {

// By the sound of the part, where there is one; what it does not tell is a warning.
Result<void> hear(const FilmAsked& asked, const ClipFacts& facts, const std::stop_token& stop,
                  FilmRead& read)
{
    if (!facts.hasSound || !asked.setup)
        return {};
    auto heard =
        heardOnFilm(*asked.setup, readSoundTrack(asked.file, facts, asked.part, stop), stop);
    if (!heard)
        return tl::unexpected(heard.error());
    read.heard = heard->speed;
    if (heard->warning)
        read.warnings.push_back(*std::move(heard->warning));
    return {};
}

// The lines beside the craft, and the readout that they tell.
Result<void> layBeside(const FilmAsked& asked, const std::stop_token& stop,
                       const Progress& progress, FilmRead& read)
{
    const FilmMatchOptions known{asked.throttle, read.heard};
    auto craft = filmOfCraft(*asked.setup, read.clip.facts, read.clip.reading, known);
    if (!craft)
        return tl::unexpected(craft.error());
    auto readout = readoutOfFilm(*asked.setup, read.clip, *craft, known, stop, progress);
    if (!readout)
        return tl::unexpected(readout.error());
    read.warnings.insert(read.warnings.end(), craft->warnings.begin(), craft->warnings.end());
    read.craft = *std::move(craft);
    read.readout = *std::move(readout);
    if (read.readout)
        if (auto other = otherReadout(*asked.setup, *read.readout, asked.options.readout_s))
            read.warnings.push_back(*std::move(other));
    return {};
}

}  // namespace

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
    if (const auto fits = readoutFits(*facts, asked.options.readout_s); !fits)
        return ofFile(fits.error());
    FilmRead read;
    if (const auto heard = hear(asked, *facts, stop, read); !heard)
        return ofFile(heard.error());
    auto shifts =
        readShifts(asked.file, *std::move(facts), asked.part, stop, terminal.of("reading frames"));
    if (!shifts)
        return ofFile(shifts.error());
    auto lines = readLines(*shifts, asked.options, stop, terminal.of("seeking lines"));
    if (!lines)
        return ofFile(lines.error());
    read.warnings.insert(read.warnings.begin(), shifts->warnings.begin(), shifts->warnings.end());
    read.clip = ClipReading{*std::move(shifts), *std::move(lines)};
    if (asked.setup)
        if (const auto beside = layBeside(asked, stop, terminal.of("seeking the readout"), read);
            !beside)
            return tl::unexpected(RecordingFault{
                beside.error(), stop.stop_requested() ? asked.file : asked.setupFile});
    return read;
}

}  // namespace stillbay
