// SPDX-License-Identifier: MIT
#include "core/presets/presets.h"

#include "core/advice/uncertain_inputs.h"
#include "core/presets/apply.h"
#include "core/setup/sources.h"
#include "core/setup/validate.h"
#include "tests/setup/setup_text.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>
#include <sstream>
#include <string_view>

namespace stillbay {
namespace {

constexpr double kEps = std::numeric_limits<double>::epsilon();

Setup filled(const Setup& setup, const ArmPreset& preset)
{
    return withArm(setup, preset);
}

Setup filled(const Setup& setup, const MotorPreset& preset)
{
    return withMotor(setup, preset);
}

Setup filled(const Setup& setup, const PropellerPreset& preset)
{
    return withPropeller(setup, preset);
}

Setup filled(Setup setup, const PackPreset& preset)
{
    setup.bay.parts[0] = packPart(preset, "battery", {-15, 2, -45});
    return withPack(setup, preset);
}

Setup filled(Setup setup, const CameraPreset& preset)
{
    setup.bay.parts[1] = cameraPart(preset, "camera", {95, -3, -42});
    return withCamera(setup, preset);
}

Setup filled(const Setup& setup, const TubePreset& preset)
{
    return withTube(setup, preset);
}

void forEach(const auto& visit)
{
    for (const ArmPreset& preset : armPresets())
        visit(preset);
    for (const MotorPreset& preset : motorPresets())
        visit(preset);
    for (const PropellerPreset& preset : propellerPresets())
        visit(preset);
    for (const PackPreset& preset : packPresets())
        visit(preset);
    for (const CameraPreset& preset : cameraPresets())
        visit(preset);
    for (const TubePreset& preset : tubePresets())
        visit(preset);
}

// Range of every number is the field table's, rules between fields are the file's.
TEST(Presets, FillACraftThatMayBeSavedAndReadAgain)
{
    for (const char* const sample : test::kSamples) {
        const stillbay::Setup before = test::sampleSetup(sample);
        forEach([&](const auto& preset) {
            SCOPED_TRACE(english(nameOf(preset)));
            const stillbay::Setup after = filled(before, preset);
            const auto valid = validate(after);
            EXPECT_TRUE(valid) << english(valid.error().what) << ": " << valid.error().where;
            test::expectStable(after);
        });
    }
}

TEST(Presets, SayThatTheirNumbersAreTypicalAndWhereFrom)
{
    const stillbay::Setup before = test::sampleSetup();
    ASSERT_TRUE(before.sources.empty());
    forEach([&](const auto& preset) {
        SCOPED_TRACE(english(nameOf(preset)));
        const stillbay::Setup after = filled(before, preset);
        EXPECT_GE(after.sources.size(), 4U);
        EXPECT_TRUE(sourcesOfNothing(after).empty());
        for (const Source& source : after.sources) {
            EXPECT_EQ(source.from, Origin::Typical) << source.key;
            EXPECT_EQ(source.note, preset.source) << source.key;
        }
    });
}

TEST(Presets, NameTheirSource)
{
    forEach([](const auto& preset) {
        const std::string source = preset.source;
        EXPECT_GT(source.size(), 20U) << english(nameOf(preset));
        EXPECT_NE(source.back(), '.') << source;  // pages and notes end it as they need
    });
}

TEST(Presets, HaveNamesOfTheirOwn)
{
    std::set<std::string> names;
    forEach([&](const auto& preset) {
        const std::string name = english(nameOf(preset));
        EXPECT_TRUE(names.insert(name).second) << name;
    });
    EXPECT_EQ(names.size(), armPresets().size() + motorPresets().size() +
                                propellerPresets().size() + packPresets().size() +
                                cameraPresets().size() + tubePresets().size());
}

// A word with a capital is a material, a kind of thing, a unit or a standard: no brand, no model.
TEST(Presets, NameNoBrand)
{
    const std::set<std::string> allowed{
        "Pine",    "Spruce", "Beech",    "Birch",  "Aluminium", "6061-T6",    "Glass-fibre",
        "G10",     "Carbon", "Sandwich", "Stator", "Plastic",   "Pack",       "Lithium-polymer",
        "Ah",      "Board",  "Small",    "Action", "Compact",   "Mirrorless", "Mapping",
        "Thermal", "Tube",   "Shore",    "A"};
    forEach([&](const auto& preset) {
        std::string name = english(nameOf(preset));
        for (std::size_t at; (at = name.find("\u00a0")) != std::string::npos;)
            name.replace(at, 2, " ");
        std::erase(name, ',');
        std::istringstream words(name);
        for (std::string word; words >> word;)
            EXPECT_TRUE(
                allowed.contains(word) ||
                std::none_of(word.begin(), word.end(), [](char c) { return c >= 'A' && c <= 'Z'; }))
                << name;
    });
}

TEST(Presets, CarryTheirSpreadToTheSources)
{
    const stillbay::Setup craft = withArm(test::sampleSetup(), armPresets()[1]);
    const Source* const modulus = sourceOf(craft, "airframe.arm.youngs_modulus_gpa");
    ASSERT_TRUE(modulus);
    EXPECT_EQ(modulus->spread, armPresets()[1].youngs_modulus_gpa.spread);
    EXPECT_EQ(craft.airframe.arm.youngs_modulus_gpa, armPresets()[1].youngs_modulus_gpa.value);
    EXPECT_FALSE(sourceOf(withMotor(craft, motorPresets()[0]), "drive.motor.mass_g")->spread);
}

// Oracle: theory, section 8: x exp(σz) with σ² = ln(1 + spread²), at z = 1 of the normal
// distribution, whose share is 0.841345. Tolerance: that of the quantile, 4.5e-4 of z.
TEST(Presets, AreAsDoubtfulAsTheirSpread)
{
    const ArmPreset& spruce = armPresets()[1];
    const stillbay::Setup craft = withArm(test::sampleSetup(), spruce);
    for (const UncertainInput& input : uncertainInputs(craft)) {
        if (input.key != "airframe.arm.youngs_modulus_gpa")
            continue;
        CraftSample sample{craft, {}};
        const double share[] = {0.841345};
        input.apply(share, sample);
        const double sigma = std::sqrt(std::log1p(std::pow(*spruce.youngs_modulus_gpa.spread, 2)));
        EXPECT_NEAR(std::log(sample.setup.airframe.arm.youngs_modulus_gpa /
                             spruce.youngs_modulus_gpa.value),
                    sigma, 4.6e-4 * sigma);
        return;
    }
    ADD_FAILURE() << "the modulus is not in doubt";
}

TEST(Presets, ReplaceWhatWasSaidOfTheNumberBefore)
{
    stillbay::Setup craft = test::sampleSetup();
    const Source measured{.key = "airframe.arm.loss_factor",
                          .from = Origin::Measured,
                          .spread = 0.1,
                          .note = "tapped",
                          .date = "2026-05-01",
                          .extras = {}};
    const Source other{.key = "flight.air_density_kg_m3",
                       .from = Origin::Estimated,
                       .spread = {},
                       .note = {},
                       .date = {},
                       .extras = {}};
    craft.sources = {measured, other};
    const stillbay::Setup filledIn = withArm(withArm(craft, armPresets()[0]), armPresets()[4]);
    EXPECT_EQ(filledIn.sources.size(), 5U);
    EXPECT_EQ(*sourceOf(filledIn, other.key), other);
    const Source& now = *sourceOf(filledIn, measured.key);
    EXPECT_EQ(now.from, Origin::Typical);
    EXPECT_EQ(now.date, "");
    EXPECT_EQ(now.note, armPresets()[4].source);
}

// A measured figure of the thing replaced says nothing of the new one.
TEST(Presets, EmptyWhatWasMeasuredOnTheThingReplaced)
{
    stillbay::Setup craft = test::sampleSetup();
    craft.drive.propeller.thrust_coefficient = 0.1;
    craft.drive.propeller.power_coefficient = 0.05;
    craft.drive.propeller.inertia_g_mm2 = 4e4;
    craft.tube.youngs_modulus_mpa = 2;
    for (const char* const key :
         {"drive.propeller.thrust_coefficient", "drive.propeller.power_coefficient",
          "drive.propeller.inertia_g_mm2", "tube.youngs_modulus_mpa"})
        putSource(craft, {.key = key,
                          .from = Origin::Measured,
                          .spread = {},
                          .note = {},
                          .date = {},
                          .extras = {}});

    craft = withTube(withPropeller(craft, propellerPresets()[3]), tubePresets()[5]);

    EXPECT_FALSE(craft.drive.propeller.thrust_coefficient);
    EXPECT_FALSE(craft.drive.propeller.power_coefficient);
    EXPECT_FALSE(craft.drive.propeller.inertia_g_mm2);
    EXPECT_FALSE(craft.tube.youngs_modulus_mpa);
    for (const Source& source : craft.sources)
        EXPECT_EQ(source.from, Origin::Typical) << source.key;
}

TEST(Presets, LeaveWhatBelongsToTheCraft)
{
    const stillbay::Setup before = test::sampleSetup();
    stillbay::Setup after = before;
    after = withArm(after, armPresets()[7]);
    after = withMotor(after, motorPresets()[2]);
    after = withPropeller(after, propellerPresets()[9]);
    after = withPack(after, packPresets()[6]);
    after = withCamera(after, cameraPresets()[3]);
    after = withTube(after, tubePresets()[20]);
    EXPECT_EQ(after.airframe.arms, before.airframe.arms);
    EXPECT_EQ(after.airframe.arm.width_mm, before.airframe.arm.width_mm);
    EXPECT_EQ(after.drive.motor.height_above_arm_mm, before.drive.motor.height_above_arm_mm);
    EXPECT_EQ(after.drive.propeller.height_above_arm_mm,
              before.drive.propeller.height_above_arm_mm);
    EXPECT_EQ(after.drive.unbalance_g_mm, before.drive.unbalance_g_mm);
    EXPECT_EQ(after.camera.centre_mm, before.camera.centre_mm);
    EXPECT_EQ(after.camera.exposure_ms, before.camera.exposure_ms);
    EXPECT_EQ(after.bay, before.bay);
    EXPECT_EQ(after.mounts, before.mounts);
    EXPECT_EQ(after.tunes, before.tunes);
    EXPECT_TRUE(validate(after));
}

// Oracle: the rule of the file, one frame lasts 1000 ms over the frame rate.
TEST(Presets, CutAnExposureThatDoesNotFitTheNewFrame)
{
    stillbay::Setup craft = test::sampleSetup();
    craft.camera.frame_rate_hz = 24;
    craft.camera.readout_ms = 5;
    craft.camera.exposure_ms = 40;
    ASSERT_TRUE(validate(craft));
    craft = withCamera(craft, cameraPresets()[0]);
    EXPECT_EQ(craft.camera.exposure_ms, 1000.0 / cameraPresets()[0].frame_rate_hz);
    EXPECT_TRUE(validate(craft));
}

// Oracle: isotropic elasticity, G = E/(2 (1 + ν)) with Poisson's ratio 0 ≤ ν ≤ ½, so E/3 ≤ G ≤ E/2;
// what has fibres one way or a soft core gives more easily in shear.
TEST(Presets, ShearModuliGoWithYoungsModuli)
{
    for (const ArmPreset& arm : armPresets()) {
        const double ratio = arm.shear_modulus_gpa.value / arm.youngs_modulus_gpa.value;
        SCOPED_TRACE(arm.name);
        EXPECT_LT(ratio, 0.5);
        if (arm.isotropic)
            EXPECT_GE(ratio, 1.0 / 3.0);
        else
            EXPECT_LT(ratio, 1.0 / 3.0);
    }
}

// Oracle: stiffness over density of structural solids, M. F. Ashby, Materials Selection in
// Mechanical Design, chart of E against ρ, from memory: wood along the grain 10 to 30 MN·m/kg,
// aluminium 26, glass laminates 8 to 20, carbon laminates 30 to 120.
TEST(Presets, MaterialsAreAsStiffForTheirWeightAsTheirKind)
{
    const auto specific = [](std::size_t k) {
        const ArmPreset& arm = armPresets()[k];
        return arm.youngs_modulus_gpa.value * 1e3 / arm.density_kg_m3.value;  // [MN·m/kg]
    };
    ASSERT_EQ(armPresets().size(), 10U);
    for (const std::size_t wood : {0U, 1U, 2U, 3U}) {
        EXPECT_GT(specific(wood), 10) << wood;
        EXPECT_LT(specific(wood), 30) << wood;
    }
    EXPECT_NEAR(specific(4), 26, 1);
    EXPECT_GT(specific(5), 8);
    EXPECT_LT(specific(5), 20);
    for (const std::size_t carbon : {6U, 7U, 8U}) {
        EXPECT_GT(specific(carbon), 30) << carbon;
        EXPECT_LT(specific(carbon), 120) << carbon;
    }
}

// Oracle: own derivation. Wood Handbook, species tables in inch-pound units: specific gravity and
// bending modulus [10⁶ psi] of red pine 0.46 and 1.63, Sitka spruce 0.40 and 1.57, American beech
// 0.64 and 1.72 (beech and spruce's gravity as reprinted, the others from memory); 12 % of water on
// the gravity, 10 % of shear on the modulus. Tolerances: the last digit kept.
TEST(Presets, WoodsFollowFromTheHandbook)
{
    constexpr double kGpaPerMillionPsi = 6.894757;
    struct Wood {
        double gravity, modulus;
    };
    constexpr Wood kWoods[] = {{0.46, 1.63}, {0.40, 1.57}, {0.64, 1.72}};
    for (std::size_t k = 0; k < std::size(kWoods); ++k) {
        const ArmPreset& arm = armPresets()[k];
        EXPECT_NEAR(arm.density_kg_m3.value, 1120 * kWoods[k].gravity, 0.5) << arm.name;
        EXPECT_NEAR(arm.youngs_modulus_gpa.value, 1.1 * kGpaPerMillionPsi * kWoods[k].modulus, 0.05)
            << arm.name;
    }
}

// Oracle: own derivation. Faces t = 0.6 mm of E_f = 20 GPa and 1850 kg/m³ on a core of 60 kg/m³,
// h = 10 mm: E = E_f (1 − (1 − 2t/h)³) of a solid board, ρ the mean. The core itself adds less than
// 0.1 GPa. Tolerances: the digits kept.
TEST(Presets, SandwichIsAsStiffAsItsFacesMakeIt)
{
    const ArmPreset& board = armPresets().back();
    const double core = 1 - 2 * 0.6 / 10;
    EXPECT_NEAR(board.youngs_modulus_gpa.value, 20 * (1 - core * core * core), 0.1);
    EXPECT_NEAR(board.density_kg_m3.value, 1850 * (1 - core) + 60 * core, 5);
}

TEST(Presets, MotorsGrowHeavierAndSlowerWithTheirStator)
{
    for (const MotorPreset& motor : motorPresets()) {
        SCOPED_TRACE(motor.name);
        EXPECT_LT(motor.lowest_kv_rpm_per_v.value(), motor.kv_rpm_per_v);
        EXPECT_GT(motor.highest_kv_rpm_per_v.value(), motor.kv_rpm_per_v);
        // Oracle: a box of copper, iron and magnets with air between: 2 to 6 g/cm³ of its cylinder,
        // from memory; screws and wire are in the mass.
        const double volume =
            3.14159 / 4 * motor.diameter_mm * motor.diameter_mm * motor.height_mm / 1e3;  // [cm³]
        EXPECT_GT(motor.mass_g / volume, 2);
        EXPECT_LT(motor.mass_g / volume, 6);
    }
    EXPECT_GT(motorPresets().front().kv_rpm_per_v, motorPresets().back().kv_rpm_per_v);
    EXPECT_LT(motorPresets().front().mass_g, motorPresets().back().mass_g);
}

// Oracle: own derivation, brute force: the standard deviation of ln KV over a fine even grid of
// logarithms. Tolerance: the grid's, 1/n².
TEST(Presets, KvSpreadIsThatOfTheClass)
{
    const MotorPreset& motor = motorPresets()[1];
    constexpr int n = 1000;
    const double low = std::log(*motor.lowest_kv_rpm_per_v);
    const double width = std::log(*motor.highest_kv_rpm_per_v) - low;
    double squares = 0;
    for (int k = 0; k < n; ++k)
        squares += std::pow(((k + 0.5) / n - 0.5) * width, 2) / n;
    EXPECT_NEAR(kvSpread(motor).value(), std::sqrt(squares), 1e-6);
    EXPECT_FALSE(kvSpread(wound(motor, 1850)));
}

// Oracle: the motor constant K_T/√R with K_T ∝ 1/KV does not depend on the number of turns
// (D. C. Hanselman, from memory), nor does the drag torque K_T I₀. Tolerance: roundings.
TEST(Presets, AnotherWindingKeepsTheMotorConstant)
{
    for (const MotorPreset& motor : motorPresets()) {
        const MotorPreset other = wound(motor, 0.73 * motor.kv_rpm_per_v);
        const auto constant = [](const MotorPreset& m) {
            return 1 / (m.kv_rpm_per_v * std::sqrt(m.resistance_mohm));
        };
        EXPECT_NEAR(constant(other), constant(motor), 8 * kEps * constant(motor)) << motor.name;
        const double drag = motor.no_load_current_a / motor.kv_rpm_per_v;
        EXPECT_NEAR(other.no_load_current_a / other.kv_rpm_per_v, drag, 8 * kEps * drag);
        EXPECT_EQ(other.mass_g, motor.mass_g);
    }
    EXPECT_THROW(wound(motorPresets()[0], 0), std::logic_error);
}

// Oracle: by hand. 13 g on 10 in: 13 · 254²/18 = 46 595 g·mm².
TEST(Presets, PropellersHaveTheInertiaOfTheirMassAndDiameter)
{
    for (const PropellerPreset& propeller : propellerPresets())
        if (propeller.diameter_in == 10 && propeller.blades == 2) {
            EXPECT_NEAR(inertia_g_mm2(propeller), 46594.9, 0.1);
        }
}

TEST(Presets, PropellersGrowHeavierWithDiameterAndBlades)
{
    const auto all = propellerPresets();
    for (std::size_t k = 1; k < all.size(); ++k) {
        const bool alike = all[k].material == all[k - 1].material;
        EXPECT_GE(all[k].diameter_in, all[k - 1].diameter_in);
        if (alike && all[k].blades == 3) {
            EXPECT_GT(all[k].mass_g, all[k - 1].mass_g) << k;
        }
    }
}

// Oracle: cells as built, from memory: pouches hold 110 to 180 Wh/kg at 3.7 V and weigh 1.8 to
// 2.3 g/cm³, round cells 200 to 260 Wh/kg at 3.6 V and, with the gaps between them, 1.8 to
// 2.3 g/cm³.
TEST(Presets, PacksHoldWhatTheirMassAndSizeAllow)
{
    for (const PackPreset& pack : packPresets()) {
        SCOPED_TRACE(english(nameOf(pack)));
        const bool pouch = pack.kind == PackPreset::Cells::Pouch;
        const double energy = pack.cells * (pouch ? 3.7 : 3.6) * pack.capacity_ah;  // [Wh]
        EXPECT_GT(1e3 * energy / pack.mass_g, pouch ? 110 : 200);
        EXPECT_LT(1e3 * energy / pack.mass_g, pouch ? 180 : 260);
        const double volume = pack.size_mm[0] * pack.size_mm[1] * pack.size_mm[2] / 1e3;  // [cm³]
        EXPECT_GT(pack.mass_g / volume, 1.8);
        EXPECT_LT(pack.mass_g / volume, 2.3);
        if (pouch) {
            const double ofCell = (pack.resistance_mohm - 3) * pack.capacity_ah / pack.cells;
            EXPECT_GE(ofCell, 10);
            EXPECT_LE(ofCell, 17);
        }
    }
}

TEST(Presets, TubesHaveAWall)
{
    for (const TubePreset& tube : tubePresets())
        EXPECT_GE(tube.outer_diameter_mm - tube.bore_mm, 2);
}

// Oracle: the word. A tube is hollow, and what is sold as a plate or a board stays as it is cut.
TEST(WithArm, ATubeIsHollow)
{
    for (const ArmPreset& preset : armPresets()) {
        stillbay::Setup craft = test::sampleSetup();
        craft.airframe.arm.wall_mm.reset();
        const auto wall = withArm(craft, preset).airframe.arm.wall_mm;
        const bool isTube = std::string_view(preset.name).find("tube") != std::string_view::npos;
        EXPECT_EQ(wall.has_value(), isTube) << preset.name;
        craft.airframe.arm.width_mm = 2.0;  // no bore is left
        EXPECT_FALSE(withArm(craft, preset).airframe.arm.wall_mm) << preset.name;
        craft.airframe.arm.wall_mm = 0.5;
        EXPECT_EQ(withArm(craft, preset).airframe.arm.wall_mm, 0.5) << preset.name;
    }
}

}  // namespace
}  // namespace stillbay
