// SPDX-License-Identifier: MIT
#pragma once

#include "core/design/design.h"

#include <QString>

/// Numbers with their units, as more than one place of the window says them, in the user's locale.
namespace stillbay::ui {

QString tubeText(const StockTube& tube);            ///< "8 × 5 mm, Shore 60"
QString lengthText(double length_mm);               ///< "27.53 mm", to four digits
QString measureText(double length_mm);              ///< "27.5 mm", to the tenth that a rule shows
QString stretchText(double stretch);                ///< "+18.2 %" of a stretch of 1.182
QString degreesText(double angle_deg, int digits);  ///< "35.2°"
QString wobbleText(double wobble_px, int digits);   ///< "0.21 px"

/// "54" of 0.54; the sentence around it has the sign.
QString percentNumber(double share);

}  // namespace stillbay::ui
