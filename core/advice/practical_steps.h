// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/phrase.h"
#include "core/setup/setup.h"

#include <string>
#include <vector>

namespace stillbay {

/// One change that a builder can make in an evening: to one variable, by a step worth cutting for.
struct PracticalStep {
    std::string code;  ///< stable, "tubes-shorter"
    Phrase text;       ///< "Tubes 5 mm shorter: 15 mm free"
    Setup setup;       ///< the craft after it
};

/// The steps that a setup allows: hung level where it is not and can be; tubes 5 mm shorter and
/// longer (a plan only), 5 points more and less stretch (in a drilled craft by the free length), 10
/// Shore softer and harder, anchors 10° higher and lower (a plan only), half the unbalance, twice
/// the exposure, arms and their walls 1 mm thicker. What validate() refuses is left out. The tubes
/// come first, so that one Assessor keeps the airframe for as long as it can.
std::vector<PracticalStep> practicalSteps(const Setup& setup);

}  // namespace stillbay
