// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/check.h"
#include "core/base/phrase.h"
#include "core/base/result.h"

#include <nlohmann/json.hpp>

#include <cmath>
#include <optional>
#include <string>
#include <vector>

/// What the commands write JSON with: no number that is not finite gets out.
namespace stillbay {

using Json = nlohmann::ordered_json;

inline Json number(double value)
{
    check(std::isfinite(value), "json: a number is not finite");
    return value;
}

/// null where there is none.
inline Json number(const std::optional<double>& value)
{
    return value ? number(*value) : Json(nullptr);
}

template <class Range, class Convert>
Json array(const Range& range, Convert convert)
{
    Json result = Json::array();
    for (const auto& entry : range)
        result.push_back(convert(entry));
    return result;
}

/// Each as `code` and `text`.
inline Json warningsJson(const std::vector<Warning>& warnings)
{
    return array(warnings, [](const Warning& warning) {
        return Json{{"code", warning.code}, {"text", english(warning.text)}};
    });
}

/// The text of an object, with its end of line; what is not UTF-8 in it becomes U+FFFD.
inline std::string textOf(const Json& json)
{
    return json.dump(1, ' ', false, Json::error_handler_t::replace) + '\n';
}

inline Json numbers(const std::vector<double>& values)
{
    return array(values, [](double v) { return number(v); });
}

}  // namespace stillbay
