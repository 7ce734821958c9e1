// SPDX-License-Identifier: MIT
#pragma once

#include "tests/suspension/own_energy.h"

#include <functional>
#include <vector>

/// Bay and airframe in flight as two free rigid bodies with finite rotations, coupled by the
/// nonlinear energy of the tubes: nothing is small, nothing is modal. An oracle for the frequency
/// domain.
namespace stillbay::test {

/// Displacement, turn and velocities of a body against its place at rest, ground axes.
struct BodyState {
    Vector3d shift = Vector3d::Zero();  ///< [m] of the centre of mass
    Eigen::Quaterniond turn = Eigen::Quaterniond::Identity();
    Vector3d velocity = Vector3d::Zero();         ///< [m/s]
    Vector3d angularVelocity = Vector3d::Zero();  ///< [rad/s]
};

struct TwoBodies {
    DrawnBay drawn;
    Pose rest;                   ///< of the bay
    MassFigures airframe;        ///< rigid
    double gravity = 0.0;        ///< [m/s²]
    double rotorMomentum = 0.0;  ///< [kg·m²/s] of all rotors, about the airframe's own upright axis
    Vector3d p_OM = Vector3d::Zero();  ///< [m] datum to the point that is shaken, on the airframe
    /// Force on it in the airframe's own axes [N] at a time [s].
    std::function<Vector3d(double)> force;
};

struct TwoBodyState {
    BodyState airframe, bay;
};

/// Integrates over whole periods of `omega` from t = 0 with an adaptive Runge-Kutta-Fehlberg 7(8)
/// method. Hover is a force of constant size and direction through the common centre of mass, held
/// by the airframe.
///
/// @param samples per period. @return samples × periods states, the first at t = 0.
std::vector<TwoBodyState> flyInTime(const TwoBodies& bodies, const TwoBodyState& start,
                                    double omega, int periods, int samples);

/// Complex amplitudes X of the part Re(X e^{iωt}) of each component, by least squares beside its
/// second harmonic and a slow drift (a parabola).
///
/// @param motions one column per sample, evenly spaced over whole periods.
Vector6cd fundamental(const Eigen::Matrix<double, 6, Eigen::Dynamic>& motions, int samples);

}  // namespace stillbay::test
