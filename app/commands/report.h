// SPDX-License-Identifier: MIT
#pragma once

#include <ostream>
#include <span>
#include <string_view>

namespace stillbay {

/// `stillbay report FILE [--json] [--throttle A:B:STEP] [--frequency A:B:STEP]
/// [--airframe rigid|flexible] [--uncertainty]`: the assessment, for people or as JSON.
///
/// @param arguments what follows the word `report`.
/// @param out the report or the help, @param err errors and warnings in one line each.
/// @return exit code: 0 done, 1 bad input or out takes nothing, 2 wrong usage, 3 no answer.
int runReport(std::span<const std::string_view> arguments, std::ostream& out, std::ostream& err);

}  // namespace stillbay
