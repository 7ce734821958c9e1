// SPDX-License-Identifier: MIT
#pragma once

#include "app/commands/motor_recordings.h"
#include "core/calibrate/film_beside.h"
#include "core/clip/read_clip.h"
#include "core/setup/setup.h"

#include <tl/expected.hpp>

#include <optional>
#include <ostream>
#include <stop_token>
#include <string>
#include <vector>

/// What `film` and `calibrate` do with a clip.
namespace stillbay {

struct FilmAsked {
    std::string file;
    ClipOptions part;
    FilmReadingOptions options;    ///< highest_hz: with a craft soughtUpTo() instead
    std::string setupFile;         ///< where the craft comes from, for what is said of it
    const Setup* setup = nullptr;  ///< the craft it was filmed from; null: not known
    std::optional<double> throttle;
};

struct FilmRead {
    ClipReading clip;
    std::optional<SpeedOfRotors> heard;  ///< none: no craft, no sound, or a warning says why
    std::optional<Warning> ofSound;      ///< what it does not tell
    std::optional<FilmBeside> beside;    ///< none: no craft
};

/// All, of file, frames, sound, lines and craft.
std::vector<Warning> warningsOf(const FilmRead& film);

/// Probes the clip, and whether readout and exposure may be its own.
tl::expected<ClipFacts, RecordingFault> probeFilmFile(const FilmAsked& asked,
                                                      const std::stop_token& stop);

/// Hears its sound, reads its frames and lines, and lays them beside the craft.
///
/// @param facts  probeFilmFile() of it
/// @param err    told how far it has come, where that is a terminal
tl::expected<FilmRead, RecordingFault> readFilmFile(const FilmAsked& asked, ClipFacts facts,
                                                    const std::stop_token& stop, std::ostream& err);

/// The same with its own readout, where it tells another than was used.
///
/// @param film  readFilmFile() of it, with a craft
tl::expected<FilmBeside, RecordingFault> besideWithOwnReadout(const FilmAsked& asked,
                                                              const FilmRead& film,
                                                              const std::stop_token& stop,
                                                              std::ostream& err);

}  // namespace stillbay
