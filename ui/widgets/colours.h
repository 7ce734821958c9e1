// SPDX-License-Identifier: MIT
#pragma once

#include <QColor>
#include <QPalette>

namespace stillbay::ui {

/// The desktop shows light text on dark ground.
bool isDark(const QPalette& palette);

/// a with the share of b mixed in.
QColor mixed(const QColor& a, const QColor& b, double share);

/// For words about something wrong; at least 4.5:1 on either ground.
QColor problemColour(const QPalette& palette);

/// For side notes; quieter than text, still at least 4.5:1.
QColor quietColour(const QPalette& palette);

}  // namespace stillbay::ui
