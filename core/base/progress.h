// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"

#include <cstddef>
#include <functional>

namespace stillbay {

/// Called by a long computation after each of its steps with (steps done, steps in all); false
/// asks it to stop. May be called from the thread that computes.
using Progress = std::function<bool(std::size_t done, std::size_t total)>;

/// The answer of a computation whose progress asked it to stop.
inline Error stoppedOnRequest()
{
    return {Errc::NoAnswer, phrase("stopped"), {}};
}

}  // namespace stillbay
