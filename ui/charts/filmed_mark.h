// SPDX-License-Identifier: MIT
#pragma once

#include <QString>

#include <optional>

namespace stillbay::ui {

/// What one film showed. It stands where the craft is computed to turn its rotors as fast as they
/// turned on the film: there prediction and film are of one frequency.
struct FilmedMark {
    QString file;                        ///< its path …
    std::optional<double> from_s, to_s;  ///< … and its part tell films apart
    QString name;                        ///< of both
    double throttle = 0.0;               ///< 0 … 1, where it stands
    std::optional<double> flown;         ///< of the stick, where that is known
    double filmed_px = 0.0;              ///< of the craft's camera
    std::optional<double> predicted_px;  ///< at that speed; none: nothing is predicted there

    bool operator==(const FilmedMark&) const = default;
};

/// "film-40.mp4: filmed 1.4 px, turning as at 38 % throttle (flown at 40 %)"
QString filmedText(const FilmedMark& mark);

}  // namespace stillbay::ui
