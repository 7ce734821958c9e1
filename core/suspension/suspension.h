// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"
#include "core/base/result.h"
#include "core/mass/mass.h"
#include "core/tube/tube.h"

#include <optional>
#include <vector>

/// The bay on its tubes: rest pose and stiffness about it. Axes are the airframe's throughout.
namespace stillbay {

/// One tube's ends in the drawing. It runs from the airframe's anchor to the bay point.
struct Attachment {
    Vector3d p_OA = Vector3d::Zero();  ///< [m] datum to the anchor, fixed in the airframe
    Vector3d p_OB = Vector3d::Zero();  ///< [m] datum to the bay point as drawn
    std::optional<Tube> ownTube;       ///< where it is cut unlike the others
};

/// A bay as drawn: tubes of one kind, each with its own ends.
struct Suspension {
    MassFigures bay;
    Tube tube;
    std::vector<Attachment> attachments;

    const Tube& tubeOf(const Attachment& attachment) const
    {
        return attachment.ownTube ? *attachment.ownTube : tube;
    }
};

/// Displacement of the bay from the drawing.
struct Pose {
    Vector3d shift = Vector3d::Zero();  ///< [m] of the centre of mass
    Vector3d theta = Vector3d::Zero();  ///< [rad] rotation vector, R = exp[θ]×
    Matrix3d R = Matrix3d::Identity();
};

/// Elastic energy of all tubes with its derivatives by a small motion (u, θ) of the bay from
/// `pose`, about the displaced centre of mass.
struct Elasticity {
    double energy = 0.0;                   ///< [J]
    Vector6d gradient = Vector6d::Zero();  ///< [N, N·m]
    Matrix6d hessian = Matrix6d::Zero();   ///< blocks [N/m, N; N, N·m]
};

/// @return not finite where a tube is crushed below kSmallestStretch.
/// @source docs/theory.md, "Where the bay rests"; own derivation, tested by finite differences.
Elasticity elasticity(const Suspension& suspension, const Pose& pose);

/// Length of each tube at `pose` [m].
std::vector<double> tubeLengths(const Suspension& suspension, const Pose& pose);

/// Largest angle between each tube's chord and its two end normals at `pose` [rad].
std::vector<double> tubeBends(const Suspension& suspension, const Pose& pose);

/// The stable rest pose under gravity times a load factor.
///
/// @param loadFactor 1: hover or on the bench.
/// @error NoAnswer  a motion is free (named), no stable rest, a tube is crushed, or Newton's method
///                  did not converge.
Result<Pose> restPose(const Suspension& suspension, double loadFactor);

/// Complex stiffness K* for small vibration about `pose`: blocks [N/m, N; N, N·m], symmetric.
///
/// @param g dynamic ratio and loss, ρ_d(1 + iη). With g = 1 it is elasticity().hessian.
/// @param pose a rest pose.
Matrix6cd dynamicStiffness(const Suspension& suspension, const Pose& pose, Complex g);

}  // namespace stillbay
