// SPDX-License-Identifier: MIT
#pragma once

#include <algorithm>
#include <cstddef>
#include <stop_token>

namespace stillbay {

/// Walks over a long column so that a wish to stop is heard within a few milliseconds: calls
/// `each(begin, end)` with one piece after another.
///
/// @return false: asked to stop before the end
template <class Each>
bool inPieces(std::size_t from, std::size_t to, const std::stop_token& stop, Each&& each)
{
    constexpr std::size_t kPiece = std::size_t{1} << 18;
    while (from < to) {
        if (stop.stop_requested())
            return false;
        const std::size_t end = std::min(from + kPiece, to);
        each(from, end);
        from = end;
    }
    return true;
}

}  // namespace stillbay
