// SPDX-License-Identifier: MIT
#include "app/commands/search_json.h"

#include "app/commands/json_numbers.h"
#include "app/commands/level_json.h"

namespace stillbay {
namespace {

Json reasonJson(const std::optional<Constraint>& violated)
{
    return violated ? Json(constraintCode(*violated)) : Json(nullptr);
}

Json tubeJson(const TubeKind& tube)
{
    return {{"outer_diameter_mm", number(tube.outer_diameter_mm)},
            {"bore_mm", number(tube.bore_mm)},
            {"hardness_shore_a", number(tube.hardness_shore_a)},
            {"youngs_modulus_mpa", number(tube.youngs_modulus_mpa)}};
}

Json refusedJson(const Robustness& robust)
{
    Json refused = Json::object();
    for (std::size_t k = 0; k < robust.violations.size(); ++k)
        if (robust.violations[k] > 0)
            refused[std::string(constraintCode(static_cast<Constraint>(k)))] = robust.violations[k];
    return refused;
}

Json robustJson(const Robustness& robust)
{
    Json clean = nullptr;
    if (robust.clean)
        clean = {{"from", number(robust.clean->from)}, {"to", number(robust.clean->to)}};
    return {{"builds", robust.samples},
            {"p10_px", number(robust.p10_px)},
            {"p50_px", number(robust.p50_px)},
            {"p90_px", number(robust.p90_px)},
            {"clean_9_of_10", clean},
            {"share_clean_in_cruise", number(robust.cleanCruise)},
            {"not_feasible", refusedJson(robust)}};
}

Json candidateJson(const Candidate& candidate)
{
    const Evaluation& evaluation = candidate.evaluation;
    const auto figure = [&](double value) {
        return evaluation.feasible() ? number(value) : Json(nullptr);
    };
    Json json{{"free_length_mm", number(candidate.design.mounts.free_length_mm)},
              {"stretch", number(valueOf(candidate.design, Variable::Stretch))},
              {"elevation_deg", number(valueOf(candidate.design, Variable::Elevation))},
              {"points", hangingJson(candidate.design.mounts)},
              {"tube", tubeJson(candidate.design.tube)},
              {"wobble_px", figure(evaluation.cruise.full.worst_px)},
              {"wobble_empty_px", figure(evaluation.cruise.empty.worst_px)},
              {"worst_px", figure(evaluation.cruise.worst_px())},
              {"mean_px", figure(evaluation.cruise.mean_px())},
              {"reason", reasonJson(evaluation.violated)}};
    for (const Variable variable : kVariables)
        if (placesBay(variable))
            json[fieldOf(variable).key] = number(valueOf(candidate.design, variable));
    if (candidate.robust)
        json["robust"] = robustJson(*candidate.robust);
    return json;
}

// [[m] × n] of what one cell gives; null where it is not feasible.
template <class Give>
Json cells(const DesignMap& map, Give give)
{
    Json rows = Json::array();
    for (std::size_t i = 0; i < map.x.count; ++i) {
        Json row = Json::array();
        for (std::size_t j = 0; j < map.y.count; ++j)
            row.push_back(give(map.at(i, j)));
        rows.push_back(std::move(row));
    }
    return rows;
}

template <class Figure>
Json figures(const DesignMap& map, Figure figure)
{
    return cells(map, [&](const Evaluation& evaluation) {
        return evaluation.feasible() ? number(figure(evaluation)) : Json(nullptr);
    });
}

Json mapJson(const Recommendation& answer)
{
    if (!answer.map)
        return nullptr;
    const DesignMap& map = *answer.map;
    Json json{{fieldOf(map.x.variable).key, numbers(map.x.values())}};
    if (map.y.count > 1) {
        json[fieldOf(map.y.variable).key] = numbers(map.y.values());
    } else if (answer.mapBase.mounts.drilled()) {
        json["stretch"] = Json::array({nullptr});
        json["mean_stretch"] = Json::array();
        for (std::size_t i = 0; i < map.x.count; ++i)
            json["mean_stretch"].push_back(
                number(valueOf(map.design(answer.mapBase, i, 0), Variable::Stretch)));
    } else {
        json["stretch"] = numbers(map.y.values());
    }
    json["wobble_px"] = figures(map, [](const Evaluation& v) { return v.cruise.full.worst_px; });
    json["wobble_empty_px"] =
        figures(map, [](const Evaluation& v) { return v.cruise.empty.worst_px; });
    json["worst_px"] = figures(map, [](const Evaluation& v) { return v.cruise.worst_px(); });
    json["mean_px"] = figures(map, [](const Evaluation& v) { return v.cruise.mean_px(); });
    json["reason"] = cells(map, [](const Evaluation& v) { return reasonJson(v.violated); });
    json["elevation_deg"] = number(valueOf(answer.mapBase, Variable::Elevation));
    json["tube"] = tubeJson(answer.mapBase.tube);
    return json;
}

Json aloneJson(const VariableEffect& effect)
{
    const Evaluation& evaluation = effect.evaluation;
    return {
        {"variable", fieldOf(effect.variable).key},
        {"from", number(effect.from)},
        {"to", number(effect.to)},
        {"worst_px", evaluation.feasible() ? number(evaluation.cruise.worst_px()) : Json(nullptr)},
        {"reason", reasonJson(evaluation.violated)}};
}

Json craftJson(const Status& craft)
{
    return {{"flyable", craft.flyable},
            {"violated", array(craft.violated, [](const Warning& row) { return row.code; })}};
}

}  // namespace

std::string searchJson(const Recommendation& answer)
{
    const Json json{{"format", "stillbay-search"},
                    {"version", 1},
                    {"best", candidateJson(answer.best)},
                    {"candidates", array(answer.candidates, candidateJson)},
                    {"present", candidateJson(answer.present)},
                    {"alone", array(answer.alone, aloneJson)},
                    {"widen", array(answer.widen, [](Variable v) { return fieldOf(v).key; })},
                    {"map", mapJson(answer)},
                    {"craft", craftJson(answer.craft)},
                    {"judged", answer.evaluated}};
    return textOf(json);
}

}  // namespace stillbay
