// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"

#include <algorithm>
#include <cstddef>
#include <functional>
#include <mutex>

namespace stillbay {

/// Called by a long computation after each of its steps with (steps done, steps in all), by
/// whichever of its threads took the step; one call at a time, with a number that rises. To end a
/// computation is the matter of its std::stop_token.
using Progress = std::function<void(std::size_t done, std::size_t total)>;

/// Counts the steps of several threads and tells of each.
class StepCount {
public:
    StepCount(std::size_t total, const Progress& progress) : m_total(total), m_progress(progress) {}

    void add(std::size_t steps = 1)
    {
        const std::lock_guard lock(m_mutex);
        m_done += steps;
        if (m_progress)
            m_progress(std::min(m_done, m_total), m_total);
    }

    std::size_t done() const
    {
        const std::lock_guard lock(m_mutex);
        return m_done;
    }

private:
    std::size_t m_total;
    const Progress& m_progress;
    mutable std::mutex m_mutex;
    std::size_t m_done = 0;
};

/// The answer of a computation that was asked to stop.
inline Error stoppedOnRequest()
{
    return {Errc::NoAnswer, phrase("stopped"), {}};
}

}  // namespace stillbay
