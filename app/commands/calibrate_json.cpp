// SPDX-License-Identifier: MIT
#include "app/commands/calibrate_json.h"

#include "app/commands/json_numbers.h"
#include "core/suspension/motion_text.h"

namespace stillbay {
namespace {

Json valuesJson(const std::vector<CorrectedValue>& values)
{
    return array(values, [](const CorrectedValue& value) {
        return Json{{"key", value.key},
                    {"before", number(value.before)},
                    {"after", number(value.after)},
                    {"spread", number(value.spread)}};
    });
}

Json measurementJson(const Correction& correction)
{
    return {{"name", english(correction.measurement)},
            {"quality", std::string(qualityWord(correction.mark.quality))},
            {"reason", english(correction.mark.reason)},
            {"residual", number(correction.residual)},
            {"residual_before", number(correction.residualBefore)},
            {"warnings", warningsJson(correction.warnings)}};
}

Json modesJson(const PluckAnswer* pluck)
{
    if (!pluck)
        return Json::array();
    return array(pluck->modes, [&](const PluckedMode& mode) {
        const DecayingMode* const measured =
            mode.measured ? &pluck->measured[*mode.measured] : nullptr;
        return Json{{"measured_hz", measured ? number(measured->frequency_hz) : Json(nullptr)},
                    {"measured_loss", measured ? number(measured->lossFactor) : Json(nullptr)},
                    {"before_hz", number(mode.before_hz)},
                    {"before_loss", number(mode.beforeLoss)},
                    {"after_hz", number(mode.after_hz)},
                    {"after_loss", number(mode.afterLoss)},
                    {"share", number(mode.share)},
                    {"motion", english(motionText(mode.motion))}};
    });
}

}  // namespace

std::string_view qualityWord(Quality quality)
{
    return quality == Quality::Good ? "good" : quality == Quality::Fair ? "fair" : "poor";
}

std::string calibrateJson(std::span<const Correction> corrections, const PluckAnswer* pluck)
{
    std::vector<CorrectedValue> values;
    for (const Correction& correction : corrections)
        values.insert(values.end(), correction.values.begin(), correction.values.end());
    Json json{{"format", "stillbay-calibrate"},
              {"version", 1},
              {"values", valuesJson(values)},
              {"modes", modesJson(pluck)},
              {"residual", number(corrections.back().residual)},
              {"measurements", array(corrections, measurementJson)}};
    for (const Correction& correction : corrections)
        if (correction.throttleCurve) {
            json["throttle_curve"] = *correction.throttleCurve;
            json["throttle_curve_spread"] = number(correction.throttleCurveSpread);
        }
    return textOf(json);
}

}  // namespace stillbay
