// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/phrase.h"
#include "core/base/quality.h"
#include "core/base/result.h"
#include "core/setup/setup.h"

#include <optional>
#include <string>
#include <vector>

/// What a measurement says of the craft's numbers: every kind of measurement ends in one of these.
namespace stillbay {

/// One number as it was and as it was measured, in the setup file's unit.
struct CorrectedValue {
    std::string key;               ///< path of the number, "tube.youngs_modulus_mpa"
    Phrase label;                  ///< "Young's modulus of the tube"
    std::string unit;              ///< as shown behind the number; empty: it has none
    std::optional<double> before;  ///< in use until now, estimated where the craft leaves it out
    double after = 0.0;
    double spread = 0.0;  ///< one standard deviation over `after`; 0: it has none (a limit)

    bool operator==(const CorrectedValue&) const = default;
};

struct Correction {
    Phrase measurement;  ///< "hang test, two masses"; becomes the note of the sources
    std::vector<CorrectedValue> values;
    /// What the speed controller makes of the throttle; none: nothing is said of it.
    std::optional<ThrottleCurve> throttleCurve = {};
    double throttleCurveSpread = 0.0;  ///< one standard deviation of its speeds, over them
    /// Root mean square of what the corrected model leaves unexplained over what was measured;
    /// `residualBefore` likewise with the numbers of before.
    double residual = 0.0;
    std::optional<double> residualBefore;
    QualityMark mark;
    std::vector<Warning> warnings;  ///< what the builder should know before accepting

    bool operator==(const Correction&) const = default;
};

/// The craft with the corrected numbers, each with a source "measured" that has its spread, the
/// measurement as note and the date.
///
/// @param date  ISO 8601, "2026-05-01"
/// @error BadInput  a key that is no number of this craft, or what validate() refuses.
Result<Setup> accept(const Setup& setup, const Correction& correction, const std::string& date);

}  // namespace stillbay
