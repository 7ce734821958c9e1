// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/progress.h"
#include "core/base/result.h"
#include "core/clip/film_lines.h"
#include "core/clip/probe.h"
#include "core/clip/row_shifts.h"

#include <cstddef>
#include <filesystem>
#include <stop_token>
#include <vector>

namespace stillbay {

/// What a film says, from its file to its lines.
struct ClipReading {
    ClipFacts facts;
    std::size_t frames = 0;  ///< that were read, without repeats
    RowShifts shifts;
    FilmReading reading;
    std::vector<Warning> warnings;  ///< of file, frames and stretches left out
};

inline constexpr double kLongestPart_s = 60.0;  // the time that lines take grows with its square

/// The whole way: probeClip(), the frames of a FrameStream through a RowShiftReader, readFilm().
///
/// @param stop      heeded within one frame, or as readFilm() does
/// @param progress  steps are frames
/// @error as each of them. BadInput  a part above kLongestPart_s, a readout longer than a frame.
Result<ClipReading> readClip(const std::filesystem::path& file, const ClipOptions& part,
                             const FilmReadingOptions& options, const std::stop_token& stop = {},
                             const Progress& progress = {});

}  // namespace stillbay
