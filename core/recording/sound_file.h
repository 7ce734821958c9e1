// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/progress.h"
#include "core/recording/byte_source.h"
#include "core/recording/read_plan.h"
#include "core/recording/recording.h"
#include "core/recording/sound_kind.h"

#include <cstdint>
#include <stop_token>

namespace stillbay {

/// Of all channels in use: 1 GiB, 46 minutes of one at 48 kHz.
inline constexpr std::uint64_t kMostSoundValues = std::uint64_t{1} << 27;

/// The plan of a sound: its channels and rate.
///
/// @param kind  as soundKind() found it, not None
/// @error BadInput  damaged, no samples, more than 16 channels, a rate outside 1 Hz … 1 MHz, more
///                  than 2²⁷ samples.
Result<ReadPlan> planSound(const ByteSource& bytes, SoundKind kind);

/// Reads the used channels of a sound, full scale as ±1 times the column's scale. A file that ends
/// before its header says is read as far as it goes.
///
/// @param mostValues  in all channels in use, whether the file states its length or not
/// @error BadInput  as planSound(); no channel in use; more values; a plan with other channels.
/// @error NoAnswer  stopped.
Result<Recording> readSound(const ByteSource& bytes, SoundKind kind, const ReadPlan& plan,
                            const std::stop_token& stop, const Progress& progress,
                            std::uint64_t mostValues = kMostSoundValues);

}  // namespace stillbay
