// SPDX-License-Identifier: MIT
#pragma once

#include "core/calibrate/correction.h"

#include <algorithm>
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

}  // namespace stillbay::test
