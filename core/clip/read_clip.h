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
    FilmReading reading;
};

inline constexpr double kLongestPart_s = 60.0;  // the time that lines take grows with its square

using FrameSeen = std::function<void(const Frame&)>;  ///< the frame lasts until it returns

/// Whether a readout is one, and of this film: asked before anything is decoded.
///
/// @error BadInput  it is not above 0, or longer than a frame.
Result<void> readoutFits(const ClipFacts& facts, double readout_s);

/// The frames of a FrameStream through a RowShiftReader.
///
/// @param facts     of this file and part, by probeClip()
/// @param stop      heeded within one frame
/// @param progress  steps are frames
/// @param seen      told each frame that is read; empty: nobody
/// @error as FrameStream. BadInput  a part above kLongestPart_s.
Result<ClipShifts> readShifts(const std::filesystem::path& file, ClipFacts facts,
                              const ClipOptions& part, const std::stop_token& stop = {},
                              const Progress& progress = {}, const FrameSeen& seen = {});

/// The same behind probeClip(). @error as both.
Result<ClipShifts> readShifts(const std::filesystem::path& file, const ClipOptions& part,
                              const std::stop_token& stop = {}, const Progress& progress = {},
                              const FrameSeen& seen = {});

/// Lines out of shifts; of a film that was coded with losses none below kLeastCoded_px.
///
/// @error as readFilm() and readoutFits().
Result<FilmReading> readLines(const ClipShifts& clip, const FilmReadingOptions& options,
                              const std::stop_token& stop = {}, const Progress& progress = {});

/// The whole way: readShifts() and readLines().
Result<ClipReading> readClip(const std::filesystem::path& file, const ClipOptions& part,
                             const FilmReadingOptions& options, const std::stop_token& stop = {},
                             const Progress& progress = {});

}  // namespace stillbay
