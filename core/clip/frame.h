// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>

namespace stillbay {

/// One frame of a film as the sensor's rows gave it, brightness alone. The pixels are the
/// giver's and hold until it is asked for the next frame.
struct Frame {
    double time_s = 0.0;  ///< its stamp
    unsigned width = 0;
    unsigned height = 0;
    std::span<const std::uint8_t> luma;  ///< row by row from the top, without gaps
    std::size_t index = 0;               ///< in the film, from 0
};

}  // namespace stillbay
