// SPDX-License-Identifier: MIT
#include "core/mutation_switch.h"

#include <atomic>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <unistd.h>

namespace stillbay_mutation {
namespace {

constexpr int kMost = 100'000;
std::atomic<bool> met[kMost];

int chosenByEnvironment()
{
    const char* const number = std::getenv("STILLBAY_MUTANT");
    return number ? std::atoi(number) : -1;
}

// STILLBAY_MUTANTS_MET names a file; each program writes its list behind that name and its number.
struct WritesAtExit {
    ~WritesAtExit()
    {
        const char* const name = std::getenv("STILLBAY_MUTANTS_MET");
        if (!name)
            return;
        const std::string path = std::string(name) + "." + std::to_string(getpid());
        if (std::FILE* const file = std::fopen(path.c_str(), "w")) {
            for (int i = 0; i < kMost; ++i)
                if (met[i].load(std::memory_order_relaxed))
                    std::fprintf(file, "%d\n", i);
            std::fclose(file);
        }
    }
} writesAtExit;

}  // namespace

const int chosen = chosenByEnvironment();

void meet(int number)
{
    if (!met[number].load(std::memory_order_relaxed))
        met[number].store(true, std::memory_order_relaxed);
}

}  // namespace stillbay_mutation
