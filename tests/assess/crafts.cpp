// SPDX-License-Identifier: MIT
#include "tests/assess/crafts.h"

#include "core/craft/craft.h"
#include "core/setup/text.h"
#include "core/tube/rubber.h"

#include <cmath>
#include <fstream>
#include <iterator>
#include <numbers>
#include <random>
#include <stdexcept>

namespace stillbay::test {
namespace {

class Dice {
public:
    explicit Dice(unsigned seed) : m_random(seed) {}

    // Built from the engine's bits alone, so that every machine draws the same craft.
    double between(double from, double to)
    {
        return from + (to - from) * (static_cast<double>(m_random()) / 4294967296.0);
    }
    std::size_t count(std::size_t from, std::size_t to)
    {
        return from + m_random() % (to - from + 1);
    }

private:
    std::mt19937 m_random;
};

// tan(HFOV/2) = W√3/√(W² + H²): pan and tilt move the picture as far as a roll does,
// rms over the frame.
double evenView_deg(int width_px, int height_px)
{
    const double tangent = width_px * std::sqrt(3.0) / std::hypot(width_px, height_px);
    return 2 * std::atan(tangent) * 180 / std::numbers::pi;
}

Part cube(Dice& dice, double mass_g, double size_mm, const Triple& about_mm, double spread_mm)
{
    Part part{"cube", mass_g, about_mm, {size_mm, size_mm, size_mm}, {}};
    for (double& coordinate : part.centre_mm)
        coordinate += dice.between(-spread_mm, spread_mm);
    return part;
}

Triple turnedPoint(const Triple& p, double angle_deg)
{
    const double angle = angle_deg * std::numbers::pi / 180, c = std::cos(angle),
                 s = std::sin(angle);
    return {c * p[0] - s * p[1], s * p[0] + c * p[1], p[2]};
}

// Every position of the craft but the arms', which are polar.
template <class Change>
void changePositions(Setup& craft, const Change& change)
{
    for (std::vector<Part>* parts : {&craft.airframe.parts, &craft.bay.parts})
        for (Part& part : *parts)
            part.centre_mm = change(part.centre_mm);
    for (MountPoint& point : craft.mounts.points) {
        point.bay_mm = change(point.bay_mm);
        if (point.anchor_mm)
            point.anchor_mm = change(*point.anchor_mm);
    }
    craft.camera.centre_mm = change(craft.camera.centre_mm);
}

// Into the allowed −360 … 360.
double wrapped(double angle_deg)
{
    return std::remainder(angle_deg, 360.0);
}

Setup craftOf(const std::string& path)
{
    std::ifstream file(path);
    const std::string text(std::istreambuf_iterator<char>(file), {});
    const auto loaded = readSetup(text);
    if (!loaded)
        throw std::runtime_error(path + ": " + english(loaded.error().what));
    return loaded->setup;
}

}  // namespace

Setup sampleCraft(const char* name)
{
    return craftOf(std::string(STILLBAY_SAMPLES_DIR "/") + name + ".stillbay");
}

Setup steepReedbed()
{
    return craftOf(STILLBAY_REFERENCE_DIR "/reedbed.stillbay");
}

Setup skewCraft(unsigned seed)
{
    Dice dice(seed);
    Setup craft;
    craft.name = "skew craft";
    // Drawn one after the other: arguments of a call come in any order.
    for (int i = 0; i < 3; ++i) {
        const double size_mm = dice.between(20, 70), mass_g = dice.between(60, 260);
        craft.airframe.parts.push_back(cube(dice, mass_g, size_mm, {0, 0, 5}, 25));
    }
    const std::size_t arms = dice.count(3, 6);
    for (std::size_t i = 0; i < arms; ++i)
        craft.airframe.arms.push_back(
            {.azimuth_deg = wrapped(360.0 * static_cast<double>(i) / static_cast<double>(arms) +
                                    dice.between(0, 25)),
             .root_radius_mm = dice.between(45, 70),
             .length_mm = dice.between(140, 220),
             .height_mm = dice.between(-8, 8)});
    craft.airframe.arm.loss_factor = 0.01;
    craft.airframe.arm.height_mm = dice.between(10, 16);
    if (dice.count(0, 1) == 1)
        craft.airframe.arm.root_stiffness_nm_per_rad = dice.between(300, 2000);
    craft.drive.propeller.thrust_coefficient = 0.11;
    craft.drive.propeller.power_coefficient = 0.046;

    for (int i = 0; i < 3; ++i) {
        const double size_mm = dice.between(20, 60), mass_g = dice.between(50, 220);
        craft.bay.parts.push_back(cube(dice, mass_g, size_mm, {0, 0, -42}, 22));
    }
    craft.camera.centre_mm = {dice.between(40, 110), dice.between(-20, 20), -45};
    craft.camera.horizontal_fov_deg = evenView_deg(craft.camera.width_px, craft.camera.height_px);

    craft.tube.youngs_modulus_mpa = dice.between(1.8, 5);
    craft.tube.loss_factor = dice.between(0.05, 0.2);
    craft.mounts.free_length_mm = dice.between(18, 30);
    craft.mounts.stretch = dice.between(1.05, 1.3);
    craft.mounts.ends = dice.count(0, 3) == 0 ? Ends::Hinged : Ends::Clamped;
    const std::size_t tubes = dice.count(4, 6);
    for (std::size_t i = 0; i < tubes; ++i) {
        const double azimuth_deg =
            360.0 * static_cast<double>(i) / static_cast<double>(tubes) + dice.between(0, 40);
        const Triple p =
            turnedPoint({dice.between(40, 75), 0, dice.between(-36, -26)}, azimuth_deg);
        craft.mounts.points.push_back({.bay_mm = p,
                                       .azimuth_deg = wrapped(azimuth_deg + dice.between(-12, 12)),
                                       .elevation_deg = dice.between(4, 30)});
    }
    // Bodies apart on each tip, on a rotor heavy enough to be felt.
    craft.drive.motor.diameter_mm = dice.between(22, 40);
    craft.drive.motor.height_mm = dice.between(15, 40);
    craft.drive.propeller.inertia_g_mm2 = dice.between(3e4, 2e5);
    craft.drive.propeller.height_above_arm_mm = dice.between(20, 60);
    return craft;
}

Setup twoPlaneCraft()
{
    Setup craft;
    craft.name = "two-plane craft";
    craft.airframe.parts = {{"plates", 210, {0, 0, 4}, {150, 110, 20}, {}},
                            {"battery", 320, {0, 0, 31}, {120, 40, 30}, {}}};
    craft.airframe.arms = {
        {.azimuth_deg = 0, .root_radius_mm = 70, .length_mm = 180, .height_mm = 3},
        {.azimuth_deg = 180, .root_radius_mm = 70, .length_mm = 180, .height_mm = 3}};
    craft.bay.parts = {{"camera", 240, {0, 0, -48}, {70, 60, 44}, {}},
                       {"tray", 70, {0, 0, -24}, {160, 70, 5}, {}}};
    craft.camera.centre_mm = {0, 0, -48};
    for (const double x : {1.0, -1.0})
        for (const double y : {1.0, -1.0})
            craft.mounts.points.push_back(
                {.bay_mm = {62 * x, 31 * y, -24},
                 .azimuth_deg = std::atan2(0.7 * y, x) * 180 / std::numbers::pi,
                 .elevation_deg = 17});
    return craft;
}

Setup turned(const Setup& craft, double angle_deg)
{
    Setup result = craft;
    changePositions(result, [&](const Triple& p) { return turnedPoint(p, angle_deg); });
    for (Arm& arm : result.airframe.arms)
        arm.azimuth_deg = wrapped(arm.azimuth_deg + angle_deg);
    for (MountPoint& point : result.mounts.points)
        point.azimuth_deg = wrapped(point.azimuth_deg + angle_deg);
    return result;
}

Setup mirrored(const Setup& craft)
{
    Setup result = craft;
    changePositions(result, [](const Triple& p) { return Triple{p[0], -p[1], p[2]}; });
    for (Arm& arm : result.airframe.arms)
        arm.azimuth_deg = -arm.azimuth_deg;
    for (MountPoint& point : result.mounts.points)
        point.azimuth_deg = -point.azimuth_deg;
    if (result.airframe.arms.size() % 2 != 0)
        throw std::logic_error("mirrored: an odd number of arms cannot turn their spins");
    for (std::size_t i = 0; i + 1 < result.airframe.arms.size(); i += 2)
        std::swap(result.airframe.arms[i], result.airframe.arms[i + 1]);
    return result;
}

Setup raised(const Setup& craft, double height_mm)
{
    Setup result = craft;
    changePositions(result, [&](const Triple& p) { return Triple{p[0], p[1], p[2] + height_mm}; });
    for (Arm& arm : result.airframe.arms)
        arm.height_mm += height_mm;
    return result;
}

Setup doubled(const Setup& craft)
{
    Setup result = craft;
    for (std::vector<Part>* parts : {&result.airframe.parts, &result.bay.parts})
        for (Part& part : *parts)
            part.mass_g *= 2;
    ArmSection& arm = result.airframe.arm;
    arm.density_kg_m3 *= 2;
    arm.youngs_modulus_gpa *= 2;
    arm.shear_modulus_gpa *= 2;
    if (arm.root_stiffness_nm_per_rad)
        *arm.root_stiffness_nm_per_rad *= 2;
    Drive& drive = result.drive;
    // Always from given sizes: the estimates do not double.
    drive.motor.diameter_mm = motorFigures(drive.motor).diameter * 1e3;
    drive.motor.height_mm = motorFigures(drive.motor).height * 1e3;
    drive.propeller.inertia_g_mm2 = 2e9 * propellerFigures(drive.propeller).inertia;
    drive.motor.mass_g *= 2;
    drive.propeller.mass_g *= 2;
    drive.unbalance_g_mm *= 2;
    for (double& fraction : drive.blade_pass_thrust_fraction)
        fraction *= 2;
    TubeKind& tube = result.tube;
    tube.density_kg_m3 *= 2;
    // Always from a modulus: hardness does not double.
    tube.youngs_modulus_mpa =
        2 * tube.youngs_modulus_mpa.value_or(youngsModulusFromShoreA(tube.hardness_shore_a) / 1e6);
    return result;
}

}  // namespace stillbay::test
