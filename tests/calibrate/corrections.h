// SPDX-License-Identifier: MIT
#pragma once

#include "core/calibrate/correction.h"
#include "tests/base/plain.h"

#include <algorithm>
#include <string>
#include <string_view>

namespace stillbay::test {

/// What a correction says of a number; null where it says nothing.
inline const CorrectedValue* valueOf(const Correction& correction, std::string_view key)
{
    const auto found =
        std::find_if(correction.values.begin(), correction.values.end(),
                     [key](const CorrectedValue& value) { return value.key == key; });
    return found == correction.values.end() ? nullptr : &*found;
}

inline bool warns(const Correction& correction, std::string_view code)
{
    return std::any_of(correction.warnings.begin(), correction.warnings.end(),
                       [code](const Warning& warning) { return warning.code == code; });
}

/// What the warning says, plain(); empty where there is none.
inline std::string textOf(const Correction& correction, std::string_view code)
{
    for (const Warning& warning : correction.warnings)
        if (warning.code == code)
            return plain(warning.text);
    return {};
}

}  // namespace stillbay::test
