// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/phrase.h"
#include "core/base/quality.h"
#include "core/calibrate/correction.h"
#include "core/calibrate/free_modes.h"
#include "core/calibrate/pluck_model.h"

#include <cstddef>
#include <optional>
#include <vector>

/// How far a pluck test can be relied on, and what to do next. Internal to the calibrate room.
namespace stillbay {

/// What the mark depends on.
struct PluckDoubts {
    FreeModes free;
    RubberFigures rubber;
    double ratioSpread = 0.0;
    double tensionSpread = 0.0;  ///< of what was known of the tension beforehand
    double foreign = 0.0;  ///< share of the energy of measured modes that are none of the bay's
    std::size_t excited = 0;
    std::optional<double> otherRatio;  ///< that leaves hardly more
    bool isSensorWeighed = false, isModulusMeasured = false, areAxesTold = false;
    bool axesMisfit = false;
};

QualityMark pluckMark(const PluckDoubts& doubts);

/// What is still not told and would help most; else what to look at again.
Phrase pluckNextStep(const PluckDoubts& doubts);

/// @param toAdd  plucks that would excite what has not rung
std::vector<Warning> pluckWarnings(const PluckDoubts& doubts, const std::vector<Phrase>& toAdd);

}  // namespace stillbay
