// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/assess/constraints.h"
#include "core/craft/craft.h"
#include "core/response/bay_at_rest.h"

#include <vector>

namespace stillbay {

/// What the warnings are drawn from; the assessment is complete but for its warnings.
struct WarningInputs {
    const Setup& setup;
    const ExcitedAirframe& craft;
    const BayAtRest& bay;
    const ConstraintInputs& constraints;
    const Assessment& assessment;
};

/// Everything the builder should know before trusting or flying this tune. Codes are stable:
/// single-tube, tube-slack, tube-buckled, tube-bent, rest-shift, over-stretched, over-stretched-3g,
/// no-rest-3g, travel, swings-with-craft, order-meets-mode, order-meets-arm, tube-rings,
/// hardness-outside, cannot-hover, propellers-touch, cruise-without-hover, estimated-coefficient.
std::vector<Warning> warningsOf(const WarningInputs& inputs);

}  // namespace stillbay
