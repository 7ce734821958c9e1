// SPDX-License-Identifier: MIT
#pragma once

#include <QString>

namespace stillbay::ui {

/// What one film showed, at the throttle it was flown at.
struct FilmedMark {
    QString name;           ///< of the film's file
    double throttle = 0.0;  ///< 0 … 1
    double filmed_px = 0.0;

    bool operator==(const FilmedMark&) const = default;
};

/// "film-40.mp4 at 40 %: filmed 1.4 px"
QString filmedText(const FilmedMark& mark);

}  // namespace stillbay::ui
