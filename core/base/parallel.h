// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/progress.h"

#include <cstddef>
#include <functional>
#include <stop_token>

namespace stillbay {

/// Runs work(0) … work(count − 1), each once, in any order, on several threads.
///
/// @param threads   how many, the calling one among them; 0: one a core
/// @param stop      heeded by every thread between two pieces of work, which may look at it too
/// @param progress  told how many of `count` are done; may be empty
/// @return false when it was asked to stop: then some may not be done. No thread runs on after it
///         returns or throws; the first exception out of work is thrown again here.
bool inParallel(std::size_t count, std::size_t threads,
                const std::function<void(std::size_t)>& work, const std::stop_token& stop,
                const Progress& progress);

}  // namespace stillbay
