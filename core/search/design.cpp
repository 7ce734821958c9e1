// SPDX-License-Identifier: MIT
#include "core/search/design.h"

#include "core/base/check.h"
#include "core/setup/fields.h"
#include "core/setup/mount_layout.h"
#include "core/tube/rubber.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string_view>
#include <utility>

namespace stillbay {
namespace {

template <class Owner>
KnobField fieldNamed(std::string_view key)
{
    const auto fields = fieldsOf<Owner>();
    const auto field = std::find_if(fields.begin(), fields.end(),
                                    [key](const Field<Owner>& f) { return f.key == key; });
    check(field != fields.end(), "knob: a key of the field table");
    return {field->key, field->label, field->unit,    field->min,
            field->max, field->step,  field->decimals};
}

double meanElevation_deg(const Mounts& mounts)
{
    double sum = 0.0;
    for (const MountPoint& point : mounts.points) {
        const Triple anchor = anchorOf(mounts, point);
        const double x = anchor[0] - point.bay_mm[0], y = anchor[1] - point.bay_mm[1],
                     z = anchor[2] - point.bay_mm[2];
        sum += point.anchor_mm ? std::atan2(z, std::hypot(x, y)) * 180 / std::numbers::pi
                               : point.elevation_deg;
    }
    return mounts.points.empty() ? 0.0 : sum / static_cast<double>(mounts.points.size());
}

void turnHardness(TubeStock& tube, double value)
{
    if (tube.youngs_modulus_mpa)
        *tube.youngs_modulus_mpa *=
            youngsModulusFromShoreA(value) / youngsModulusFromShoreA(tube.hardness_shore_a);
    tube.hardness_shore_a = value;
}

void turnElevation(Mounts& mounts, double value)
{
    const double by_deg = value - meanElevation_deg(mounts);
    for (MountPoint& point : mounts.points)
        point.elevation_deg += by_deg;
}

}  // namespace

Design designOf(const Setup& setup)
{
    return {setup.tube, setup.mounts};
}

Setup withDesign(Setup setup, const Design& design)
{
    setup.tube = design.tube;
    setup.mounts = design.mounts;
    return setup;
}

KnobField fieldOf(Knob knob)
{
    switch (knob) {
        case Knob::FreeLength:
            return fieldNamed<Mounts>("free_length_mm");
        case Knob::Stretch:
            return fieldNamed<Mounts>("stretch");
        case Knob::Elevation:
            return fieldNamed<MountPoint>("elevation_deg");
        case Knob::Hardness:
            return fieldNamed<TubeStock>("hardness_shore_a");
        case Knob::OuterDiameter:
            return fieldNamed<TubeStock>("outer_diameter_mm");
    }
    check(false, "knob: one of the five");
    return {};
}

bool canTurn(const Mounts& mounts, Knob knob)
{
    return !mounts.drilled() || (knob != Knob::Stretch && knob != Knob::Elevation);
}

double valueOf(const Design& design, Knob knob)
{
    switch (knob) {
        case Knob::FreeLength:
            return design.mounts.free_length_mm;
        case Knob::Stretch:
            return drawnStretch(design.mounts);
        case Knob::Elevation:
            return meanElevation_deg(design.mounts);
        case Knob::Hardness:
            return design.tube.hardness_shore_a;
        case Knob::OuterDiameter:
            return design.tube.outer_diameter_mm;
    }
    check(false, "knob: one of the five");
    return 0.0;
}

void turn(Design& design, Knob knob, double value)
{
    check(canTurn(design.mounts, knob), "turn: a knob that is free");
    switch (knob) {
        case Knob::FreeLength:
            design.mounts.free_length_mm = value;
            break;
        case Knob::Stretch:
            design.mounts.stretch = value;
            break;
        case Knob::Elevation:
            turnElevation(design.mounts, value);
            break;
        case Knob::Hardness:
            turnHardness(design.tube, value);
            break;
        case Knob::OuterDiameter:
            design.tube.outer_diameter_mm = value;
            break;
    }
}

KnobRange usualRange(const Design& design, Knob knob)
{
    const double value = valueOf(design, knob);
    const TubeStock& tube = design.tube;
    double from = 0.0, to = 0.0;
    switch (knob) {
        case Knob::FreeLength:
            from = design.mounts.drilled() ? meanDistance_mm(design.mounts) / tube.max_stretch
                                           : std::max(0.5 * value, tube.outer_diameter_mm);
            to = design.mounts.drilled() ? meanDistance_mm(design.mounts) : 2 * value;
            from = std::ceil(from);
            to = std::floor(to);
            break;
        case Knob::Stretch:
            from = 1.0;
            to = tube.max_stretch;
            break;
        case Knob::Elevation:
            from = 0.0;
            to = 60.0;
            break;
        case Knob::Hardness:
            from = 20.0;
            to = 80.0;
            break;
        case Knob::OuterDiameter:
            from = tube.bore_mm + 1.0;
            to = 1.5 * value;
            break;
    }
    const KnobField field = fieldOf(knob);
    return {knob, std::clamp(std::min(from, value), field.min, field.max),
            std::clamp(std::max(to, value), field.min, field.max)};
}

StockTube stockOf(const TubeStock& tube)
{
    return {tube.outer_diameter_mm, tube.bore_mm, tube.hardness_shore_a};
}

void takeTube(Design& design, const StockTube& stock)
{
    if (stockOf(design.tube) == stock)
        return;
    design.tube.outer_diameter_mm = stock.outer_diameter_mm;
    design.tube.bore_mm = stock.bore_mm;
    design.tube.hardness_shore_a = stock.hardness_shore_a;
    design.tube.youngs_modulus_mpa.reset();
}

}  // namespace stillbay
