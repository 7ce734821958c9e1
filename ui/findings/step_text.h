// SPDX-License-Identifier: MIT
#pragma once

#include "core/advice/suggestions.h"

#include <QString>

/// A suggestion in the window's words, the same in its row and in the verdict strip.
namespace stillbay::ui {

QString stepWobbleText(const Suggestion& suggestion, double before_px);  ///< "1.71 → 0.86 px"
QString stepGainText(const Suggestion& suggestion, double before_px);    ///< "−50 %"
QString stepDangerText(const Suggestion& suggestion);  ///< "but a tube goes slack"; empty: nothing
/// All of it in one line.
QString stepChangeText(const Suggestion& suggestion, double before_px);

}  // namespace stillbay::ui
