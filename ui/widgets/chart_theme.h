// SPDX-License-Identifier: MIT
#pragma once

#include <QColor>
#include <QPalette>

#include <array>

namespace stillbay::ui {

/// Colours of the charts. Hues of Okabe and Ito's set, which the common kinds of colour blindness
/// tell apart; each meaning also has its own dash, hatch or word.
struct ChartTheme {
    QColor canvas, text, quiet, grid;
    std::array<QColor, 3> axes;  ///< curves along x, y, z
    QColor clean, faint, bad;    ///< zone grounds, opaque
    QColor cleanHatch, faintHatch, badHatch;
    QColor mode, hover, cruise, cursor;
    std::array<QColor, 3> compared;  ///< curves of kept tunes
    std::array<QColor, 4> orders;    ///< excitation bands, translucent
    std::array<QColor, 4> orderHatches;
    std::array<QColor, 4> wobble;  ///< none to much, evenly stepped; contrast with the canvas rises
};

/// @param stale  everything fades towards the canvas: what is shown is being worked out anew
ChartTheme chartTheme(const QPalette& palette, bool stale);

}  // namespace stillbay::ui
