// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/printable.h"

#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>

/// Ends the program, as a fuzzer wants it, where something that must hold does not.
inline void demand(bool holds, const char* what)
{
    if (holds)
        return;
    std::fprintf(stderr, "does not hold: %s\n", what);
    std::abort();
}

/// What is told of bad input is one line, which does nothing to a terminal once it is printable.
inline void demandOneLine(std::string_view text)
{
    demand(!text.empty(), "an error says something");
    const std::string shown = stillbay::printable(text);
    demand(shown.find('\n') == std::string::npos, "an error is one line");
    demand(stillbay::printable(shown) == shown, "an error has no control characters");
}
