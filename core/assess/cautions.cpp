// SPDX-License-Identifier: MIT
#include "core/assess/cautions.h"

#include "core/assess/crossings.h"
#include "core/assess/words.h"
#include "core/base/units.h"
#include "core/response/rest_figures.h"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>

namespace stillbay {
namespace {

using Warnings = std::vector<Warning>;

// "1, 2 and 4"
Phrase listed(const std::vector<std::size_t>& tubes)
{
    std::vector<Phrase> numbers;
    for (const std::size_t tube : tubes)
        numbers.push_back(phrase("%1", std::to_string(tube + 1)));
    return listOf(std::move(numbers));
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

void overStretchCaution(double limit, const RestFigures& rest, Warnings& out)
{
    const auto over = tubesWhere(rest, [limit](const TubeAtRest& t) { return t.stretch > limit; });
    if (over.empty())
        return;
    double most = 0.0;
    for (const std::size_t i : over)
        most = std::max(most, rest.tubes[i].stretch);
    const Number stretch = fixed(most, 2), load = rounded(rest.load_factor, 3);
    out.push_back(
        {rest.load_factor > 1 ? "over-stretched-3g" : "over-stretched",
         over.size() == 1
             ? phrase("Tube %1 is stretched to %2 times the free length at %3 g, beyond the "
                      "tube's limit of %4: use a longer or stiffer tube, or less stretch.",
                      listed(over), stretch, load, fixed(limit, 2))
             : phrase("Tubes %1 are stretched to %2 times the free length at %3 g, beyond the "
                      "tube's limit of %4: use a longer or stiffer tube, or less stretch.",
                      listed(over), stretch, load, fixed(limit, 2))});
}

void tubeCautions(const CautionInputs& in, const RestFigures& rest, Warnings& out)
{
    const Number load = rounded(rest.load_factor, 3);
    const auto slack =
        tubesWhere(rest, [](const TubeAtRest& t) { return t.state == TubeState::Slack; });
    const auto buckled =
        tubesWhere(rest, [](const TubeAtRest& t) { return t.state == TubeState::Buckled; });
    if (!slack.empty())
        out.push_back(
            {"tube-slack",
             slack.size() == 1
                 ? phrase("Tube %1 is pushed together instead of stretched at %2 g: stretch more, "
                          "or raise the anchors less steeply.",
                          listed(slack), load)
                 : phrase("Tubes %1 are pushed together instead of stretched at %2 g: stretch "
                          "more, or raise the anchors less steeply.",
                          listed(slack), load)});
    if (!buckled.empty())
        out.push_back({"tube-buckled",
                       buckled.size() == 1
                           ? phrase("Tube %1 is buckled sideways at %2 g, so the numbers of this "
                                    "tune do not hold: stretch the tubes more.",
                                    listed(buckled), load)
                           : phrase("Tubes %1 are buckled sideways at %2 g, so the numbers of "
                                    "this tune do not hold: stretch the tubes more.",
                                    listed(buckled), load)});
    overStretchCaution(in.setup.tube.max_stretch, rest, out);
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
    const Number degrees = fixed(most / unit::deg, 0), limit = fixed(kLargestBend_deg, 0);
    out.push_back(
        {"tube-bent",
         bent.size() == 1
             ? phrase("Tube %1 is bent by up to %2° at rest, beyond the %3° that the computation "
                      "covers: add tubes, spread them or stretch them more.",
                      listed(bent), degrees, limit)
             : phrase("Tubes %1 are bent by up to %2° at rest, beyond the %3° that the "
                      "computation covers: add tubes, spread them or stretch them more.",
                      listed(bent), degrees, limit)});
}

void singleTubeCaution(const CautionInputs& in, Warnings& out)
{
    if (in.setup.mounts.points.size() > 1)
        return;
    const ModeFigures& lowest = in.assessment.bench.front();
    out.push_back({"single-tube", phrase("One tube alone holds the bay; it is all but free where "
                                         "the %1 (%2 Hz): use three tubes or more.",
                                         lowest.words, fixed(lowest.frequency_hz, 1))});
}

void travelCaution(const CautionInputs& in, Warnings& out)
{
    if (!in.assessment.rest_3g) {
        out.push_back({"no-rest-3g", phrase("At 3 g the bay finds no stable rest: stretch the "
                                            "tubes more, or use a stiffer tube.")});
        return;
    }
    const double travel_mm = travelBetween(in.setup.bay.parts, in.assessment.bay.centre,
                                           in.assessment.rest, *in.assessment.rest_3g) /
                             unit::mm;
    if (travel_mm > in.setup.bay.travel_mm)
        out.push_back(
            {"travel", phrase("In a 3 g pull-up the bay moves %1 mm and hits after %2 mm: use a "
                              "stiffer or shorter tube, or leave more room.",
                              fixed(travel_mm, 1), fixed(in.setup.bay.travel_mm, 1))});
}

void steeringCaution(const CautionInputs& in, Warnings& out)
{
    const ModeFigures& lowest = in.assessment.bench.front();
    if (lowest.frequency_hz < kSteering_hz)
        out.push_back(
            {"swings-with-craft",
             phrase("The %1 at %2 Hz on the bench: below %3 Hz the craft's own steering swings "
                    "the bay; use a shorter or stiffer tube.",
                    lowest.words, fixed(lowest.frequency_hz, 1), fixed(kSteering_hz, 0))});
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

void meeting(const CautionInputs& in, int order, const Resonance& resonance, Warnings& out)
{
    const SpeedSpan cruise = cruiseSpeeds(in);
    const double speed = resonance.frequency_hz / order;
    if (speed < cruise.low || speed > cruise.high)
        return;
    const auto throttle = throttleForSpeed(in.craft.drive, speed, in.craft.fullVoltage);
    if (throttle)
        out.push_back({resonance.ofArms ? "order-meets-arm" : "order-meets-mode",
                       phrase("At %1 % throttle the %2 meets %3 Hz, where the %4, inside the "
                              "cruise window.",
                              fixed(100 * *throttle, 0), orderInWords(order, in.craft.blades),
                              fixed(resonance.frequency_hz, 0), resonance.words)});
}

void orderCautions(const CautionInputs& in, Warnings& out)
{
    std::vector<int> orders{1};
    for (std::size_t h = 1; h <= in.craft.bladePass.size(); ++h)
        orders.push_back(static_cast<int>(h) * in.craft.blades);
    for (const int order : orders)
        for (const Resonance& resonance : resonances(in.assessment))
            meeting(in, order, resonance, out);
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
             phrase("A tube's own resonance at %1 Hz lies below the highest shake in cruise "
                    "(%2 Hz): there the tubes pass more than computed.",
                    fixed(*lowest_hz, 0), fixed(highest_hz, 0))});
}

void driveCautions(const CautionInputs& in, Warnings& out)
{
    const HoverFigures& hover = in.assessment.hover;
    if (!hover.throttle_full)
        out.push_back(
            {"cannot-hover", phrase("Even the full pack cannot hold this craft in the air: check "
                                    "motor, propeller and masses.")});
    else if (!hover.throttle_empty)
        out.push_back(
            {"cannot-hover", phrase("The empty pack cannot hold this craft in the air: land early, "
                                    "or check motor, propeller and masses.")});
    const PropellerFigures& propeller = in.craft.propeller;
    if (!propeller.thrust_estimated && !propeller.power_estimated)
        return;
    out.push_back(
        {"estimated-coefficient",
         phrase("The propeller's %1 estimated from pitch, diameter and blades (±25 %): enter "
                "measured values to trust speeds and hover.",
                !propeller.power_estimated    ? phrase("thrust coefficient is")
                : !propeller.thrust_estimated ? phrase("power coefficient is")
                                              : phrase("thrust and power coefficients are"))});
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
