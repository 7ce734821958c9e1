// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/clip/child_process.h"
#include "core/clip/probe.h"

#include <cstdint>
#include <optional>
#include <string_view>

/// What ffmpeg's filter showinfo says of the frames that it shows.
namespace stillbay {

/// One frame before its pixels.
struct ShownPicture {
    std::int64_t tick = 0;  ///< its stamp
    unsigned bits = 8;      ///< of a pixel
};

/// Which lines are of frames.
LineUse ofFrames(std::string_view line);

/// The step of the stamps, where a line tells it, [s]; none where it tells of a frame.
std::optional<double> tickInLine(std::string_view line);

/// @error BadInput  not understood, of another size than the facts say, interlaced, without a
///                  stamp.
Result<ShownPicture> pictureInLine(std::string_view line, const ClipFacts& facts);

/// Why such a program's frames are refused.
Error framesNotUnderstood();

}  // namespace stillbay
