// SPDX-License-Identifier: MIT
#include "ui/window/end_signals.h"

#include "core/base/check.h"

#include <QSocketNotifier>

#include <array>
#include <cerrno>
#include <csignal>
#include <cstdlib>
#include <fcntl.h>
#include <unistd.h>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr std::array kEnding{SIGTERM, SIGINT, SIGHUP};
constexpr int kSignalled =
    128;  // a shell's exit status of a program that signal n ended is 128 + n

// A handler may do next to nothing, but it may write: the event loop waits at the other end.
std::array<int, 2> g_pipe{-1, -1};

void pass(int number)
{
    const int before = errno;
    const auto byte = static_cast<unsigned char>(number);
    if (::write(g_pipe[1], &byte, 1) != 1)
        std::_Exit(kSignalled + number);
    errno = before;
}

bool isIgnored(int number)
{
    struct sigaction action {};
    ::sigaction(number, nullptr, &action);
    return action.sa_handler == SIG_IGN;
}

}  // namespace

EndSignals::EndSignals(std::function<void()> bringToSafety)
    : m_bringToSafety(std::move(bringToSafety))
{
    check(g_pipe[0] < 0, "the signals are taken already");
    if (::pipe2(g_pipe.data(), O_CLOEXEC | O_NONBLOCK) != 0)
        return;  // no descriptor left: they end the program as they always did
    m_arrived = new QSocketNotifier(g_pipe[0], QSocketNotifier::Read, this);
    connect(m_arrived, &QSocketNotifier::activated, this, &EndSignals::end);
    struct sigaction action {};
    action.sa_handler = pass;
    action.sa_flags = SA_RESTART | static_cast<int>(SA_RESETHAND);
    for (const int number : kEnding)
        if (!isIgnored(number))
            ::sigaction(number, &action, nullptr);
}

EndSignals::~EndSignals()
{
    if (!m_arrived)
        return;
    for (const int number : kEnding)
        if (!isIgnored(number))
            std::signal(number, SIG_DFL);
    m_arrived->setEnabled(false);
    for (int& end : g_pipe)
        ::close(std::exchange(end, -1));
}

void EndSignals::end()
{
    unsigned char number = 0;
    if (::read(g_pipe[0], &number, 1) != 1)
        return;
    m_bringToSafety();
    std::signal(number, SIG_DFL);
    std::raise(number);
    std::_Exit(kSignalled + number);  // it is blocked
}

}  // namespace stillbay::ui
