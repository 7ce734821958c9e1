// SPDX-License-Identifier: MIT
#pragma once

#include <stdexcept>

namespace stillbay {

/// Guards what only a bug of ours can break. Always on; job runners and main catch it.
inline void check(bool holds, const char* what)
{
    if (!holds)
        throw std::logic_error(what);
}

}  // namespace stillbay
