// SPDX-License-Identifier: MIT
#pragma once

#include "core/response/level.h"
#include "core/suspension/suspension.h"

#include <optional>
#include <string>
#include <string_view>

namespace stillbay {

/// How the bay is to be hung, and how it rests before and after.
struct LevelAnswer {
    std::string name;             ///< the craft's
    std::optional<Pose> present;  ///< its rest as it is; none: it has no stable one
    Levelled levelled;
};

/// "too-heavy", "outside-tubes", "remains": of the reason, for programs.
std::string_view levelFaultCode(LevelFault fault);

/// A page for people, UTF-8.
std::string levelPage(const LevelAnswer& answer);

}  // namespace stillbay
