// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/clip/probe.h"

#include <string_view>

/// What ffprobe prints of a film.
namespace stillbay {

/// The form of a film, without its frames.
///
/// @param text  lines like streams.stream.0.codec_name="h264"
/// @error BadInput  no film among the streams; interlaced; too small, too large, or of no known
///                  size.
Result<ClipFacts> factsInText(std::string_view text);

/// Gives facts the times of the part's frames, and what is to be warned of.
///
/// @param text  lines like 2048,1234,K__ of all packets, the size not everywhere; those marked D
/// are decoded and not shown
/// @error BadInput  no times, too many frames, fewer than two of them in the part, a part that is
///                  too long.
Result<void> takeTimesInText(ClipFacts& facts, std::string_view text, const ClipOptions& options);

/// A film may end so much before its stated length.
inline constexpr double kEndMargin_s = 0.5;

/// @error BadInput  a part above kLongestPart_s.
Result<void> partStands(double length_s);

}  // namespace stillbay
