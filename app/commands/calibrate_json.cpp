// SPDX-License-Identifier: MIT
#include "app/commands/calibrate_json.h"

#include "app/commands/json_numbers.h"

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
            {"warnings", array(correction.warnings, [](const Warning& warning) {
                 return Json{{"code", warning.code}, {"text", english(warning.text)}};
             })}};
}

}  // namespace

std::string_view qualityWord(Quality quality)
{
    return quality == Quality::Good ? "good" : quality == Quality::Fair ? "fair" : "poor";
}

std::string calibrateJson(std::span<const Correction> corrections)
{
    std::vector<CorrectedValue> values;
    for (const Correction& correction : corrections)
        values.insert(values.end(), correction.values.begin(), correction.values.end());
    const Json json{{"format", "stillbay-calibrate"},
                    {"version", 1},
                    {"values", valuesJson(values)},
                    {"modes", Json::array()},
                    {"residual", number(corrections.back().residual)},
                    {"measurements", array(corrections, measurementJson)}};
    return json.dump(1) + '\n';
}

}  // namespace stillbay
