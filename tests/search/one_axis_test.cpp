// SPDX-License-Identifier: MIT
// A craft whose bay can only turn about the vertical: what it films, and where the best stretch
// lies, is known in closed form.
#include "core/craft/craft.h"
#include "core/search/best.h"
#include "core/search/map.h"
#include "core/tube/rubber.h"
#include "tests/suspension/own_energy.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>

namespace stillbay {
namespace {

using Craft = Setup;  // inside TEST the name Setup is taken
using std::numbers::pi;

constexpr double kRadius_mm = 10, kFreeLength_mm = 10;
constexpr double kUnbalance_g_mm = 4, kRoot_mm = 60, kArm_mm = 190, kMotor_g = 62,
                 kPropeller_g = 13, kMotorDiameter_mm = 34;

// Everything lies in one plane and is alike under quarter turns, so that the unbalance pushes and
// turns in that plane only; the bay is a wide, light plate, which hardly sags; the arms are all but
// rigid; no blade-pass excitation.
Craft plate()
{
    Craft craft;
    craft.airframe.parts = {{"hub", 250, {0, 0, 0}, {100, 100, 20}, {}}};
    craft.airframe.arm = {.width_mm = 12,
                          .height_mm = 12,
                          .density_kg_m3 = 50,
                          .youngs_modulus_gpa = 1000,
                          .shear_modulus_gpa = 500,
                          .loss_factor = 0.01};
    craft.drive.motor.mass_g = kMotor_g;
    craft.drive.motor.height_above_arm_mm = 0;
    craft.drive.motor.diameter_mm = kMotorDiameter_mm;
    craft.drive.propeller.mass_g = kPropeller_g;
    craft.drive.propeller.thrust_coefficient = 0.11;
    craft.drive.propeller.power_coefficient = 0.046;
    craft.drive.unbalance_g_mm = kUnbalance_g_mm;
    craft.drive.blade_pass_thrust_fraction.clear();
    craft.bay.parts = {{"plate", 60, {0, 0, 0}, {250, 250, 4}, {}}};
    craft.bay.travel_mm = 50;
    craft.tube.outer_diameter_mm = 14;
    craft.tube.bore_mm = 2;
    craft.tube.hardness_shore_a = 40;
    craft.mounts.free_length_mm = kFreeLength_mm;
    for (int quarter = 0; quarter < 4; ++quarter) {
        const double azimuth = pi / 4 + quarter * pi / 2;
        craft.airframe.arms.push_back({45.0 + 90 * quarter, kRoot_mm, kArm_mm, 0, {}});
        MountPoint point;
        point.bay_mm = {kRadius_mm * std::cos(azimuth), kRadius_mm * std::sin(azimuth), 0};
        point.azimuth_deg = 45.0 + 90 * quarter;
        craft.mounts.points.push_back(point);
    }
    return craft;
}

// Turning stiffness of the four tubes about the vertical for small vibration [N·m/rad]. When the
// plate turns by θ, a chord turns by −θ r/L; against it the anchor's end is turned by θ r/L and the
// plate's by θ (1 + r/L).
Complex turningStiffness(const Craft& craft, double stretch)
{
    const TubeKind& stock = craft.tube;
    const test::OwnEnergy tube(
        {.tube = {.section = {stock.outer_diameter_mm / 1e3, stock.bore_mm / 1e3},
                  .shearModulus = youngsModulusFromShoreA(stock.hardness_shore_a) / 3,
                  .density = stock.density_kg_m3,
                  .freeLength = kFreeLength_mm / 1e3,
                  .clamped = true},
         .bay = {},
         .attachments = {}});
    const double L = stretch * kFreeLength_mm / 1e3, r = kRadius_mm / 1e3;
    const test::ComplexReal g =
        test::ComplexReal(stock.dynamic_ratio) * test::ComplexReal(1, stock.loss_factor);
    const auto [a, b] = tube.ends(L, g);
    const test::Real p = r / L, q = 1 + r / L;
    const test::ComplexReal each =
        a * (p * p + q * q) + test::Real(2) * b * p * q + tube.tension(L) * r * (r + L) / L;
    return 4.0 * Complex(each);
}

// √½ √(1 − j₀² − 3j₁²) |sinc|: docs/theory.md, rolling shutter and exposure.
double shutter(const Camera& camera, double f_hz)
{
    const double x = pi * f_hz * camera.readout_ms / 1e3, e = pi * f_hz * camera.exposure_ms / 1e3;
    const double j0 = std::sin(x) / x, j1 = std::sin(x) / (x * x) - std::cos(x) / x;
    return std::sqrt((1 - j0 * j0 - 3 * j1 * j1) / 2) * std::abs(std::sin(e) / e);
}

// Two rotors on a torsion spring, the first one twisted by each of four motors. Of a motor the
// stator turns with its arm, half of the mass in a cylinder.
double wobble_px(const Craft& craft, double stretch, double speed)
{
    const auto& hub = craft.airframe.parts[0];
    const double motorRadius = (kRoot_mm + kArm_mm) / 1e3;
    const double arm_kg = craft.airframe.arm.density_kg_m3 * 0.012 * 0.012 * kArm_mm / 1e3;
    const double middle = (kRoot_mm + kArm_mm / 2) / 1e3;
    const double J_f = hub.mass_g / 1e3 / 12 * 2 * 0.1 * 0.1 +
                       4 * (arm_kg * (std::pow(kArm_mm / 1e3, 2) / 12 + middle * middle) +
                            (kMotor_g + kPropeller_g) / 1e3 * motorRadius * motorRadius +
                            kMotor_g / 1e3 / 4 * std::pow(kMotorDiameter_mm / 2e3, 2));
    const double J_b = 0.060 / 12 * 2 * 0.25 * 0.25;
    const double omega2 = std::pow(2 * pi * speed, 2);
    const double torque = kUnbalance_g_mm * 1e-6 * omega2 * motorRadius;
    const Complex K = turningStiffness(craft, stretch);
    const double turn =
        torque * std::abs(K) / (omega2 * std::abs(K * (J_f + J_b) - omega2 * J_f * J_b));
    const Camera& camera = craft.camera;
    const double focal_px =
        camera.width_px / 2.0 / std::tan(camera.horizontal_fov_deg / 2 * pi / 180);
    return focal_px * turn * shutter(camera, speed) * std::sqrt(4.0);
}

struct Theory {
    double full_px = 0.0, empty_px = 0.0;
    double worst_px() const { return std::max(full_px, empty_px); }
};

Theory theory(const Craft& craft, double stretch)
{
    const ExcitedAirframe excited = makeExcitedAirframe(craft);
    const auto [from, to] = craft.flight.cruise_throttle;
    const std::vector<double> throttles = Grid{from, to, 0.0005}.values();
    Theory worst;
    for (const double u : throttles) {
        worst.full_px =
            std::max(worst.full_px,
                     wobble_px(craft, stretch, rotorSpeed(excited.drive, u, excited.fullVoltage)));
        worst.empty_px =
            std::max(worst.empty_px,
                     wobble_px(craft, stretch, rotorSpeed(excited.drive, u, excited.emptyVoltage)));
    }
    return worst;
}

// Oracle: two rotors on a torsion spring (any vibration text), the spring from the tube's energy
// written down a second time. The arms are not quite rigid and the plate sags by a tenth of a
// millimetre: 0.5 %.
TEST(OneAxisBay, FilmsWhatTwoRotorsWould)
{
    const Craft craft = plate();
    const Evaluator evaluator(craft);
    for (const double stretch : {1.02, 1.1, 1.3}) {
        Design design = designOf(craft);
        design.mounts.stretch = stretch;
        const Evaluation evaluation = evaluator.evaluate(design);
        ASSERT_TRUE(evaluation.feasible()) << constraintCode(*evaluation.violated);
        const Theory expected = theory(craft, stretch);
        EXPECT_NEAR(evaluation.cruise.full.worst_px, expected.full_px, 5e-3 * expected.full_px)
            << stretch;
        EXPECT_NEAR(evaluation.cruise.empty.worst_px, expected.empty_px, 5e-3 * expected.empty_px)
            << stretch;
    }
}

// Oracle: the same closed form. A tube that is stretched more grows longer and thinner, but also
// tighter: in between the turning stiffness has a minimum, and with it the wobble.
TEST(OneAxisBay, HasItsBestStretchWhereTheoryPutsIt)
{
    const Craft craft = plate();
    double bestStretch = 0, best_px = 1e9;
    for (const double stretch : Grid{1.0, 1.5, 1e-3}.values())
        if (const double worst = theory(craft, stretch).worst_px(); worst < best_px) {
            best_px = worst;
            bestStretch = stretch;
        }
    ASSERT_GT(bestStretch, 1.01);  // inside, not at an end
    ASSERT_LT(bestStretch, 1.45);
    ASSERT_GT(theory(craft, 1.0).worst_px(), 1.01 * best_px);
    ASSERT_GT(theory(craft, 1.49).worst_px(), 1.01 * best_px);

    SearchOptions nominal;
    nominal.robustSamples = 0;
    const Found found = findBest(craft, {{{Variable::Stretch, 1.0, 1.5}}, {}, {}}, nominal).value();
    EXPECT_NEAR(*found.best.design.mounts.stretch, bestStretch, 0.01);
    EXPECT_NEAR(found.best.evaluation.cruise.worst_px(), best_px, 5e-3 * best_px);

    const Evaluator evaluator(craft);
    const MapAxis length{Variable::FreeLength, kFreeLength_mm, kFreeLength_mm, 1},
        stretch{Variable::Stretch, 1.0, 1.5, 101};
    const DesignMap map = mapDesigns(evaluator, designOf(craft), length, stretch).value();
    EXPECT_NEAR(map.y.at(*map.best()), bestStretch, 0.01);
}

}  // namespace
}  // namespace stillbay
