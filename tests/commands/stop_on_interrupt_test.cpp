// SPDX-License-Identifier: MIT
#include "app/commands/stop_on_interrupt.h"

#include <gtest/gtest.h>

#include <chrono>
#include <csignal>
#include <thread>
#include <unistd.h>

namespace stillbay {
namespace {

bool isStoppedBy(int signal)
{
    const StopOnInterrupt interrupt;
    ::kill(::getpid(), signal);
    for (int k = 0; k < 200 && !interrupt.token().stop_requested(); ++k)
        std::this_thread::sleep_for(std::chrono::milliseconds(10));
    return interrupt.token().stop_requested();
}

// Holds that each way to end a program ends its decoders, and that nohup stays as it is.
TEST(StopOnInterrupt, HeedsWhatEndsPrograms)
{
    for (const int signal : {SIGINT, SIGTERM, SIGHUP}) {
        const auto before = std::signal(signal, SIG_DFL);
        EXPECT_TRUE(isStoppedBy(signal)) << signal;
        std::signal(signal, before);
    }
    const auto before = std::signal(SIGHUP, SIG_IGN);
    EXPECT_FALSE(isStoppedBy(SIGHUP));
    std::signal(SIGHUP, before);
}

}  // namespace
}  // namespace stillbay
