// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/progress.h"
#include "core/base/result.h"
#include "core/clip/film_lines.h"
#include "core/clip/frame.h"
#include "core/clip/probe.h"
#include "core/clip/row_shifts.h"

#include <cstddef>
#include <filesystem>
#include <functional>
#include <stop_token>
#include <vector>

namespace stillbay {

/// What the frames of a film say, before readout and exposure are asked for.
struct ClipShifts {
    ClipFacts facts;
    std::size_t frames = 0;  ///< that were read, without repeats
    RowShifts shifts;
    std::vector<Warning> warnings;  ///< of file, frames and stretches left out
};

/// What a film says, from its file to its lines.
struct ClipReading : ClipShifts {
    FilmReading reading;  ///< with warnings of its own
};

using FrameSeen = std::function<void(const Frame&)>;  ///< the frame lasts until it returns

/// So many times a slow film may show each of its frames, which is found when they are read.
inline constexpr double kMostRepeats = 4.0;

/// Whether readout and exposure may be those of this film: asked before anything is decoded.
///
/// @error BadInput  one is none, or longer than kMostRepeats frames as the file counts them.
Result<void> timesMayFit(const ClipFacts& facts, const FilmReadingOptions& options);

/// The same of frames that have been read.
///
/// @error BadInput  one is none, or longer than a frame.
Result<void> timesFit(const ClipShifts& clip, const FilmReadingOptions& options);

/// The frames of a FrameStream through a RowShiftReader.
///
/// @param facts     of this file and part, by probeClip()
/// @param stop      heeded within one frame
/// @param progress  steps are frames
/// @param seen      told each frame that is read; empty: nobody
/// @return facts.frameRate_hz and bitsPerPixel without repeats
/// @error as FrameStream.
Result<ClipShifts> readShifts(const std::filesystem::path& file, ClipFacts facts,
                              const ClipOptions& part, const std::stop_token& stop = {},
                              const Progress& progress = {}, const FrameSeen& seen = {});

/// Lines out of shifts; of a film that was coded with losses none below kLeastCoded_px, nor below
/// what its coder leaves out.
///
/// @error as readFilm() and timesFit().
Result<FilmReading> readLines(const ClipShifts& clip, const FilmReadingOptions& options,
                              const std::stop_token& stop = {}, const Progress& progress = {});

/// What is told how far readClip() has come.
struct ClipProgress {
    Progress frames, lines;
};

/// From a file that has been probed to its lines: readShifts() and readLines().
///
/// @error as both.
Result<ClipReading> readClip(const std::filesystem::path& file, ClipFacts facts,
                             const ClipOptions& part, const FilmReadingOptions& options,
                             const std::stop_token& stop = {}, const ClipProgress& progress = {});

}  // namespace stillbay
