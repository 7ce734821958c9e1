// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/calibrate/film_sound.h"
#include "core/clip/read_clip.h"
#include "core/clip/readout.h"
#include "core/clip/row_bend.h"
#include "core/clip/sound_track.h"
#include "core/recording/rotor_speed.h"
#include "core/setup/setup.h"
#include "ui/document/background.h"
#include "ui/recordings/last_answers.h"

#include <QImage>
#include <QString>

#include <memory>
#include <mutex>
#include <optional>
#include <stop_token>
#include <utility>
#include <vector>

namespace stillbay::ui {

/// What the rows of a film depend on: the file's version and the part of it.
struct FilmKey {
    QString path;
    qint64 size = -1;  ///< [bytes]; -1: there is no such file
    qint64 modified_ms = 0;
    std::optional<double> from_s, to_s;

    bool operator==(const FilmKey&) const = default;
};

/// As the file is now.
FilmKey filmKeyOf(const NamedRecording& film);

/// A frame to look at, small and grey as the rows were read, and how its rows stand.
struct FilmStill {
    QImage picture;
    double time_s = 0.0;
    FrameBend bend;  ///< without rows: the frame says nothing
};

/// A film that was read. What it answers takes seconds, from any thread, and is kept: what a change
/// of the craft does not touch is not worked out anew.
class ReadFilm final {
public:
    ReadFilm(ClipShifts clip, std::optional<Result<SoundTrack>> sound,
             std::vector<FilmStill> stills);

    const ClipShifts& clip() const { return m_clip; }
    const std::vector<FilmStill>& stills() const { return m_stills; }  ///< by time, evenly taken
    /// Kept for two options: the readout of the craft, and the film's own.
    ///
    /// @error as readLines()
    Result<FilmReading> lines(const FilmReadingOptions& options, const std::stop_token& stop,
                              const Progress& progress = {}) const;
    /// Kept for what readoutOfFilm() asks of the lines by either readout.
    ///
    /// @error as estimateReadout()
    Result<ReadoutEstimate> readout(double about_hz, double tolerance_hz,
                                    const std::stop_token& stop,
                                    const Progress& progress = {}) const;
    /// Kept for the speeds that are sought last.
    ///
    /// @return without a speed and a warning: the film is silent
    /// @error as heardOnFilm()
    Result<HeardOnFilm> heard(const Setup& setup, const std::stop_token& stop) const;

private:
    ClipShifts m_clip;
    std::optional<Result<SoundTrack>> m_sound;  // none: the film is silent
    std::vector<FilmStill> m_stills;
    mutable std::mutex m_mutex;
    mutable LastAnswers<FilmReadingOptions, Result<FilmReading>> m_lines;
    mutable LastAnswers<std::pair<double, double>, Result<ReadoutEstimate>> m_readouts;
    mutable LastAnswers<RotorSpeedOptions, Result<HeardOnFilm>> m_heard;
};

using SharedFilm = std::shared_ptr<const ReadFilm>;

/// A film, or why there is none.
struct FilmAnswer {
    double length_s = 0.0;  ///< of the whole film; 0: not known
    SharedFilm film;        ///< null: see failure
    std::optional<Error> failure;
};

/// To be run in the background. Where no end is named it reads the longest part that can be read at
/// once, and a warning says so.
///
/// @error NoAnswer  stopped.
Result<FilmAnswer> readFilmFile(const NamedRecording& film, const Caller<FilmAnswer>& caller);

}  // namespace stillbay::ui
