// SPDX-License-Identifier: MIT
#include "app/commands/stop_on_interrupt.h"

#include <ctime>

namespace stillbay {
namespace {

// As nohup has it, and a shell of what it runs in the background.
bool isIgnored(int signal)
{
    struct sigaction now = {};
    return ::sigaction(signal, nullptr, &now) == 0 && now.sa_handler == SIG_IGN;
}

}  // namespace

StopOnInterrupt::StopOnInterrupt()
{
    ::sigemptyset(&m_signals);
    for (const int signal : {SIGINT, SIGTERM, SIGHUP})
        if (!isIgnored(signal))
            ::sigaddset(&m_signals, signal);
    ::pthread_sigmask(SIG_BLOCK, &m_signals, &m_before);
    m_waiting = std::jthread([this](const std::stop_token& over) {
        const timespec slice{0, 50'000'000};
        while (!over.stop_requested())
            if (::sigtimedwait(&m_signals, nullptr, &slice) > 0)
                m_source.request_stop();
    });
}

StopOnInterrupt::~StopOnInterrupt()
{
    m_waiting.request_stop();
    m_waiting.join();
    ::pthread_sigmask(SIG_SETMASK, &m_before, nullptr);
}

}  // namespace stillbay
