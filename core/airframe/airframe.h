// SPDX-License-Identifier: MIT
#pragma once

#include "core/airframe/arm.h"
#include "core/mass/mass.h"

#include <cstddef>
#include <vector>

/// The airframe in flight: a rigid hub with arms. Airframe axes, datum O.
namespace stillbay {

/// Where one arm stands.
struct ArmPlace {
    double azimuth = 0.0;     ///< [rad] of its outward direction, from x towards y
    double rootRadius = 0.0;  ///< [m]
    double length = 0.0;      ///< [m]
    double height = 0.0;      ///< [m] above the datum

    Matrix3d R_OA() const;  ///< arm axes to airframe axes
    Vector3d p_OR() const;  ///< [m] datum to the root
    Vector3d p_OT() const;  ///< [m] datum to the tip
};

struct AirframeModel {
    MassFigures hub;  ///< the parts alone
    ArmMaterial arm;
    std::vector<ArmPlace> arms;
    Tip tip;  ///< on each arm
};

/// Which way a motor turns seen from above: 1 counter-clockwise, −1 clockwise. The first turns
/// counter-clockwise, the others alternate in the order of the arms.
double spinOf(std::size_t motor);

/// Datum to an arm's propeller [m], where its loads act.
Vector3d propellerPoint(const AirframeModel& airframe, const ArmPlace& place);

/// Mass figures of everything, arms as boxes of their outer size with the mass of their section,
/// motors and propellers as the bodies of the tip.
MassFigures rigidFigures(const AirframeModel& airframe);

/// Answer of the free airframe at one frequency and rotor speed, about its reference point.
struct Receptance {
    /// Motion per wrench: blocks [m/N, 1/N; 1/N, rad/(N·m)]. Symmetric only while the rotors stand
    /// still: with all spins reversed it is transposed.
    Matrix6cd R;
    std::vector<Matrix6cd> motor;  ///< per arm: wrench at the reference for a wrench at the tip
};

/// Datum to the reference point of receptance(): the hub's centre of mass when the arms bend, the
/// whole airframe's when they are rigid.
Vector3d referencePoint(const AirframeModel& airframe, bool flexible);

/// @param omega [rad/s] > 0, @param speed [rev/s] of all rotors, @param flexible false: arms rigid,
/// the whole airframe one body. Tip wrenches are in airframe axes about the arm tip.
Receptance receptance(const AirframeModel& airframe, double omega, double speed, bool flexible);

}  // namespace stillbay
