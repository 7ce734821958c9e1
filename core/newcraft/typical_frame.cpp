// SPDX-License-Identifier: MIT
#include "core/newcraft/typical_frame.h"

#include "core/base/check.h"
#include "core/base/units.h"
#include "core/presets/apply.h"
#include "core/presets/presets.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string_view>

namespace stillbay {
namespace {

constexpr double kClearance = 1.25;      // between two motors over the propeller's diameter
constexpr double kLeastClearance = 1.1;  // with which a propeller is chosen for given arms
constexpr double kRootShare = 0.3;       // of the arm's length, from the middle to its clamp
constexpr double kBayPerDisc = 1.4;      // [g/in²] of a propeller's diameter squared, each motor
constexpr double kUsualDiameter_in = 10.0;

double toGrain(double value, double grain)
{
    return grain * std::round(value / grain);
}

// Between two neighbouring motors over their distance from the middle.
double spacingOverRadius(ArmLayout layout)
{
    return 2 * std::sin(std::numbers::pi / armsOf(layout));
}

// The largest that the program knows up to a diameter, or the smallest.
double knownDiameter_in(double most_in)
{
    double found = propellerPresets().front().diameter_in;
    for (const PropellerPreset& preset : propellerPresets())
        if (preset.diameter_in <= most_in)
            found = std::max(found, preset.diameter_in);
    return found;
}

double diameterFor(const CraftAnswers& answers, ArmLayout layout)
{
    if (answers.arm_length_mm) {
        const double radius_mm = (1 + kRootShare) * *answers.arm_length_mm;
        return knownDiameter_in(radius_mm * spacingOverRadius(layout) / kLeastClearance * unit::mm /
                                unit::inch);
    }
    if (answers.bay_mass_g)
        return knownDiameter_in(
            std::max(1.05 * std::sqrt(*answers.bay_mass_g / (kBayPerDisc * armsOf(layout))), 5.0));
    return kUsualDiameter_in;
}

/// How an arm of a material is usually made, over its length; a wall: hollow.
struct Section {
    std::string_view material;
    double width, height;
    double least_mm;
    double wall_mm;
};

constexpr Section kSections[] = {
    {"Pine", 0.074, 0.074, 8, 0},
    {"Spruce", 0.074, 0.074, 8, 0},
    {"Beech", 0.070, 0.070, 8, 0},
    {"Birch plywood", 0.074, 0.074, 8, 0},
    {"Aluminium 6061-T6", 0.063, 0.063, 8, 1},
    {"Glass-fibre laminate G10", 0.090, 0.045, 5, 0},
    {"Carbon tube, pultruded", 0.063, 0.063, 8, 1},
    {"Carbon tube, wrapped cloth", 0.063, 0.063, 8, 1},
    {"Carbon plate, woven", 0.100, 0.050, 4, 0},
    {"Sandwich board, glass on foam", 0.120, 0.055, 10, 0},
};

const Section& sectionOf(const ArmPreset& material)
{
    const auto found = std::find_if(std::begin(kSections), std::end(kSections),
                                    [&](const Section& s) { return s.material == material.name; });
    check(found != std::end(kSections), "new craft: a section for each material of the arms");
    return *found;
}

void layOutArms(Airframe& airframe, const CraftSize& size)
{
    constexpr double kTurn_deg = 360.0;
    const int count = armsOf(size.layout);
    const double first = size.layout == ArmLayout::FourPlus ? 0.0 : 0.5;
    airframe.arms.assign(static_cast<std::size_t>(count), Arm{});
    for (int k = 0; k < count; ++k)
        airframe.arms[static_cast<std::size_t>(k)] = {
            .azimuth_deg = (k + first) * kTurn_deg / count,
            .root_radius_mm = size.root_radius_mm,
            .length_mm = size.arm_length_mm,
            .height_mm = 0.0,
            .extras = {}};
}

}  // namespace

int armsOf(ArmLayout layout)
{
    switch (layout) {
        case ArmLayout::Three:
            return 3;
        case ArmLayout::FourX:
        case ArmLayout::FourPlus:
            return 4;
        case ArmLayout::Six:
            return 6;
        case ArmLayout::Eight:
            break;
    }
    return 8;
}

CraftSize sizeOf(const CraftAnswers& answers)
{
    CraftSize size;
    size.layout = answers.layout.value_or(ArmLayout::FourX);
    size.propeller_diameter_in = answers.propeller_diameter_in ? *answers.propeller_diameter_in
                                                               : diameterFor(answers, size.layout);
    const double radius_mm = kClearance * size.propeller_diameter_in * unit::inch / unit::mm /
                             spacingOverRadius(size.layout);
    size.arm_length_mm =
        answers.arm_length_mm.value_or(std::max(10.0, toGrain(radius_mm / (1 + kRootShare), 5.0)));
    size.root_radius_mm = std::clamp(toGrain(kRootShare * size.arm_length_mm, 1.0), 12.0, 200.0);
    return size;
}

std::size_t armMaterialFor(const CraftAnswers& answers, const CraftSize& size)
{
    if (answers.armMaterial)
        return *answers.armMaterial;
    constexpr double kShort_mm = 130;  // small craft are cut from one plate
    const std::string_view name = size.arm_length_mm < kShort_mm ? "Carbon plate, woven" : "Pine";
    const auto presets = armPresets();
    const auto found = std::find_if(presets.begin(), presets.end(),
                                    [&](const ArmPreset& preset) { return preset.name == name; });
    check(found != presets.end(), "new craft: a material of the list");
    return static_cast<std::size_t>(found - presets.begin());
}

Setup withFrame(Setup setup, const CraftSize& size, const CraftAnswers& answers)
{
    const ArmPreset& material = armPresets()[armMaterialFor(answers, size)];
    setup = withArm(std::move(setup), material);
    layOutArms(setup.airframe, size);

    const Section& section = sectionOf(material);
    const auto side_mm = [&](double share) {
        return std::max(section.least_mm, toGrain(share * size.arm_length_mm, 1.0));
    };
    ArmSection& arm = setup.airframe.arm;
    arm.width_mm = answers.arm_width_mm.value_or(
        section.width > section.height ? std::max(side_mm(section.width), 2 * section.least_mm)
                                       : side_mm(section.width));
    arm.height_mm = answers.arm_height_mm.value_or(side_mm(section.height));
    arm.wall_mm.reset();
    const double thickest_mm = std::min(arm.width_mm, arm.height_mm) / 2;
    if (section.wall_mm > 0 && section.wall_mm < thickest_mm)
        arm.wall_mm = section.wall_mm;

    constexpr double kPlates_g_mm2 = 0.0094;  // two of them with their bolts and spacers
    const double root = size.root_radius_mm;
    const Triple plates_mm{toGrain(2.66 * root, 1), toGrain(2 * root, 1),
                           toGrain(18 + 0.2 * root, 1)};
    setup.airframe.parts = {
        {.name = "centre plates",
         .mass_g = std::max(1.0, toGrain(kPlates_g_mm2 * plates_mm[0] * plates_mm[1], 1)),
         .centre_mm = {0, 0, 0},
         .size_mm = plates_mm,
         .extras = {}}};
    return setup;
}

void addElectronics(Setup& setup)
{
    const Part& plates = setup.airframe.parts.front();
    const double motors_g =
        setup.drive.motor.mass_g * static_cast<double>(setup.airframe.arms.size());
    setup.airframe.parts.push_back(
        {.name = "electronics",
         .mass_g = toGrain(15 + 0.26 * motors_g, 1),
         .centre_mm = {0, 0, toGrain(plates.size_mm[2] / 2, 1)},
         .size_mm = {toGrain(0.4 * plates.size_mm[0], 1), toGrain(0.4 * plates.size_mm[1], 1), 15},
         .extras = {}});
}

}  // namespace stillbay
