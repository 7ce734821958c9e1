// SPDX-License-Identifier: MIT
#pragma once

#include "core/recording/recording.h"
#include "core/recording/ring_down.h"

#include <string>

namespace stillbay {

/// One object, docs/ringdown.md.
std::string ringDownJson(const Recording& recording, const RingDown& answer);

/// A line a mode, how far to rely on them, and the plucks, for people.
std::string ringDownPage(const Recording& recording, const RingDown& answer);

}  // namespace stillbay
