// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/clip/probe.h"

#include <filesystem>
#include <stop_token>
#include <vector>

namespace stillbay {

/// What a film's microphone heard, all its channels in one, at a rate that holds the blade pass.
struct SoundTrack {
    double rate_hz = 0.0;
    std::vector<double> samples;  ///< of full scale, −1 … 1
};

inline constexpr unsigned kSoundRate_hz = 8000;

/// The first sound of a film over the part that its frames are read of, through ffmpeg.
///
/// @param facts  of this file and these options, by probeClip()
/// @param stop   heeded within a few hundredths of a second
/// @error BadInput  the film has no sound in that part; a program is missing, dies, or takes longer
///                  for all of it than it may stay silent. NoAnswer  stopped.
Result<SoundTrack> readSoundTrack(const std::filesystem::path& file, const ClipFacts& facts,
                                  const ClipOptions& options = {},
                                  const std::stop_token& stop = {});

}  // namespace stillbay
