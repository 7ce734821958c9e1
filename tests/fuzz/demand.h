// SPDX-License-Identifier: MIT
#pragma once

#include <cstdio>
#include <cstdlib>
#include <string_view>

/// Ends the program, as a fuzzer wants it, where something that must hold does not.
inline void demand(bool holds, const char* what)
{
    if (holds)
        return;
    std::fprintf(stderr, "does not hold: %s\n", what);
    std::abort();
}

/// What is told of bad input is a sentence. That a command shows it as one harmless line is
/// printable()'s to hold, whatever is in it.
inline void demandReason(std::string_view text)
{
    demand(!text.empty(), "an error says something");
}
