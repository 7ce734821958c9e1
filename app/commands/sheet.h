// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/base/result.h"
#include "core/setup/cut_length.h"
#include "core/setup/setup.h"

#include <functional>
#include <ostream>
#include <span>
#include <string>
#include <string_view>

namespace stillbay {

enum class SheetPaper { OfTheLocale, A4, Letter };

/// One build sheet to be written.
struct SheetOrder {
    Setup setup;
    Assessment assessment;
    std::string output;
    SheetPaper paper = SheetPaper::OfTheLocale;
    double grip_mm = kUsualGrip_mm;
    bool replace = false;  // what is there already
};

/// Draws the sheet and writes it to order.output.
using SheetWriter = std::function<Result<void>(const SheetOrder& order)>;

/// `stillbay sheet FILE --output OUT.pdf [--force] [--paper a4|letter] [--grip MM]`: the build
/// sheet.
///
/// @param arguments what follows the word `sheet`.
/// @param write is called only once there is an answer to write.
/// @param out the help, @param err errors and warnings in one line each.
/// @return exit code: 0 done, 1 bad input, the output is there already or cannot be written, 2
/// wrong usage, 3 no answer.
int runSheet(std::span<const std::string_view> arguments, const SheetWriter& write,
             std::ostream& out, std::ostream& err);

}  // namespace stillbay
