// SPDX-License-Identifier: MIT
#pragma once

#include "core/recording/byte_source.h"

#include <cstddef>
#include <cstdint>

namespace stillbay {

/// What a WAV's header says, held against the file's own size.
struct WavHeader {
    enum class Sample { Pcm, Float, MuLaw, ALaw };

    Sample sample = Sample::Pcm;
    std::size_t bytes = 0;  ///< of one sample
    std::size_t channels = 0;
    double rate_hz = 0.0;
    std::uint64_t dataAt = 0;          ///< where the samples begin
    std::uint64_t frames = 0;          ///< that are there
    std::uint64_t promisedFrames = 0;  ///< by the header, which may leave it open: as `frames`
};

/// Walks the chunks up to the samples; all others are passed over unread.
///
/// @error BadInput  damaged, without samples, or coded in a way that is not read.
/// @source Multimedia Programming Interface and Data Specifications 1.0 (RIFF, WAVE); EBU Tech 3306
///         (RF64), from memory
Result<WavHeader> readWavHeader(const ByteSource& bytes);

}  // namespace stillbay
