// SPDX-License-Identifier: MIT
#include "app/commands/report_json.h"

#include "app/commands/json_numbers.h"
#include "app/commands/uncertainty_report.h"
#include "core/base/units.h"

namespace stillbay {
namespace {

Json vectorJson(const Eigen::VectorXd& v, double unit = 1.0)
{
    return array(v, [unit](double x) { return number(x / unit); });
}

Json massJson(const MassFigures& body)
{
    return {{"mass_kg", number(body.mass)},
            {"centre_mm", vectorJson(body.centre, unit::mm)},
            {"inertia_kg_m2", array(std::array{0, 1, 2}, [&](int row) {
                 return vectorJson(body.inertia.row(row).transpose());
             })}};
}

Json tubeJson(const TubeFigures& tube)
{
    return {{"youngs_modulus_mpa", number(tube.youngs_modulus / unit::mpa)},
            {"shear_modulus_mpa", number(tube.shear_modulus / unit::mpa)},
            {"tension_n", number(tube.tension)},
            {"axial_stiffness_n_per_m", number(tube.axial_stiffness)},
            {"lateral_stiffness_n_per_m", number(tube.lateral_stiffness)},
            {"own_resonance_hz", number(tube.own_resonance_hz)}};
}

Json restJson(const RestFigures& rest)
{
    return {{"shift_mm", vectorJson(rest.shift, unit::mm)},
            {"rotation_deg", vectorJson(rest.rotation, unit::deg)},
            {"tubes", array(rest.tubes, [](const TubeAtRest& t) {
                 return Json{{"stretch", number(t.stretch)},
                             {"tension_n", number(t.tension)},
                             {"elevation_deg", number(t.elevation / unit::deg)}};
             })}};
}

Json modesJson(const std::array<ModeFigures, 6>& modes)
{
    return array(modes, [](const ModeFigures& mode) {
        return Json{{"frequency_hz", number(mode.frequency_hz)},
                    {"loss_factor", number(mode.loss_factor)},
                    {"motion", vectorJson(mode.motion)},
                    {"energy", vectorJson(mode.energy)},
                    {"words", english(mode.text)}};
    });
}

Json elasticCentreJson(const ElasticCentre& centre)
{
    return {{"roll_height_mm", number(centre.rollHeight / unit::mm)},
            {"pitch_height_mm", number(centre.pitchHeight / unit::mm)},
            {"heave_ahead_mm", number(centre.heaveAhead / unit::mm)},
            {"heave_left_mm", number(centre.heaveLeft / unit::mm)},
            {"from_centre_of_mass_mm", vectorJson(centre.p_BE, unit::mm)}};
}

Json throttleJson(const ThrottlePoint& point)
{
    return {{"throttle", number(point.throttle)},
            {"speed_rpm", number(point.speed_rpm)},
            {"thrust_per_motor_n", number(point.thrust_per_motor)},
            {"wobble_px", number(point.wobble_px)},
            {"wobble_worst_px", number(point.wobble_worst_px)},
            {"frame_shake_px", number(point.frame_shake_px)},
            {"orders", array(point.orders, [](const OrderPoint& order) {
                 return Json{{"order", order.order},
                             {"frequency_hz", number(order.frequency_hz)},
                             {"wobble_px", number(order.wobble_px)}};
             })}};
}

Json cruiseJson(const std::optional<CruiseFigures>& cruise)
{
    if (!cruise)
        return nullptr;
    return {{"worst_px", number(cruise->full.worst_px)},
            {"worst_throttle", number(cruise->full.worst_throttle)},
            {"mean_px", number(cruise->full.mean_px)},
            {"worst_empty_px", number(cruise->empty.worst_px)},
            {"worst_empty_throttle", number(cruise->empty.worst_throttle)}};
}

const char* gradeName(Grade grade)
{
    switch (grade) {
        case Grade::Clean:
            return "clean";
        case Grade::Faint:
            return "faint";
        case Grade::Bad:
            break;
    }
    return "bad";
}

Json statusJson(const Status& status)
{
    return {{"flyable", status.flyable},
            {"violated", array(status.violated, [](const Warning& row) { return row.code; })},
            {"grade", status.grade ? Json(gradeName(*status.grade)) : Json()}};
}

Json withUncertainty(Json report, const Uncertainty* uncertainty)
{
    if (uncertainty)
        report["uncertainty"] = uncertaintyJson(*uncertainty);
    return report;
}

}  // namespace

std::string reportJson(const Assessment& a, const Uncertainty* uncertainty)
{
    const Json json{{"format", "stillbay-report"},
                    {"version", 1},
                    {"masses", {{"bay", massJson(a.bay)}, {"airframe", massJson(a.airframe)}}},
                    {"tube", tubeJson(a.tube)},
                    {"rest", restJson(a.rest)},
                    {"modes",
                     {{"bench", modesJson(a.bench)},
                      {"flight", modesJson(a.flight)},
                      {"bench_decoupling", number(a.bench_decoupling)}}},
                    {"elastic_centre", elasticCentreJson(a.elastic_centre)},
                    {"arm",
                     {{"vertical_hz", number(a.arm_vertical_hz)},
                      {"horizontal_hz", number(a.arm_horizontal_hz)}}},
                    {"transmissibility",
                     {{"frequency_hz", numbers(a.transmissibility.frequency_hz)},
                      {"x", numbers(a.transmissibility.x)},
                      {"y", numbers(a.transmissibility.y)},
                      {"z", numbers(a.transmissibility.z)},
                      {"roll", numbers(a.transmissibility.roll)},
                      {"pitch", numbers(a.transmissibility.pitch)},
                      {"yaw", numbers(a.transmissibility.yaw)}}},
                    {"hover",
                     {{"speed_rpm", number(a.hover.speed_rpm)},
                      {"thrust_per_motor_n", number(a.hover.thrust_per_motor)},
                      {"throttle_full", number(a.hover.throttle_full)},
                      {"throttle_empty", number(a.hover.throttle_empty)},
                      {"balance_grade_mm_per_s", number(a.hover.balance_grade_mm_s)}}},
                    {"throttle", array(a.throttle, throttleJson)},
                    {"ranges", array(a.ranges,
                                     [](const ThrottleRange& range) {
                                         return Json{{"from", number(range.from)},
                                                     {"to", number(range.to)},
                                                     {"grade", gradeName(range.grade)}};
                                     })},
                    {"cruise", cruiseJson(a.cruise)},
                    {"status", statusJson(a.status)},
                    {"warnings", array(a.warnings, [](const Warning& warning) {
                         return Json{{"code", warning.code}, {"text", english(warning.text)}};
                     })}};
    return textOf(withUncertainty(json, uncertainty));
}

}  // namespace stillbay
