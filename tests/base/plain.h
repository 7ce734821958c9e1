// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/phrase.h"

#include <string>

namespace stillbay::test {

/// In English, with spaces that may break: others hold numbers and units together.
inline std::string plain(const Phrase& phrase)
{
    std::string text = english(phrase);
    for (std::size_t at; (at = text.find("\u00A0")) != std::string::npos;)
        text.replace(at, 2, " ");
    return text;
}

}  // namespace stillbay::test
