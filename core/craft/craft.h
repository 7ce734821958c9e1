// SPDX-License-Identifier: MIT
#pragma once

#include "core/airframe/airframe.h"
#include "core/drive/drive.h"
#include "core/film/film.h"
#include "core/setup/setup.h"
#include "core/suspension/suspension.h"

#include <cstddef>
#include <vector>

/// The one step from the builder's units to SI.
namespace stillbay {

/// Propeller figures in use.
struct PropellerFigures {
    double thrust_coefficient = 0.0, power_coefficient = 0.0;
    bool thrust_estimated = false, power_estimated = false;
    double inertia = 0.0;  ///< [kg·m²] polar
    bool inertia_estimated = false;
};

/// Size of a motor's body in use.
struct MotorFigures {
    double diameter = 0.0, height = 0.0;  ///< [m]
    bool diameter_estimated = false, height_estimated = false;
};

/// What the tubes, the mounts and the bay do not touch.
struct ExcitedAirframe {
    AirframeModel airframe;
    DriveModel drive;  ///< propeller coefficients filled in, estimated or not
    MotorFigures motor;
    PropellerFigures propeller;
    std::vector<double> unbalance;  ///< [kg·m] of each rotor
    double rotorMass = 0.0;         ///< [kg] of propeller and bell
    std::vector<double> bladePass;  ///< thrust fraction at B, 2B, …
    int blades = 0;
    double fullVoltage = 0.0;   ///< [V]
    double emptyVoltage = 0.0;  ///< [V]
};

/// The bay on its tubes.
struct MountedBay {
    Suspension suspension;
    double youngsModulus = 0.0;        ///< [Pa]
    double drawnLength = 0.0;          ///< [m] of the tubes, mean
    Complex dynamicFactor;             ///< g = ρ_d(1 + iη)
    Vector3d p_OC = Vector3d::Zero();  ///< [m] datum to the camera as drawn; of a Setup only
};

ExcitedAirframe makeExcitedAirframe(const Setup& setup);

/// The same craft flown with its pack empty.
ExcitedAirframe atEmptyPack(ExcitedAirframe craft);

/// @source a motor without measures: d = 7.3 mm ∛(m/g), h = 0.95 d, which fits common motors of 50
///         to 110 g; no source.
MotorFigures motorFigures(const Motor& motor);
PropellerFigures propellerFigures(const Propeller& propeller);

/// The two bodies on an arm's tip: the motor an upright solid cylinder of which half, the bell,
/// spins freely, so that the stator alone resists a turn about the axis; the propeller flat, the
/// time mean of its blades.
///
/// @source cylinder: m(3r² + h²)/12 across, ¼ m r² of the stator along, any dynamics text; the
///         bell's ½ m r² takes its half of the mass at the rim: common practice, no source.
Tip makeTip(const Drive& drive);

/// @error BadInput  a tube too short for the model, coincident tube ends.
Result<MountedBay> makeMountedBay(const Setup& setup);
Result<MountedBay> makeMountedBay(const MassFigures& bay, const TubeKind& stock,
                                  const Mounts& mounts);

/// How one sample of a tube of the common free length differs from the plan; its holes are where
/// the plan has them.
///
/// @param cut [m] longer than planned, @param modulus factor.
/// @error BadInput  a tube too short for the model.
Result<Tube> makeTube(const TubeKind& stock, const Mounts& mounts, double cut, double modulus);

/// The same of the tube at mounts.points[index], with its own free length where it has one.
Result<Tube> makeTube(const TubeKind& stock, const Mounts& mounts, std::size_t index, double cut,
                      double modulus);

/// Mass figures of boxes fixed to each other.
MassFigures makeBody(const std::vector<Part>& parts);

CameraModel makeCamera(const Camera& camera);

}  // namespace stillbay
