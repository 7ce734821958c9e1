// SPDX-License-Identifier: MIT
#pragma once

#include <QStringList>

#include <span>

namespace stillbay::ui {

/// Numbers that are read beside each other, in the user's locale and all with as many decimals:
/// the fewest with which numbers that differ read differently. What still reads the same with
/// `most` decimals counts as the same. What is not finite is a dash.
QStringList distinctNumbers(std::span<const double> values, int least, int most);

}  // namespace stillbay::ui
