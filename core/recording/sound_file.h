// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/progress.h"
#include "core/recording/byte_source.h"
#include "core/recording/read_plan.h"
#include "core/recording/recording.h"
#include "core/recording/sound_kind.h"

#include <stop_token>

namespace stillbay {

/// The plan of a sound: its channels and rate.
///
/// @param kind  as soundKind() found it, not None
/// @error BadInput  damaged, no samples, more than 16 channels, a rate outside 1 Hz … 1 MHz, more
///                  than 2²⁸ samples.
Result<ReadPlan> planSound(const ByteSource& bytes, SoundKind kind);

/// Reads the used channels of a sound, full scale as ±1 times the column's scale. A file that ends
/// before its header says is read as far as it goes.
///
/// @error BadInput  as planSound(); no channel in use; more than 2²⁹ values in all channels in use;
///                  a plan with other channels.
/// @error NoAnswer  stopped.
Result<Recording> readSound(const ByteSource& bytes, SoundKind kind, const ReadPlan& plan,
                            const std::stop_token& stop, const Progress& progress);

}  // namespace stillbay
