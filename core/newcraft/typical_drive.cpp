// SPDX-License-Identifier: MIT
#include "core/newcraft/typical_drive.h"

#include "core/airframe/airframe.h"
#include "core/assess/assess.h"
#include "core/base/check.h"
#include "core/craft/craft.h"
#include "core/presets/apply.h"
#include "core/setup/sources.h"

#include <algorithm>
#include <cmath>
#include <string_view>

namespace stillbay {
namespace {

constexpr double kFirstCarbon_in = 12.0;  // smaller propellers are moulded of plastic
constexpr double kPackPerDisc = 0.9;      // [g/in²] of a propeller's diameter squared, each motor
constexpr double kPackShare = 0.62;       // of the bay's weight
constexpr double kHighestHover = 0.5;     // with the full pack
constexpr double kMostRewinding = 1.6;

/// What a class of motors usually turns, and on how many cells its own winding does so.
struct Usual {
    std::string_view motor;
    double diameter_in;
    int cells;
};

constexpr Usual kUsual[] = {
    {"Stator 18 to 20 mm", 3.5, 4}, {"Stator 22 mm", 5, 4},          {"Stator 23 mm, tall", 9.5, 4},
    {"Stator 28 mm, low", 7, 4},    {"Stator 28 mm, tall", 11.5, 4}, {"Stator 35 mm", 13.5, 6},
    {"Stator 40 mm", 16, 6},
};

const Usual& usualOf(const MotorPreset& motor)
{
    const auto found = std::find_if(std::begin(kUsual), std::end(kUsual),
                                    [&](const Usual& usual) { return usual.motor == motor.name; });
    check(found != std::end(kUsual), "new craft: a usual propeller for each class of motors");
    return *found;
}

const MotorPreset& motorOf(const CraftAnswers& answers, const CraftSize& size)
{
    return motorPresets()[motorFor(answers, size)];
}

int cellsFor(const CraftAnswers& answers, const CraftSize& size)
{
    if (answers.cells)
        return *answers.cells;
    if (answers.pack)
        return packPresets()[*answers.pack].cells;
    const MotorPreset& motor = motorOf(answers, size);
    const int usual = usualOf(motor).cells;
    if (!answers.kv_rpm_per_v)
        return usual;
    // As fast a propeller as with the class's own winding.
    constexpr int kFewest = 3, kMost = 8;
    return static_cast<int>(std::clamp<double>(
        std::round(usual * motor.kv_rpm_per_v / *answers.kv_rpm_per_v), kFewest, kMost));
}

// With which the tips are as fast as with the class's own winding, propeller and cells.
double usualKv(const MotorPreset& motor, double diameter_in, int cells)
{
    const Usual& usual = usualOf(motor);
    const double kv_rpm_per_v = std::clamp(motor.kv_rpm_per_v * usual.diameter_in / diameter_in,
                                           motor.lowest_kv_rpm_per_v.value_or(motor.kv_rpm_per_v),
                                           motor.highest_kv_rpm_per_v.value_or(motor.kv_rpm_per_v));
    return std::max(10.0, 10 * std::round(kv_rpm_per_v * usual.cells / cells / 10));
}

PackPreset rewired(PackPreset pack, int cells)
{
    const double ratio = static_cast<double>(cells) / pack.cells;
    pack.cells = cells;
    pack.mass_g *= ratio;
    pack.resistance_mohm *= ratio;
    pack.size_mm[2] *= ratio;
    return pack;
}

PropellerPreset propellerFor(const CraftAnswers& answers, const CraftSize& size)
{
    const double diameter_in = size.propeller_diameter_in;
    const auto material = diameter_in < kFirstCarbon_in ? PropellerPreset::Material::Plastic
                                                        : PropellerPreset::Material::Carbon;
    const int blades = answers.blades.value_or(2);
    const auto unlike = [&](const PropellerPreset& preset) {
        return std::abs(std::log(preset.diameter_in / diameter_in)) +
               10.0 * std::abs(preset.blades - blades) + (preset.material == material ? 0.0 : 1.0);
    };
    const auto presets = propellerPresets();
    PropellerPreset propeller = *std::min_element(
        presets.begin(), presets.end(),
        [&](const PropellerPreset& a, const PropellerPreset& b) { return unlike(a) < unlike(b); });
    constexpr double kMassByDiameter = 1.5;  // how the mass grows along the list
    const double mass_g = propeller.mass_g *
                          std::pow(diameter_in / propeller.diameter_in, kMassByDiameter) * blades /
                          propeller.blades;
    propeller.mass_g = std::max(0.1, std::round(10 * mass_g) / 10);
    propeller.diameter_in = diameter_in;
    propeller.blades = blades;
    propeller.pitch_in = answers.propeller_pitch_in.value_or(propeller.pitch_in);
    return propeller;
}

HoverFigures hoverOf(const Setup& setup)
{
    const ExcitedAirframe craft = makeExcitedAirframe(setup);
    return hoverFigures(craft, rigidFigures(craft.airframe), makeBody(setup.bay.parts));
}

bool hasMargin(const Setup& setup)
{
    const HoverFigures hover = hoverOf(setup);
    return hover.throttle_full && hover.throttle_empty && *hover.throttle_full <= kHighestHover;
}

}  // namespace

std::size_t motorFor(const CraftAnswers& answers, const CraftSize& size)
{
    if (answers.motor)
        return *answers.motor;
    const auto motors = motorPresets();
    const auto unlike = [&](const MotorPreset& motor) {
        return std::abs(std::log(usualOf(motor).diameter_in / size.propeller_diameter_in));
    };
    const auto found = std::min_element(
        motors.begin(), motors.end(),
        [&](const MotorPreset& a, const MotorPreset& b) { return unlike(a) < unlike(b); });
    return static_cast<std::size_t>(found - motors.begin());
}

std::size_t packFor(const CraftAnswers& answers, const CraftSize& size)
{
    if (answers.pack)
        return *answers.pack;
    const int cells = cellsFor(answers, size);
    const double diameter_in = size.propeller_diameter_in;
    const double mass_g = answers.bay_mass_g
                              ? kPackShare * *answers.bay_mass_g
                              : kPackPerDisc * diameter_in * diameter_in * armsOf(size.layout);
    const auto packs = packPresets();
    const auto unlike = [&](const PackPreset& pack) {
        return 10.0 * std::abs(pack.cells - cells) +
               std::abs(std::log(rewired(pack, cells).mass_g / mass_g)) +
               (pack.kind == PackPreset::Cells::Pouch ? 0.0 : 1000.0);
    };
    const auto found = std::min_element(
        packs.begin(), packs.end(),
        [&](const PackPreset& a, const PackPreset& b) { return unlike(a) < unlike(b); });
    return static_cast<std::size_t>(found - packs.begin());
}

PackPreset wiredPack(const CraftAnswers& answers, const CraftSize& size)
{
    return rewired(packPresets()[packFor(answers, size)], cellsFor(answers, size));
}

Setup withDrive(Setup setup, const CraftSize& size, const PackPreset& pack,
                const CraftAnswers& answers)
{
    setup = withPropeller(std::move(setup), propellerFor(answers, size));
    const MotorPreset& motor = motorOf(answers, size);
    const double kv_rpm_per_v =
        answers.kv_rpm_per_v.value_or(usualKv(motor, size.propeller_diameter_in, pack.cells));
    setup = withMotor(std::move(setup), wound(motor, kv_rpm_per_v));
    Source kv = *sourceOf(setup, "drive.motor.kv_rpm_per_v");
    kv.spread = kvSpread(motor);
    putSource(setup, std::move(kv));
    setup = withPack(std::move(setup), pack);

    Drive& drive = setup.drive;
    const double arm_mm = setup.airframe.arm.height_mm / 2;
    drive.motor.height_above_arm_mm = std::round(arm_mm + 0.7 * motor.height_mm);
    drive.propeller.height_above_arm_mm = std::round(arm_mm + motor.height_mm + 2);
    drive.unbalance_g_mm = std::max(0.1, std::round(3 * drive.propeller.mass_g) / 10);
    return setup;
}

void addThrustMargin(Setup& setup)
{
    constexpr double kStep = 1.05;
    const Motor before = setup.drive.motor;
    for (double factor = 1.0; factor <= kMostRewinding && !hasMargin(setup); factor *= kStep) {
        Motor& motor = setup.drive.motor;
        motor.kv_rpm_per_v = std::round(factor * before.kv_rpm_per_v / 10) * 10;
        const double ratio = motor.kv_rpm_per_v / before.kv_rpm_per_v;
        motor.resistance_mohm = before.resistance_mohm / (ratio * ratio);
        motor.no_load_current_a = before.no_load_current_a * ratio;
    }
    if (!hasMargin(setup))
        setup.drive.motor = before;  // another winding alone does not help
}

void setCruiseAroundHover(Setup& setup)
{
    const HoverFigures hover = hoverOf(setup);
    if (!hover.throttle_full)
        return;
    constexpr double kGrain = 0.05, kBelow = 0.1, kAbove = 0.1;
    const double highest = hover.throttle_empty.value_or(1.0);
    const double from = std::floor((*hover.throttle_full - kBelow) / kGrain + 1e-9);
    const double to = std::ceil((highest + kAbove) / kGrain - 1e-9);
    setup.flight.cruise_throttle = {std::max(2.0, from) / 20, std::min(20.0, to) / 20};
}

}  // namespace stillbay
