// SPDX-License-Identifier: MIT
#include "core/search/design.h"

#include "core/base/check.h"
#include "core/craft/craft.h"
#include "core/response/level.h"
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
VariableField fieldNamed(std::string_view key)
{
    const auto fields = fieldsOf<Owner>();
    const auto field = std::find_if(fields.begin(), fields.end(),
                                    [key](const Field<Owner>& f) { return f.key == key; });
    check(field != fields.end(), "variable: a key of the field table");
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

void setHardness(TubeKind& tube, double value)
{
    if (tube.youngs_modulus_mpa)
        *tube.youngs_modulus_mpa *=
            youngsModulusFromShoreA(value) / youngsModulusFromShoreA(tube.hardness_shore_a);
    tube.hardness_shore_a = value;
}

void setElevation(Mounts& mounts, double value)
{
    const double by_deg = value - meanElevation_deg(mounts);
    for (MountPoint& point : mounts.points)
        point.elevation_deg += by_deg;
}

}  // namespace

VariableField fieldOf(Variable variable)
{
    switch (variable) {
        case Variable::FreeLength:
            return fieldNamed<Mounts>("free_length_mm");
        case Variable::Stretch:
            return fieldNamed<Mounts>("stretch");
        case Variable::Elevation:
            return fieldNamed<MountPoint>("elevation_deg");
        case Variable::Hardness:
            return fieldNamed<TubeKind>("hardness_shore_a");
        case Variable::OuterDiameter:
            return fieldNamed<TubeKind>("outer_diameter_mm");
    }
    check(false, "variable: one of the five");
    return {};
}

double grainOf(Variable variable)
{
    switch (variable) {
        case Variable::FreeLength:
            return 0.5;
        case Variable::Stretch:
            return 0.005;
        case Variable::Elevation:
            return 0.5;
        case Variable::Hardness:
            return 1.0;
        case Variable::OuterDiameter:
            return 0.1;
    }
    check(false, "variable: one of the five");
    return 1.0;
}

bool canSet(const Mounts& mounts, Variable variable)
{
    return !mounts.drilled() || (variable != Variable::Stretch && variable != Variable::Elevation);
}

double valueOf(const Design& design, Variable variable)
{
    switch (variable) {
        case Variable::FreeLength:
            return design.mounts.free_length_mm;
        case Variable::Stretch:
            return drawnStretch(design.mounts);
        case Variable::Elevation:
            return meanElevation_deg(design.mounts);
        case Variable::Hardness:
            return design.tube.hardness_shore_a;
        case Variable::OuterDiameter:
            return design.tube.outer_diameter_mm;
    }
    check(false, "variable: one of the five");
    return 0.0;
}

void setValue(Design& design, Variable variable, double value)
{
    check(canSet(design.mounts, variable), "setValue: a variable that is free");
    switch (variable) {
        case Variable::FreeLength:
            setFreeLength(design.mounts, value);
            break;
        case Variable::Stretch:
            setStretch(design.mounts, value);
            break;
        case Variable::Elevation:
            setElevation(design.mounts, value);
            break;
        case Variable::Hardness:
            setHardness(design.tube, value);
            break;
        case Variable::OuterDiameter:
            design.tube.outer_diameter_mm = value;
            break;
    }
}

Design Hanging::hung(Design design) const
{
    if (!level)
        return design;
    if (auto mounts = levelledMounts(*level, design.tube, design.mounts))
        design.mounts = *std::move(mounts);
    return design;
}

Hanging hangingOf(const Setup& setup, bool level)
{
    return level ? Hanging{makeBody(setup.bay.parts)} : Hanging{};
}

bool VariableRange::contains(const Design& design) const
{
    const double value = valueOf(design, variable);
    return value >= from && value <= to;
}

VariableRange usualRange(const Design& design, Variable variable)
{
    const double value = valueOf(design, variable);
    const TubeKind& tube = design.tube;
    double from = 0.0, to = 0.0;
    switch (variable) {
        case Variable::FreeLength:
            from = design.mounts.drilled() ? meanDistance_mm(design.mounts) / tube.max_stretch
                                           : std::max(0.5 * value, tube.outer_diameter_mm);
            to = design.mounts.drilled() ? meanDistance_mm(design.mounts) : 2 * value;
            from = std::ceil(from);
            to = std::floor(to);
            break;
        case Variable::Stretch:
            from = 1.0;
            to = tube.max_stretch;
            break;
        case Variable::Elevation:
            from = 0.0;
            to = 60.0;
            break;
        case Variable::Hardness:
            from = 20.0;
            to = 80.0;
            break;
        case Variable::OuterDiameter:
            from = tube.bore_mm + 1.0;
            to = 1.5 * value;
            break;
    }
    const VariableField field = fieldOf(variable);
    return {variable, std::clamp(std::min(from, value), field.min, field.max),
            std::clamp(std::max(to, value), field.min, field.max)};
}

StockTube stockOf(const TubeKind& tube)
{
    return {tube.outer_diameter_mm, tube.bore_mm, tube.hardness_shore_a};
}

void useTube(Design& design, const StockTube& stock)
{
    if (stockOf(design.tube) == stock)
        return;
    design.tube.outer_diameter_mm = stock.outer_diameter_mm;
    design.tube.bore_mm = stock.bore_mm;
    design.tube.hardness_shore_a = stock.hardness_shore_a;
    design.tube.youngs_modulus_mpa.reset();
}

}  // namespace stillbay
