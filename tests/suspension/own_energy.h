// SPDX-License-Identifier: MIT
#pragma once

#include "core/suspension/suspension.h"

#include <array>
#include <complex>
#include <functional>
#include <vector>

/// The energy of a bay on tubes written down a second time, from the defining equations alone: long
/// double, end stiffness by complex functions, rotations by Eigen::AngleAxis, all derivatives by
/// central differences of fourth order. Shares no code with the core but its plain input values.
namespace stillbay::test {

using Real = long double;
using ComplexReal = std::complex<Real>;
using Vector3r = Eigen::Matrix<Real, 3, 1>;
using Matrix3r = Eigen::Matrix<Real, 3, 3>;
using Vector6r = Eigen::Matrix<Real, 6, 1>;
using Matrix6r = Eigen::Matrix<Real, 6, 6>;
using Vector8r = Eigen::Matrix<Real, 8, 1>;

/// A bay in plain values.
struct DrawnBay {
    TubeSpec tube;
    MassFigures bay;
    std::vector<Attachment> attachments;

    Suspension suspension() const { return {bay, makeTube(tube).value(), attachments}; }
};

struct OwnPose {
    Vector3r shift = Vector3r::Zero();
    Matrix3r R = Matrix3r::Identity();
};

class OwnEnergy {
public:
    explicit OwnEnergy(const DrawnBay& drawn);

    Real energy(const OwnPose& pose) const;        ///< [J]
    Vector6d gradient(const OwnPose& pose) const;  ///< by a small motion from the pose
    Matrix6d hessian(const OwnPose& pose) const;

    /// K* = hessian + Σ Bᵀ(C* − C)B with every derivative by differences.
    Matrix6cd dynamicStiffness(const OwnPose& pose, Complex g) const;

    /// Tension and axial stiffness by stretch alone, e.g. for statics by hand.
    Real tension(Real length) const;
    Real axialStiffness(Real length) const;

    /// End stiffness (a, b), moduli times g, the tension static.
    std::array<ComplexReal, 2> ends(Real length, ComplexReal g) const;

private:
    Real energyOfMeasures(const Vector8r& z) const;
    Vector8r measures(const Attachment& attachment, const OwnPose& pose) const;

    DrawnBay m_drawn;
    Real m_area, m_secondMoment, m_kappa, m_delta, m_effectiveLength;
};

OwnPose ownPose(const Pose& pose);

/// `pose` followed by the small motion (u, θ).
OwnPose moved(const OwnPose& pose, const Vector6r& motion);

/// Pose of the core from shift and rotation vector.
Pose poseOf(const Vector3d& shift, const Vector3d& theta);

}  // namespace stillbay::test
