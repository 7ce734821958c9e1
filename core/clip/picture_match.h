// SPDX-License-Identifier: MIT
#pragma once

#include "core/clip/reference_picture.h"

#include <optional>
#include <span>

/// A whole frame laid over a reference.
namespace stillbay {

struct PictureMatch {
    RowField field;            ///< of the frame's rows at full size, smooth over the picture
    double gain = 1.0;         ///< brightness of the frame over the reference's
    double unexplained = 1.0;  ///< share of the contrast that stays after it, 0 … 1
};

/// Shift, turn, stretch, skew and the bend of a pan over uneven ground, fitted to the whole frame:
/// first every whole pixel of the smallest picture about the guess is tried, then tiles are fitted.
///
/// @param frame its pyramid, as the reference's
/// @param guess motion of the middle at full size
/// @return none where nothing fits
std::optional<PictureMatch> matchPicture(const ReferencePicture& reference,
                                         std::span<const Plane> frame, const RowMotion& guess);

}  // namespace stillbay
