// SPDX-License-Identifier: MIT
#include "core/design/variable.h"

#include "core/base/check.h"
#include "core/base/phrase.h"
#include "core/base/units.h"
#include "core/setup/fields.h"
#include "core/setup/mount_layout.h"
#include "core/tube/rubber.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <string_view>

namespace stillbay {
namespace {

constexpr double kLeastSpread_mm = 5.0;  // nearer points hold no bay level
constexpr double kOffMiddle_mm = 1e-6;   // a point on the middle plane mirrors itself
constexpr double kBalanceReach_mm = 20.0;

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

template <class Of>
double meanOver(const Mounts& mounts, const Of& of)
{
    double sum = 0.0;
    for (const MountPoint& point : mounts.points)
        sum += of(point);
    return mounts.points.empty() ? 0.0 : sum / static_cast<double>(mounts.points.size());
}

double elevationOf(const Mounts& mounts, const MountPoint& point)
{
    if (!point.anchor_mm)
        return point.elevation_deg;
    const Triple anchor = anchorOf(mounts, point);
    return std::atan2(anchor[2] - point.bay_mm[2],
                      std::hypot(anchor[0] - point.bay_mm[0], anchor[1] - point.bay_mm[1])) /
           unit::deg;
}

double elevation(const Design& design)
{
    return meanOver(design.mounts,
                    [&](const MountPoint& point) { return elevationOf(design.mounts, point); });
}

void setElevation(Design& design, double value)
{
    const double by_deg = value - elevation(design);
    for (MountPoint& point : design.mounts.points)
        point.elevation_deg += by_deg;
}

void setHardness(Design& design, double value)
{
    TubeKind& tube = design.tube;
    if (tube.youngs_modulus_mpa)
        *tube.youngs_modulus_mpa *=
            youngsModulusFromShoreA(value) / youngsModulusFromShoreA(tube.hardness_shore_a);
    tube.hardness_shore_a = value;
}

double height(const Design& design)
{
    return meanOver(design.mounts, [](const MountPoint& point) { return point.bay_mm[2]; });
}

// Without the last digits that sums leave behind: the same value from anywhere is the same design.
double tidy(double value)
{
    constexpr double kDigits = 1e11;
    return std::round(kDigits * value) / kDigits;
}

void setHeight(Design& design, double value)
{
    const double by_mm = value - height(design);
    for (MountPoint& point : design.mounts.points)
        point.bay_mm[2] = tidy(point.bay_mm[2] + by_mm);
}

// Off the fore-and-aft axis, 0 to 90°, whichever way it points.
double offAxis_deg(const MountPoint& point)
{
    const double azimuth = point.azimuth_deg * unit::deg;
    return std::atan2(std::abs(std::sin(azimuth)), std::abs(std::cos(azimuth))) / unit::deg;
}

double sideOf(double component, double place)
{
    constexpr double kNone = 1e-9;
    if (std::abs(component) > kNone)
        return component < 0 ? -1.0 : 1.0;
    return place < 0 ? -1.0 : 1.0;
}

double direction(const Design& design)
{
    return meanOver(design.mounts, offAxis_deg);
}

// Each tube stays in its quarter; one along an axis goes to the side of the bay that it is on.
void setDirection(Design& design, double value)
{
    const double by_deg = value - direction(design);
    for (MountPoint& point : design.mounts.points) {
        const double azimuth = point.azimuth_deg * unit::deg;
        const double off = std::clamp(offAxis_deg(point) + by_deg, 0.0, 90.0) * unit::deg;
        point.azimuth_deg =
            tidy(std::atan2(sideOf(std::sin(azimuth), point.bay_mm[1]) * std::sin(off),
                            sideOf(std::cos(azimuth), point.bay_mm[0]) * std::cos(off)) /
                 unit::deg);
    }
}

struct Reach {
    double low = std::numeric_limits<double>::infinity(),
           high = -std::numeric_limits<double>::infinity();

    void include(double value)
    {
        low = std::min(low, value);
        high = std::max(high, value);
    }
};

Reach pointsAlong(const Mounts& mounts, std::size_t axis)
{
    Reach reach;
    for (const MountPoint& point : mounts.points)
        reach.include(point.bay_mm.at(axis));
    return reach;
}

double middleAlong(const Mounts& mounts, std::size_t axis)
{
    const Reach reach = pointsAlong(mounts, axis);
    return mounts.points.empty() ? 0.0 : 0.5 * (reach.low + reach.high);
}

double spreadAlong(const Mounts& mounts, std::size_t axis)
{
    const double middle = middleAlong(mounts, axis);
    double sum = 0.0;
    int count = 0;
    for (const MountPoint& point : mounts.points)
        if (const double off = std::abs(point.bay_mm.at(axis) - middle); off > kOffMiddle_mm) {
            sum += off;
            ++count;
        }
    return count == 0 ? 0.0 : sum / count;
}

// Mirrored points move apart alike; those in the middle stay.
void setSpreadAlong(Mounts& mounts, std::size_t axis, double value)
{
    const double middle = middleAlong(mounts, axis), by_mm = value - spreadAlong(mounts, axis);
    for (MountPoint& point : mounts.points)
        if (const double off = point.bay_mm.at(axis) - middle; std::abs(off) > kOffMiddle_mm)
            point.bay_mm.at(axis) = tidy(point.bay_mm.at(axis) + (off < 0 ? -by_mm : by_mm));
}

double balanceAlong(const Design& design, std::size_t axis)
{
    check(design.heaviest_part_mm.has_value(), "balance: the place of the heaviest part");
    return design.heaviest_part_mm->at(axis);
}

void setBalanceAlong(Design& design, std::size_t axis, double value)
{
    check(design.heaviest_part_mm.has_value(), "balance: the place of the heaviest part");
    design.heaviest_part_mm->at(axis) = value;
}

// Where the bay's outline, grown by its travel, ends.
Reach regionAlong(const Setup& setup, std::size_t axis)
{
    Reach region;
    for (const Part& part : setup.bay.parts)
        for (const double side : {-0.5, 0.5})
            region.include(part.centre_mm.at(axis) + side * part.size_mm.at(axis));
    return {region.low - setup.bay.travel_mm, region.high + setup.bay.travel_mm};
}

VariableRange usualLength(const Setup& setup)
{
    const Mounts& mounts = setup.mounts;
    const double value = mounts.free_length_mm;
    if (mounts.drilled())
        return {Variable::FreeLength, std::ceil(meanDistance_mm(mounts) / setup.tube.max_stretch),
                std::floor(meanDistance_mm(mounts))};
    return {Variable::FreeLength, std::ceil(std::max(0.5 * value, setup.tube.outer_diameter_mm)),
            std::floor(2 * value)};
}

VariableRange usualHeight(const Setup& setup)
{
    const Reach region = regionAlong(setup, 2), points = pointsAlong(setup.mounts, 2);
    const double value = height(designOf(setup));
    return {Variable::Height, std::ceil(value - (points.low - region.low)),
            std::floor(value + (region.high - points.high))};
}

VariableRange usualSpread(const Setup& setup, Variable variable, std::size_t axis)
{
    const Reach region = regionAlong(setup, axis), points = pointsAlong(setup.mounts, axis);
    const double value = spreadAlong(setup.mounts, axis);
    if (value == 0)
        return {variable, 0, 0};  // no two points are mirrored
    return {variable, std::ceil(std::max(kLeastSpread_mm, 0.3 * value)),
            std::floor(value + std::min(points.low - region.low, region.high - points.high))};
}

VariableRange usualBalance(const Setup& setup, Variable variable, std::size_t axis)
{
    const Part* const part = heaviestPart(setup.bay);
    const double value = part ? part->centre_mm.at(axis) : 0.0;
    return {variable, std::ceil(value - kBalanceReach_mm), std::floor(value + kBalanceReach_mm)};
}

// The enumerators in order.
const std::array<VariableRow, kVariableCount>& table()
{
    static const std::array<VariableRow, kVariableCount> rows{{
        {fieldNamed<Mounts>("free_length_mm"), translatable("length"), 0.5, "--free-length",
         translatable("May the free length of all tubes change?"), false,
         [](const Design& d) { return d.mounts.free_length_mm; },
         [](Design& d, double value) { setFreeLength(d.mounts, value); }, usualLength},
        {fieldNamed<Mounts>("stretch"), translatable("stretch"), 0.005, "--stretch",
         translatable("May the stretch of all tubes change? Their holes in the airframe move with "
                      "it."),
         true, [](const Design& d) { return drawnStretch(d.mounts); },
         [](Design& d, double value) { setStretch(d.mounts, value); },
         [](const Setup& s) {
             return VariableRange{Variable::Stretch, 1.0, s.tube.max_stretch};
         }},
        {fieldNamed<MountPoint>("elevation_deg"), translatable("elevation"), 0.5, "--elevation",
         translatable("May the elevation of all tubes change? Their holes in the airframe move "
                      "with it."),
         true, elevation, setElevation,
         [](const Setup&) {
             return VariableRange{Variable::Elevation, 0.0, 60.0};
         }},
        {fieldNamed<TubeKind>("hardness_shore_a"), translatable("hardness"), 1.0, "", "", false,
         [](const Design& d) { return d.tube.hardness_shore_a; }, setHardness,
         [](const Setup&) {
             return VariableRange{Variable::Hardness, 20.0, 80.0};
         }},
        {fieldNamed<TubeKind>("outer_diameter_mm"), translatable("diameter"), 0.1, "", "", false,
         [](const Design& d) { return d.tube.outer_diameter_mm; },
         [](Design& d, double value) { d.tube.outer_diameter_mm = value; },
         [](const Setup& s) {
             return VariableRange{Variable::OuterDiameter, s.tube.bore_mm + 1.0,
                                  1.5 * s.tube.outer_diameter_mm};
         }},
        {{"height_mm", translatable("Height of the points"), "mm", -2000, 2000, 1, 1},
         translatable("height"),
         1.0,
         "--height",
         translatable("May all mount points move up or down together? Their holes in the airframe "
                      "move with them."),
         true,
         height,
         setHeight,
         usualHeight},
        {{"direction_deg", translatable("Direction of the tubes"), "°", 0, 90, 5, 1},
         translatable("direction"),
         1.0,
         "--direction",
         translatable("May the tubes point more sideways or more fore and aft, mirrored? Their "
                      "holes in the airframe move with them."),
         true,
         direction,
         setDirection,
         [](const Setup&) {
             return VariableRange{Variable::Direction, 0.0, 90.0};
         }},
        {{"spread_x_mm", translatable("Half spread, fore and aft"), "mm", 0, 2000, 1, 1},
         translatable("spread fore and aft"),
         1.0,
         "--spread-x",
         translatable("May the mount points move apart or together fore and aft? Half their "
                      "distance; mirrored ones stay mirrored."),
         true,
         [](const Design& d) { return spreadAlong(d.mounts, 0); },
         [](Design& d, double value) { setSpreadAlong(d.mounts, 0, value); },
         [](const Setup& s) {
             return usualSpread(s, Variable::SpreadX, 0);
         }},
        {{"spread_y_mm", translatable("Half spread, sideways"), "mm", 0, 2000, 1, 1},
         translatable("spread sideways"),
         1.0,
         "--spread-y",
         translatable("May the mount points move apart or together sideways? Half their distance; "
                      "mirrored ones stay mirrored."),
         true,
         [](const Design& d) { return spreadAlong(d.mounts, 1); },
         [](Design& d, double value) { setSpreadAlong(d.mounts, 1, value); },
         [](const Setup& s) {
             return usualSpread(s, Variable::SpreadY, 1);
         }},
        {{"balance_x_mm", translatable("Heaviest part forward"), "mm", -2000, 2000, 1, 1},
         translatable("balance fore and aft"),
         1.0,
         "--balance-x",
         translatable("May the bay's heaviest part move forward or back? Where its middle is."),
         false,
         [](const Design& d) { return balanceAlong(d, 0); },
         [](Design& d, double value) { setBalanceAlong(d, 0, value); },
         [](const Setup& s) {
             return usualBalance(s, Variable::BalanceX, 0);
         }},
        {{"balance_z_mm", translatable("Heaviest part up"), "mm", -2000, 2000, 1, 1},
         translatable("balance upwards"),
         1.0,
         "--balance-z",
         translatable("May the bay's heaviest part move up or down? Where its middle is."),
         false,
         [](const Design& d) { return balanceAlong(d, 2); },
         [](Design& d, double value) { setBalanceAlong(d, 2, value); },
         [](const Setup& s) {
             return usualBalance(s, Variable::BalanceZ, 2);
         }},
    }};
    return rows;
}

}  // namespace

const VariableRow& rowOf(Variable variable)
{
    return table().at(static_cast<std::size_t>(variable));
}

VariableField fieldOf(Variable variable)
{
    return rowOf(variable).field;
}

double grainOf(Variable variable)
{
    return rowOf(variable).grain;
}

bool canSet(const Mounts& mounts, Variable variable)
{
    return !mounts.drilled() || !rowOf(variable).movesHoles;
}

bool placesBay(Variable variable)
{
    return variable >= Variable::Height;
}

double valueOf(const Design& design, Variable variable)
{
    return rowOf(variable).value(design);
}

void setValue(Design& design, Variable variable, double value)
{
    check(canSet(design.mounts, variable), "setValue: a variable that is free");
    rowOf(variable).set(design, value);
}

bool VariableRange::contains(const Design& design) const
{
    const double value = valueOf(design, variable);
    return value >= from && value <= to;
}

VariableRange usualRange(const Setup& setup, Variable variable)
{
    const VariableRange usual = rowOf(variable).usual(setup);
    if (setup.bay.parts.empty())
        return usual;  // no craft yet
    const double value = valueOf(wholeDesignOf(setup), variable);
    const VariableField field = fieldOf(variable);
    return {variable, std::clamp(std::min(usual.from, value), field.min, field.max),
            std::clamp(std::max(usual.to, value), field.min, field.max)};
}

}  // namespace stillbay
