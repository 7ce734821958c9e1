// SPDX-License-Identifier: MIT
#include "core/assess/cautions.h"

#include "core/assess/words.h"
#include "core/base/format.h"
#include "core/base/rotation.h"
#include "core/base/units.h"

#include <algorithm>
#include <optional>

namespace stillbay {
namespace {

// Below this a craft's own steering moves swing the bay; common practice, no source.
constexpr double kSteering_hz = 8.0;

// Beyond this the beam's small end angles no longer hold: sin and angle differ by 2 %.
constexpr double kLargestBend_deg = 20.0;

using Warnings = std::vector<Warning>;

std::string listed(const std::vector<std::size_t>& tubes)
{
    std::string text = tubes.size() == 1 ? "Tube " : "Tubes ";
    for (std::size_t i = 0; i < tubes.size(); ++i)
        text += (i == 0                  ? ""
                 : i + 1 == tubes.size() ? " and "
                                         : ", ") +
                std::to_string(tubes[i] + 1);
    return text + (tubes.size() == 1 ? " is" : " are");
}

template <class Predicate>
std::vector<std::size_t> tubesWhere(const RestFigures& rest, Predicate predicate)
{
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < rest.tubes.size(); ++i)
        if (predicate(rest.tubes[i]))
            found.push_back(i);
    return found;
}

void tubeCautions(const CautionInputs& in, const RestFigures& rest, Warnings& out)
{
    const std::string when = formatted("at %g g", rest.load_factor);
    const auto slack =
        tubesWhere(rest, [](const TubeAtRest& t) { return t.state == TubeState::Slack; });
    const auto buckled =
        tubesWhere(rest, [](const TubeAtRest& t) { return t.state == TubeState::Buckled; });
    if (!slack.empty())
        out.push_back({"tube-slack", listed(slack) + " pushed together instead of stretched " +
                                         when +
                                         ": stretch more, or raise the anchors less steeply."});
    if (!buckled.empty())
        out.push_back({"tube-buckled",
                       listed(buckled) + " buckled sideways " + when +
                           ", so the numbers of this tune do not hold: stretch the tubes more."});

    const double limit = in.setup.tube.max_stretch;
    const auto over = tubesWhere(rest, [limit](const TubeAtRest& t) { return t.stretch > limit; });
    if (!over.empty()) {
        double most = 0.0;
        for (const std::size_t i : over)
            most = std::max(most, rest.tubes[i].stretch);
        out.push_back(
            {rest.load_factor > 1 ? "over-stretched-3g" : "over-stretched",
             listed(over) + formatted(" stretched to %.2f times the free length ", most) + when +
                 formatted(", beyond the tube's limit of %.2f: use a longer or stiffer tube, "
                           "or less stretch.",
                           limit)});
    }
}

void bendCaution(const RestFigures& rest, Warnings& out)
{
    const auto bent =
        tubesWhere(rest, [](const TubeAtRest& t) { return t.bend > kLargestBend_deg * unit::deg; });
    if (bent.empty())
        return;
    double most = 0.0;
    for (const std::size_t i : bent)
        most = std::max(most, rest.tubes[i].bend);
    out.push_back(
        {"tube-bent",
         listed(bent) + formatted(" bent by up to %.0f° at rest, beyond the %.0f° that the "
                                  "computation covers: add tubes, spread them or stretch "
                                  "them more.",
                                  most / unit::deg, kLargestBend_deg)});
}

void singleTubeCaution(const CautionInputs& in, Warnings& out)
{
    if (in.setup.mounts.points.size() > 1)
        return;
    const ModeFigures& lowest = in.assessment.bench.front();
    out.push_back(
        {"single-tube",
         formatted("One tube alone holds the bay; it is all but free where the %s (%.1f Hz): "
                   "use three tubes or more.",
                   lowest.words.c_str(), lowest.frequency_hz)});
}

Vector3d corner(const Part& part, int index)
{
    Vector3d p;
    for (Eigen::Index axis = 0; axis < 3; ++axis) {
        const auto k = static_cast<std::size_t>(axis);
        const double half = 0.5 * part.size_mm[k];
        p[axis] = part.centre_mm[k] + ((index >> axis) & 1 ? half : -half);
    }
    return p * unit::mm;
}

// How far the farthest corner of the bay goes from its rest at 1 g to its rest at 3 g [m].
double travelBetween(const Setup& setup, const Vector3d& centre, const RestFigures& from,
                     const RestFigures& to)
{
    const Matrix3d R_from = rotationFromVector(from.rotation),
                   R_to = rotationFromVector(to.rotation);
    double farthest = 0.0;
    for (const Part& part : setup.bay.parts)
        for (int index = 0; index < 8; ++index) {
            const Vector3d p = corner(part, index) - centre;
            farthest = std::max(farthest, (to.shift - from.shift + (R_to - R_from) * p).norm());
        }
    return farthest;
}

void travelCaution(const CautionInputs& in, Warnings& out)
{
    if (!in.assessment.rest_3g) {
        out.push_back(
            {"no-rest-3g",
             "At 3 g the bay finds no stable rest: stretch the tubes more, or use a stiffer "
             "tube."});
        return;
    }
    const double travel_mm = travelBetween(in.setup, in.assessment.bay.centre, in.assessment.rest,
                                           *in.assessment.rest_3g) /
                             unit::mm;
    if (travel_mm > in.setup.bay.travel_mm)
        out.push_back(
            {"travel", formatted("In a 3 g pull-up the bay moves %.1f mm and hits after "
                                 "%.1f mm: use a stiffer or shorter tube, or leave more room.",
                                 travel_mm, in.setup.bay.travel_mm)});
}

void steeringCaution(const CautionInputs& in, Warnings& out)
{
    const ModeFigures& lowest = in.assessment.bench.front();
    if (lowest.frequency_hz < kSteering_hz)
        out.push_back(
            {"swings-with-craft",
             formatted("The %s at %.1f Hz on the bench: below %.0f Hz the craft's own steering "
                       "swings the bay; use a shorter or stiffer tube.",
                       lowest.words.c_str(), lowest.frequency_hz, kSteering_hz)});
}

// Speeds [rev/s] over the cruise window at the full pack.
struct SpeedSpan {
    double low, high;
};

SpeedSpan cruiseSpeeds(const CautionInputs& in)
{
    const auto [from, to] = in.setup.flight.cruise_throttle;
    return {rotorSpeed(in.craft.drive, from, in.craft.fullVoltage),
            rotorSpeed(in.craft.drive, to, in.craft.fullVoltage)};
}

void meeting(const CautionInputs& in, int order, double f_hz, const char* code,
             const std::string& what, Warnings& out)
{
    const SpeedSpan cruise = cruiseSpeeds(in);
    const double speed = f_hz / order;
    if (speed < cruise.low || speed > cruise.high)
        return;
    const auto throttle = throttleForSpeed(in.craft.drive, speed, in.craft.fullVoltage);
    if (throttle)
        out.push_back(
            {code, formatted("At %.0f %% throttle the %s meets %s (%.0f Hz), inside the "
                             "cruise window.",
                             100 * *throttle, orderInWords(order, in.craft.blades).c_str(),
                             what.c_str(), f_hz)});
}

void orderCautions(const CautionInputs& in, Warnings& out)
{
    std::vector<int> orders{1};
    for (std::size_t h = 1; h <= in.craft.bladePass.size(); ++h)
        orders.push_back(static_cast<int>(h) * in.craft.blades);
    const Assessment& a = in.assessment;
    for (const int order : orders) {
        for (const ModeFigures& mode : a.flight)
            meeting(in, order, mode.frequency_hz, "order-meets-mode",
                    "the mode in which the " + mode.words, out);
        if (a.arm_vertical_hz == a.arm_horizontal_hz) {
            meeting(in, order, a.arm_vertical_hz, "order-meets-arm", "the swinging arms", out);
            continue;
        }
        meeting(in, order, a.arm_vertical_hz, "order-meets-arm", "the arms swinging up and down",
                out);
        meeting(in, order, a.arm_horizontal_hz, "order-meets-arm", "the arms swinging sideways",
                out);
    }
}

void ringingCaution(const CautionInputs& in, Warnings& out)
{
    const Tube& tube = in.hung.suspension.tube;
    std::optional<double> lowest_hz;
    for (const TubeAtRest& t : in.assessment.rest.tubes)
        if (const auto own = ownResonance_hz(tube, t.stretch * tube.freeLength, t.tension))
            lowest_hz = std::min(lowest_hz.value_or(*own), *own);
    const double highest_hz =
        std::max<double>(1.0, static_cast<double>(in.craft.bladePass.size()) * in.craft.blades) *
        cruiseSpeeds(in).high;
    if (lowest_hz && *lowest_hz < highest_hz)
        out.push_back(
            {"tube-rings",
             formatted("A tube's own resonance at %.0f Hz lies below the highest shake in "
                       "cruise (%.0f Hz): there the tubes pass more than computed.",
                       *lowest_hz, highest_hz)});
}

void driveCautions(const CautionInputs& in, Warnings& out)
{
    const HoverFigures& hover = in.assessment.hover;
    if (!hover.throttle_full)
        out.push_back({"cannot-hover",
                       "Even the full pack cannot hold this craft in the air: check "
                       "motor, propeller and masses."});
    else if (!hover.throttle_empty)
        out.push_back({"cannot-hover",
                       "The empty pack cannot hold this craft in the air: land early, "
                       "or check motor, propeller and masses."});
    const PropellerFigures& propeller = in.craft.propeller;
    if (!propeller.thrust_estimated && !propeller.power_estimated)
        return;
    std::string which = propeller.thrust_estimated ? "thrust" : "power";
    if (propeller.thrust_estimated && propeller.power_estimated)
        which = "thrust and power";
    out.push_back({"estimated-coefficient",
                   "The propeller's " + which +
                       " coefficient is estimated from pitch, diameter and blades (±25 %): enter "
                       "measured values to trust speeds and hover."});
}

}  // namespace

std::vector<Warning> cautions(const CautionInputs& inputs)
{
    Warnings out;
    singleTubeCaution(inputs, out);
    tubeCautions(inputs, inputs.assessment.rest, out);
    bendCaution(inputs.assessment.rest, out);
    if (inputs.assessment.rest_3g)
        tubeCautions(inputs, *inputs.assessment.rest_3g, out);
    travelCaution(inputs, out);
    steeringCaution(inputs, out);
    orderCautions(inputs, out);
    ringingCaution(inputs, out);
    driveCautions(inputs, out);
    return out;
}

}  // namespace stillbay
