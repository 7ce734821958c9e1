// SPDX-License-Identifier: MIT
// What a new craft has that nobody entered: held by how bodies, windings and packs scale, by the
// presets, and by what must fit beside what.
#include "core/assess/assess.h"
#include "core/base/units.h"
#include "core/newcraft/new_craft.h"
#include "core/presets/presets.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

namespace stillbay {
namespace {

using Craft = Setup;  // inside TEST the name Setup is taken

Craft made(const CraftAnswers& answers)
{
    return newCraft(answers).value();
}

CraftAnswers onDiameter(double diameter_in)
{
    CraftAnswers answers;
    answers.propeller_diameter_in = diameter_in;
    return answers;
}

double volume_mm3(const Triple& size_mm)
{
    return size_mm[0] * size_mm[1] * size_mm[2];
}

double ends(const Part& part, std::size_t axis, int side)
{
    return part.centre_mm.at(axis) + 0.5 * side * part.size_mm.at(axis);
}

const Part& partNamed(const std::vector<Part>& parts, const std::string& name)
{
    return *std::find_if(parts.begin(), parts.end(),
                         [&](const Part& part) { return part.name == name; });
}

constexpr double kHalfGrain_mm = 0.251;  // all of it is drawn to half millimetres

// Crafts with and without the weight of their bays.
std::vector<CraftAnswers> someCrafts()
{
    std::vector<CraftAnswers> all;
    for (const double diameter_in : {5.0, 7.0, 10.0, 13.0, 15.0}) {
        all.push_back(onDiameter(diameter_in));
        for (const double perDisc : {0.8, 2.1}) {
            all.push_back(onDiameter(diameter_in));
            all.back().bay_mass_g = std::round(4 * perDisc * diameter_in * diameter_in);
        }
    }
    return all;
}

// Oracle: definition. The bay's parts lie beside each other under the plates: no two in one place,
// the tray over both and wider, its top as far below the plates as the bay may travel and 2 mm, the
// centre of mass under the middle, the lens in the camera's front.
TEST(NewCraftBay, HasItsPartsBesideEachOther)
{
    for (const CraftAnswers& answers : someCrafts()) {
        const Craft craft = made(answers);
        const Part &battery = partNamed(craft.bay.parts, "battery"),
                   &camera = partNamed(craft.bay.parts, "camera"),
                   &tray = partNamed(craft.bay.parts, "tray");
        EXPECT_NEAR(ends(camera, 0, -1) - ends(battery, 0, 1), 5, 2 * kHalfGrain_mm);
        EXPECT_NEAR(ends(tray, 0, 1), ends(camera, 0, 1), 2 * kHalfGrain_mm);
        EXPECT_NEAR(ends(tray, 0, -1), ends(battery, 0, -1), 2 * kHalfGrain_mm);
        EXPECT_EQ(tray.size_mm[1], std::max(battery.size_mm[1], camera.size_mm[1]) + 10);
        const double room =
            ends(partNamed(craft.airframe.parts, "centre plates"), 2, -1) - ends(tray, 2, 1);
        EXPECT_NEAR(room, craft.bay.travel_mm + 2, 0.51);
        double mass = 0, moment = 0;
        for (const Part& part : craft.bay.parts) {
            mass += part.mass_g;
            moment += part.mass_g * part.centre_mm[0];
            EXPECT_EQ(part.centre_mm[1], 0);
        }
        EXPECT_NEAR(moment / mass, 0, kHalfGrain_mm);
        EXPECT_EQ(craft.camera.centre_mm[0], ends(camera, 0, 1));
        EXPECT_EQ(craft.camera.centre_mm[2], camera.centre_mm[2]);
    }
}

// Oracle: definition; a body of another mass and the same density has sides as its cube root, here
// rounded to millimetres. Without a word on the bay's weight its parts weigh what the lists say.
TEST(NewCraftBay, IsAsDenseAsTheListsSay)
{
    for (const CraftAnswers& answers : someCrafts()) {
        const Craft craft = made(answers);
        const CraftChoices choices = choicesOf(answers, craft);
        const PackPreset& pack = packPresets()[choices.pack];
        const CameraPreset& film = cameraPresets()[choices.camera];
        const auto expectDensity = [](const Part& part, double mass_g, const Triple& size_mm) {
            double rounding = 0;
            for (const double side : part.size_mm)
                rounding += 0.5 / side;
            EXPECT_NEAR(std::log(part.mass_g / volume_mm3(part.size_mm)),
                        std::log(mass_g / volume_mm3(size_mm)), 1.2 * rounding + 0.01)
                << part.name;
        };
        const Part &battery = partNamed(craft.bay.parts, "battery"),
                   &camera = partNamed(craft.bay.parts, "camera"),
                   &tray = partNamed(craft.bay.parts, "tray");
        const double rewired = static_cast<double>(craft.drive.battery.cells) / pack.cells;
        expectDensity(battery, pack.mass_g, pack.size_mm);
        expectDensity(camera, film.mass_g, film.size_mm);
        EXPECT_NEAR(craft.drive.battery.resistance_mohm / (pack.resistance_mohm * rewired), 1,
                    1e-9);
        if (!answers.bay_mass_g) {
            EXPECT_NEAR(battery.mass_g, pack.mass_g * rewired, 0.51);
            EXPECT_NEAR(camera.mass_g, film.mass_g, 0.51);
            EXPECT_NEAR(tray.mass_g / (battery.mass_g + camera.mass_g + tray.mass_g), 0.11, 0.01);
        }
    }
}

// Oracle: definition. A pack of the same cells, two more of them in series, has their masses, their
// resistances and their heights on top of each other.
TEST(NewCraftBay, HasAPackWithAsManyCellsAsAsked)
{
    for (std::size_t i = 0; i < packPresets().size(); ++i) {
        const PackPreset& preset = packPresets()[i];
        CraftAnswers answers;
        answers.pack = i;
        answers.cells = preset.cells + 2;
        const Craft craft = made(answers);
        const double ratio = (preset.cells + 2.0) / preset.cells;
        const Part& battery = partNamed(craft.bay.parts, "battery");
        EXPECT_EQ(craft.drive.battery.cells, preset.cells + 2);
        EXPECT_NEAR(craft.drive.battery.resistance_mohm, ratio * preset.resistance_mohm, 1e-9);
        EXPECT_NEAR(battery.mass_g, ratio * preset.mass_g, 0.51);
        EXPECT_NEAR(battery.size_mm[2], ratio * preset.size_mm[2], 0.61);
        EXPECT_NEAR(battery.size_mm[0], preset.size_mm[0], 0.61);
    }
}

// Oracle: by hand. A bay of given weight is that of its list entries where the tray can weigh the
// rest of it, 5 to 35 %; else the tray weighs 11 % and the entries are taken larger or smaller.
TEST(NewCraftBay, SharesItsWeight)
{
    CraftAnswers answers = onDiameter(10);
    answers.pack = 4;
    answers.camera = 2;
    const double pack_g = packPresets()[4].mass_g, film_g = cameraPresets()[2].mass_g;
    for (const auto& [tray, isKept] :
         {std::pair(0.02, false), {0.06, true}, {0.2, true}, {0.34, true}, {0.5, false}}) {
        answers.bay_mass_g = (pack_g + film_g) / (1 - tray);
        const Craft craft = made(answers);
        const double battery = partNamed(craft.bay.parts, "battery").mass_g,
                     camera = partNamed(craft.bay.parts, "camera").mass_g;
        const double share = partNamed(craft.bay.parts, "tray").mass_g / *answers.bay_mass_g;
        EXPECT_NEAR(share, isKept ? tray : 0.11, 1.5 / *answers.bay_mass_g) << tray;
        EXPECT_NEAR(battery / camera, pack_g / film_g, 0.02 * pack_g / film_g) << tray;
    }
}

// Oracle: the proportions that a builder expects (common practice, no source): the pack is three
// fifths of the bay and the camera a fifth of it, as near as the lists come.
TEST(NewCraftBay, TakesPackAndCameraThatSuitItsWeight)
{
    for (const double bay_g : {250.0, 545.0, 1180.0, 2400.0}) {
        CraftAnswers answers;
        answers.bay_mass_g = bay_g;
        const Craft craft = made(answers);
        const CraftChoices choices = choicesOf(answers, craft);
        const auto off = [](double mass_g, double wanted_g) {
            return std::abs(std::log(mass_g / wanted_g));
        };
        const CameraPreset& taken = cameraPresets()[choices.camera];
        EXPECT_EQ(taken.lens, Lens::Rectilinear);
        EXPECT_GT(taken.readout_ms, 0);
        for (const CameraPreset& other : cameraPresets())
            if (other.lens == Lens::Rectilinear && other.readout_ms > 0 && other.width_px >= 3840) {
                EXPECT_LE(off(taken.mass_g, 0.22 * bay_g), off(other.mass_g, 0.22 * bay_g) + 1e-12)
                    << bay_g << ' ' << other.name;
            }
        const double share = partNamed(craft.bay.parts, "battery").mass_g / bay_g;
        EXPECT_GT(share, 0.45) << bay_g;
        EXPECT_LT(share, 0.75) << bay_g;
    }
}

// Oracle: the same proportion without a bay's weight, 0.9 g of pack for each motor and square inch
// of its propeller's diameter (common practice, no source).
TEST(NewCraftDrive, TakesAPackThatSuitsItsPropellers)
{
    for (const ArmLayout layout : {ArmLayout::FourX, ArmLayout::Six})
        for (const double diameter_in : {6.0, 9.0, 12.0, 15.0}) {
            CraftAnswers answers = onDiameter(diameter_in);
            answers.layout = layout;
            const Craft craft = made(answers);
            const double wanted_g =
                0.9 * diameter_in * diameter_in * static_cast<double>(craft.airframe.arms.size());
            EXPECT_LT(std::abs(std::log(partNamed(craft.bay.parts, "battery").mass_g / wanted_g)),
                      0.45)
                << diameter_in;
        }
}

// Oracle: the presets. A propeller of the list weighs what the list says; between two of them, and
// with other blades, it weighs as much as its size and number of blades say.
TEST(NewCraftDrive, HasThePropellerOfTheList)
{
    const auto mass_g = [](double diameter_in, int blades) {
        CraftAnswers answers = onDiameter(diameter_in);
        answers.blades = blades;
        return made(answers).drive.propeller.mass_g;
    };
    int found = 0;
    for (const PropellerPreset& preset : propellerPresets())
        if ((preset.material == PropellerPreset::Material::Carbon) == (preset.diameter_in >= 12)) {
            ++found;
            const double listed_g = mass_g(preset.diameter_in, preset.blades);
            EXPECT_NEAR(listed_g, preset.mass_g, 0.051) << preset.diameter_in;
            const double largerBy = mass_g(1.03 * preset.diameter_in, preset.blades) / listed_g;
            EXPECT_GT(largerBy, 0.99) << preset.diameter_in;
            EXPECT_LT(largerBy, std::pow(1.03, 3) + 0.051 / listed_g) << preset.diameter_in;
        }
    EXPECT_GE(found, 8);
    EXPECT_NEAR(mass_g(10, 6) / mass_g(10, 3), 2, 0.02);
}

// Oracle: definition. The motor stands on its arm, its propeller on the motor; 0.3 g·mm of
// unbalance for each gram of propeller (common practice, no source).
TEST(NewCraftDrive, StandsOnItsArms)
{
    for (const CraftAnswers& answers : someCrafts()) {
        const Craft craft = made(answers);
        const MotorPreset& motor = motorPresets()[choicesOf(answers, craft).motor];
        const double top_mm = craft.airframe.arm.height_mm / 2;
        EXPECT_GT(craft.drive.motor.height_above_arm_mm, top_mm + 0.5 * motor.height_mm);
        EXPECT_LT(craft.drive.motor.height_above_arm_mm, top_mm + motor.height_mm);
        EXPECT_NEAR(craft.drive.propeller.height_above_arm_mm.value(), top_mm + motor.height_mm + 2,
                    0.51);
        EXPECT_NEAR(craft.drive.unbalance_g_mm, std::max(0.1, 0.3 * craft.drive.propeller.mass_g),
                    0.051);
    }
}

// Oracle: wound(), held by its own test: another winding keeps the motor constant. Where the usual
// winding would hover above half throttle, a faster one is taken that does not, and no faster than
// that needs.
TEST(NewCraftDrive, IsWoundFasterWhereItsWeightAsksForIt)
{
    CraftAnswers answers = onDiameter(10);
    const double usual = made(answers).drive.motor.kv_rpm_per_v;
    double before = usual;
    int faster = 0;
    for (const double bay_g : {800.0, 1600.0, 2000.0, 2400.0, 2800.0, 3200.0}) {
        answers.bay_mass_g = bay_g;
        answers.cells = 4;
        const Craft craft = made(answers);
        const Motor& motor = craft.drive.motor;
        const MotorPreset same =
            wound(motorPresets()[choicesOf(answers, craft).motor], motor.kv_rpm_per_v);
        EXPECT_NEAR(motor.resistance_mohm / same.resistance_mohm, 1, 0.01) << bay_g;
        EXPECT_NEAR(motor.no_load_current_a / same.no_load_current_a, 1, 0.01) << bay_g;
        const HoverFigures hover = assess(craft).value().hover;
        EXPECT_GE(motor.kv_rpm_per_v, before) << bay_g;
        if (motor.kv_rpm_per_v > usual) {
            ++faster;
            EXPECT_LE(*hover.throttle_full, 0.5) << bay_g;
            EXPECT_GT(*hover.throttle_full, 0.4) << bay_g;
        }
        before = motor.kv_rpm_per_v;
    }
    EXPECT_GE(faster, 2);
}

// Oracle: definition. Tips as fast as with the class's own winding: KV, cells and diameter multiply
// to the same, each in its place.
TEST(NewCraftDrive, HasTipsAsFastWhateverItsSizeAndCells)
{
    const auto kv = [](double diameter_in, std::optional<int> cells) {
        CraftAnswers answers = onDiameter(diameter_in);
        answers.motor = 4;
        answers.cells = cells;
        return made(answers).drive.motor.kv_rpm_per_v;
    };
    EXPECT_NEAR(kv(11, 4) * 11, kv(12, 4) * 12, 10 * 12);
    EXPECT_NEAR(kv(11, 4) * 4, kv(11, 6) * 6, 10 * 6);
    CraftAnswers answers = onDiameter(11.5);
    answers.motor = 4;
    const int usual = made(answers).drive.battery.cells;
    const double own = motorPresets()[4].kv_rpm_per_v;
    for (const int cells : {3, usual, 6, 8}) {
        answers.kv_rpm_per_v = std::round(own * usual / cells);
        EXPECT_EQ(made(answers).drive.battery.cells, cells);
    }
}

// Oracle: geometry. Between neighbouring motors lies a chord; on given arms the largest propeller
// of the list is taken that leaves a tenth of its diameter between the discs, for a given propeller
// arms that leave a quarter.
TEST(NewCraftFrame, HasRoomBetweenItsPropellers)
{
    const auto chordOverDiameter = [](const Craft& craft, double diameter_in) {
        const Arm& arm = craft.airframe.arms.front();
        const double turn = std::numbers::pi / static_cast<double>(craft.airframe.arms.size());
        return 2 * std::sin(turn) * (arm.root_radius_mm + arm.length_mm) / (25.4 * diameter_in);
    };
    for (const ArmLayout layout : {ArmLayout::Three, ArmLayout::FourX, ArmLayout::Six}) {
        for (const double arm_mm : {100.0, 150.0, 210.0, 280.0}) {
            CraftAnswers answers;
            answers.layout = layout;
            answers.arm_length_mm = arm_mm;
            const Craft craft = made(answers);
            const double taken = craft.drive.propeller.diameter_in;
            double larger = 1e9, smallest = 1e9;
            for (const PropellerPreset& preset : propellerPresets()) {
                smallest = std::min(smallest, preset.diameter_in);
                if (preset.diameter_in > taken)
                    larger = std::min(larger, preset.diameter_in);
            }
            if (taken > smallest) {
                EXPECT_GT(chordOverDiameter(craft, taken), 1.09) << arm_mm;
            }
            if (larger < 1e9) {
                EXPECT_LT(chordOverDiameter(craft, larger), 1.11) << arm_mm;
            }
        }
        for (const double diameter_in : {6.0, 10.0, 14.0}) {
            CraftAnswers answers = onDiameter(diameter_in);
            answers.layout = layout;
            EXPECT_NEAR(chordOverDiameter(made(answers), diameter_in), 1.25, 0.03) << diameter_in;
        }
    }
}

// Oracle: the proportions that are meant (common practice, no source). An arm of pine is 7.4 % of
// its length thick, a tube of carbon cloth 6.3 % with a wall of 1 mm, neither below 8 mm; two
// plates with their bolts weigh 0.0094 g/mm², the electronics lie on the upper one.
TEST(NewCraftFrame, IsAsStoutAsItIsLong)
{
    const auto material = [](const std::string& name) {
        const auto presets = armPresets();
        return static_cast<std::size_t>(
            std::find_if(presets.begin(), presets.end(),
                         [&](const ArmPreset& preset) { return preset.name == name; }) -
            presets.begin());
    };
    for (const double length_mm : {90.0, 190.0, 350.0})
        for (const auto& [name, share, wall_mm] :
             {std::tuple("Pine", 0.074, 0.0), {"Carbon tube, wrapped cloth", 0.063, 1.0}}) {
            CraftAnswers answers;
            answers.arm_length_mm = length_mm;
            answers.armMaterial = material(name);
            const Airframe airframe = made(answers).airframe;
            const double side_mm = std::max(8.0, share * length_mm);
            EXPECT_NEAR(airframe.arm.width_mm, side_mm, 0.51) << name;
            EXPECT_NEAR(airframe.arm.height_mm, side_mm, 0.51) << name;
            EXPECT_EQ(airframe.arm.wall_mm.value_or(0), wall_mm) << name;
            const Part& plates = partNamed(airframe.parts, "centre plates");
            EXPECT_NEAR(plates.mass_g, 0.0094 * plates.size_mm[0] * plates.size_mm[1], 0.51);
            EXPECT_NEAR(partNamed(airframe.parts, "electronics").centre_mm[2], ends(plates, 2, 1),
                        0.51);
        }
}

// Oracle: the proportion that is meant, 1.4 g of bay for each motor and square inch of its
// propeller's diameter (common practice, no source): the largest of the list is taken that is no
// more than a twentieth larger than that.
TEST(NewCraftFrame, HasPropellersThatSuitTheWeightOfItsBay)
{
    for (const double meant_in : {6.0, 8.0, 10.0, 12.0, 14.0}) {
        CraftAnswers answers;
        answers.bay_mass_g = 1.4 * 4 * meant_in * meant_in;
        double largest_in = 0;
        for (const PropellerPreset& preset : propellerPresets())
            if (preset.diameter_in <= 1.05 * meant_in)
                largest_in = std::max(largest_in, preset.diameter_in);
        EXPECT_EQ(made(answers).drive.propeller.diameter_in, largest_in);
    }
}

// Oracle: definition. A frame is no shorter than its exposure and its readout; what does not fit is
// cut to 95 % of the frame.
TEST(NewCraftCamera, ExposesAndReadsWithinItsFrame)
{
    for (std::size_t i = 0; i < cameraPresets().size(); ++i)
        for (const double rate_hz : {24.0, 30.0, 60.0, 120.0, 240.0}) {
            const CameraPreset& preset = cameraPresets()[i];
            CraftAnswers answers;
            answers.camera = i;
            answers.frame_rate_hz = rate_hz;
            const Camera camera = made(answers).camera;
            const double frame_ms = 1000 / rate_hz, cut_ms = std::floor(95 * frame_ms) / 100;
            EXPECT_EQ(camera.readout_ms, preset.readout_ms > frame_ms ? cut_ms : preset.readout_ms);
            const double exposure_ms = preset.exposure_ms.value_or(2.0);
            if (exposure_ms <= frame_ms)
                EXPECT_LE(camera.exposure_ms, frame_ms);
            else
                EXPECT_EQ(camera.exposure_ms, cut_ms) << preset.name << ' ' << rate_hz;
        }
}

// Oracle: the assessment. Of the tubes of Shore A 60 the thinnest is taken that does: each thinner
// one would break a constraint, use more than three quarters of the room in a pull-up, or go up
// steeply. Its free length is two and a half diameters, its points stand 3 mm beside the tray.
TEST(NewCraftTubes, AreTheSoftestThatDo)
{
    int thinner = 0;
    for (const double diameter_in : {7.0, 10.0, 14.0}) {
        CraftAnswers answers = onDiameter(diameter_in);
        const auto fits = [](Craft craft) {
            for (const MountPoint& point : craft.mounts.points)
                if (point.elevation_deg > 15)
                    return false;
            craft.bay.travel_mm *= 0.75;
            const auto answer = assess(craft);
            return answer && answer->status.violated.empty();
        };
        const Craft craft = made(answers);
        EXPECT_TRUE(fits(craft)) << diameter_in;
        const TubePreset& taken = tubePresets()[choicesOf(answers, craft).tube];
        EXPECT_EQ(taken.hardness_shore_a, 60);
        EXPECT_NEAR(craft.mounts.free_length_mm, 2.5 * taken.outer_diameter_mm, 0.251);
        const auto section_mm2 = [](const TubePreset& tube) {
            return std::numbers::pi / 4 *
                   (std::pow(tube.outer_diameter_mm, 2) - std::pow(tube.bore_mm, 2));
        };
        const Part& tray = partNamed(craft.bay.parts, "tray");
        for (const MountPoint& point : craft.mounts.points)
            EXPECT_NEAR(std::abs(point.bay_mm[1]), tray.size_mm[1] / 2 + 3, 0.26);
        for (std::size_t i = 0; i < tubePresets().size(); ++i) {
            const TubePreset& other = tubePresets()[i];
            if (other.hardness_shore_a != 60 || section_mm2(other) >= section_mm2(taken) - 1e-9)
                continue;
            ++thinner;
            answers.tube = i;
            EXPECT_FALSE(fits(made(answers))) << diameter_in << " in, " << other.outer_diameter_mm;
        }
    }
    EXPECT_GE(thinner, 3);
}

}  // namespace
}  // namespace stillbay
