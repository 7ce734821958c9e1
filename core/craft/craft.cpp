// SPDX-License-Identifier: MIT
#include "core/craft/craft.h"

#include "core/base/units.h"
#include "core/drive/balance.h"
#include "core/drive/propeller.h"
#include "core/setup/mount_layout.h"
#include "core/setup/unbalance.h"

#include <cmath>
#include <optional>
#include <string>

namespace stillbay {
namespace {

constexpr double kMotorDiameter = 7.3 * unit::mm;  // of a motor of one gram, an estimate
constexpr double kMotorHeight = 0.95;              // of its diameter, an estimate

Vector3d metres(const Triple& p_mm)
{
    return Vector3d(p_mm[0], p_mm[1], p_mm[2]) * unit::mm;
}

double youngsModulus(const TubeKind& stock)
{
    return stock.youngs_modulus_mpa ? *stock.youngs_modulus_mpa * unit::mpa
                                    : youngsModulusFromShoreA(stock.hardness_shore_a);
}

AirframeModel makeAirframe(const Setup& setup)
{
    const ArmSection& section = setup.airframe.arm;
    AirframeModel model{.hub = makeBody(setup.airframe.parts),
                        .arm = {.width = section.width_mm * unit::mm,
                                .height = section.height_mm * unit::mm,
                                .wall = {},
                                .density = section.density_kg_m3,
                                .youngsModulus = section.youngs_modulus_gpa * unit::gpa,
                                .shearModulus = section.shear_modulus_gpa * unit::gpa,
                                .lossFactor = section.loss_factor,
                                .rootStiffness = section.root_stiffness_nm_per_rad},
                        .arms = {},
                        .tip = makeTip(setup.drive)};
    if (section.wall_mm)
        model.arm.wall = *section.wall_mm * unit::mm;
    for (const Arm& arm : setup.airframe.arms)
        model.arms.push_back({arm.azimuth_deg * unit::deg, arm.root_radius_mm * unit::mm,
                              arm.length_mm * unit::mm, arm.height_mm * unit::mm});
    return model;
}

TubeSpec specOf(const TubeKind& stock, const Mounts& mounts, double freeLength, double modulus)
{
    return {.section = {stock.outer_diameter_mm * unit::mm, stock.bore_mm * unit::mm},
            .shearModulus = modulus * shearModulus(youngsModulus(stock)),
            .density = stock.density_kg_m3,
            .freeLength = freeLength,
            .clamped = mounts.ends == Ends::Clamped};
}

std::string pointName(std::size_t index)
{
    return "mounts.points[" + std::to_string(index) + "]";
}

// The given size, or the estimate.
double metresOr(const std::optional<double>& given_mm, double estimate)
{
    return given_mm ? *given_mm * unit::mm : estimate;
}

std::vector<double> unbalances(const Setup& setup)
{
    std::vector<double> result;
    for (const Arm& arm : setup.airframe.arms)
        result.push_back(unbalanceOf_g_mm(setup, arm) * unit::g_mm);
    return result;
}

}  // namespace

MotorFigures motorFigures(const Motor& motor)
{
    const double diameter = metresOr(motor.diameter_mm, kMotorDiameter * std::cbrt(motor.mass_g));
    return {.diameter = diameter,
            .height = metresOr(motor.height_mm, kMotorHeight * diameter),
            .diameter_estimated = !motor.diameter_mm.has_value(),
            .height_estimated = !motor.height_mm.has_value()};
}

PropellerFigures propellerFigures(const Propeller& propeller)
{
    const PropellerCoefficients estimate =
        estimateCoefficients(propeller.pitch_in / propeller.diameter_in, propeller.blades);
    return {.thrust_coefficient = propeller.thrust_coefficient.value_or(estimate.thrust),
            .power_coefficient = propeller.power_coefficient.value_or(estimate.power),
            .thrust_estimated = !propeller.thrust_coefficient.has_value(),
            .power_estimated = !propeller.power_coefficient.has_value(),
            .inertia = propeller.inertia_g_mm2
                           ? *propeller.inertia_g_mm2 * unit::g_mm2
                           : estimateInertia(propeller.mass_g * unit::g,
                                             propeller.diameter_in * unit::inch),
            .inertia_estimated = !propeller.inertia_g_mm2.has_value()};
}

Tip makeTip(const Drive& drive)
{
    const MotorFigures size = motorFigures(drive.motor);
    const double motor = drive.motor.mass_g * unit::g, radius = 0.5 * size.diameter;
    const double bell = 0.5 * motor * radius * radius;     // half of the mass, at the rim
    const double stator = 0.25 * motor * radius * radius;  // the other half, a cylinder
    const double propeller = propellerFigures(drive.propeller).inertia;
    const double height_mm = drive.motor.height_above_arm_mm;
    return {
        .motor = {.mass = motor,
                  .height = height_mm * unit::mm,
                  .level = motor * (3 * radius * radius + size.height * size.height) / 12,
                  .upright = stator},
        .propeller = {.mass = drive.propeller.mass_g * unit::g,
                      .height = drive.propeller.height_above_arm_mm.value_or(height_mm) * unit::mm,
                      .level = 0.5 * propeller,
                      .upright = 0.0},
        .rotorInertia = propeller + bell};
}

ExcitedAirframe makeExcitedAirframe(const Setup& setup)
{
    const Drive& drive = setup.drive;
    const PropellerFigures propeller = propellerFigures(drive.propeller);
    return {.airframe = makeAirframe(setup),
            .drive = {.kv = drive.motor.kv_rpm_per_v * unit::rpm,
                      .motorResistance = drive.motor.resistance_mohm * unit::mohm,
                      .noLoadCurrent = drive.motor.no_load_current_a,
                      .packResistance = drive.battery.resistance_mohm * unit::mohm,
                      .motors = static_cast<int>(setup.airframe.arms.size()),
                      .diameter = drive.propeller.diameter_in * unit::inch,
                      .thrustCoefficient = propeller.thrust_coefficient,
                      .powerCoefficient = propeller.power_coefficient,
                      .airDensity = setup.flight.air_density_kg_m3,
                      .throttleCurve = drive.throttle_curve},
            .motor = motorFigures(drive.motor),
            .propeller = propeller,
            .unbalance = unbalances(setup),
            .rotorMass = rotorMass(drive.motor.mass_g * unit::g, drive.propeller.mass_g * unit::g),
            .bladePass = drive.blade_pass_thrust_fraction,
            .blades = drive.propeller.blades,
            .fullVoltage = drive.battery.cells * drive.battery.full_v_per_cell,
            .emptyVoltage = drive.battery.cells * drive.battery.empty_v_per_cell};
}

ExcitedAirframe atEmptyPack(ExcitedAirframe craft)
{
    craft.fullVoltage = craft.emptyVoltage;
    return craft;
}

MassFigures makeBody(const std::vector<Part>& parts)
{
    std::vector<MassFigures> boxes;
    for (const Part& part : parts)
        boxes.push_back(
            boxFigures(part.mass_g * unit::g, metres(part.centre_mm), metres(part.size_mm)));
    return combine(boxes);
}

Result<Tube> makeTube(const TubeKind& stock, const Mounts& mounts, double cut, double modulus)
{
    return makeTube(specOf(stock, mounts, mounts.free_length_mm * unit::mm + cut, modulus));
}

Result<Tube> makeTube(const TubeKind& stock, const Mounts& mounts, std::size_t index, double cut,
                      double modulus)
{
    const MountPoint& point = mounts.points.at(index);
    auto tube =
        makeTube(specOf(stock, mounts, freeLength_mm(mounts, point) * unit::mm + cut, modulus));
    if (!tube && point.free_length_mm)
        tube.error().where = pointName(index) + ".free_length_mm";
    return tube;
}

Result<MountedBay> makeMountedBay(const MassFigures& bay, const TubeKind& stock,
                                  const Mounts& mounts)
{
    const auto tube = makeTube(stock, mounts, 0.0, 1.0);
    if (!tube)
        return tl::unexpected(tube.error());
    MountedBay mounted{.suspension = {bay, *tube, {}},
                       .youngsModulus = youngsModulus(stock),
                       .dynamicFactor = stock.dynamic_ratio * Complex(1, stock.loss_factor)};
    for (std::size_t i = 0; i < mounts.points.size(); ++i) {
        Attachment attachment{
            metres(anchorOf(mounts, mounts.points[i])), metres(mounts.points[i].bay_mm), {}};
        if (mounts.points[i].free_length_mm) {
            const auto own = makeTube(stock, mounts, i, 0.0, 1.0);
            if (!own)
                return tl::unexpected(own.error());
            attachment.ownTube = *own;
        }
        const double length = (attachment.p_OA - attachment.p_OB).norm();
        if (!(length > 0))
            return fail(Errc::BadInput,
                        phrase("A tube has its bay point and its anchor at the same place"),
                        pointName(i) + ".anchor_mm");
        mounted.suspension.attachments.push_back(attachment);
        mounted.drawnLength += length / static_cast<double>(mounts.points.size());
    }
    return mounted;
}

Result<MountedBay> makeMountedBay(const Setup& setup)
{
    auto mounted = makeMountedBay(makeBody(setup.bay.parts), setup.tube, setup.mounts);
    if (mounted)
        mounted->p_OC = metres(setup.camera.centre_mm);
    return mounted;
}

CameraModel makeCamera(const Camera& camera)
{
    return {.tiltDown = camera.tilt_down_deg * unit::deg,
            .width_px = static_cast<double>(camera.width_px),
            .height_px = static_cast<double>(camera.height_px),
            .horizontalView = camera.horizontal_fov_deg * unit::deg,
            .fisheye = camera.lens == Lens::Fisheye,
            .readout = camera.readout_ms * unit::ms,
            .exposure = camera.exposure_ms * unit::ms,
            .frameRate_hz = camera.frame_rate_hz};
}

}  // namespace stillbay
