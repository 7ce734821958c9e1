// SPDX-License-Identifier: MIT
#include "core/base/parallel.h"

#include <algorithm>
#include <atomic>
#include <exception>
#include <mutex>
#include <thread>
#include <vector>

namespace stillbay {
namespace {

/// What the threads share.
struct Shared {
    StepCount steps;
    std::atomic<std::size_t> next = 0;
    std::atomic<bool> isSpoilt = false;
    std::mutex mutex;
    std::exception_ptr fault;

    void keepFault()
    {
        const std::lock_guard lock(mutex);
        if (!fault)
            fault = std::current_exception();
        isSpoilt = true;
    }
};

void take(Shared& shared, std::size_t count, const std::function<void(std::size_t)>& work,
          const std::stop_token& stop)
{
    try {
        while (!stop.stop_requested() && !shared.isSpoilt) {
            const std::size_t i = shared.next++;
            if (i >= count)
                return;
            work(i);
            shared.steps.add();
        }
    } catch (...) {
        shared.keepFault();
    }
}

}  // namespace

bool inParallel(std::size_t count, std::size_t threads,
                const std::function<void(std::size_t)>& work, const std::stop_token& stop,
                const Progress& progress)
{
    if (threads == 0)
        threads = std::max(1U, std::thread::hardware_concurrency());
    Shared shared{.steps = {count, progress}};
    {
        std::vector<std::jthread> others;
        for (std::size_t k = 1; k < std::min(threads, count); ++k)
            others.emplace_back([&] { take(shared, count, work, stop); });
        take(shared, count, work, stop);
    }
    if (shared.fault)
        std::rethrow_exception(shared.fault);
    return !stop.stop_requested();
}

}  // namespace stillbay
