// SPDX-License-Identifier: MIT
#pragma once

#include <csignal>
#include <stop_token>
#include <thread>

namespace stillbay {

/// While one lives, Ctrl+C, a terminal that is closed and the system's wish to end the program ask
/// for a stop instead, so that no decoder is left behind; which of them was ignored before stays
/// so. To be made before other threads, which heed the same.
class StopOnInterrupt final {
public:
    StopOnInterrupt();
    ~StopOnInterrupt();
    StopOnInterrupt(const StopOnInterrupt&) = delete;
    StopOnInterrupt& operator=(const StopOnInterrupt&) = delete;

    std::stop_token token() const { return m_source.get_token(); }

private:
    sigset_t m_signals, m_before;
    std::stop_source m_source;
    std::jthread m_waiting;
};

}  // namespace stillbay
