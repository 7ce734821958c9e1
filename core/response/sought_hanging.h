// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"
#include "core/mass/mass.h"
#include "core/setup/fields.h"
#include "core/setup/setup.h"
#include "core/suspension/suspension.h"
#include "core/tube/tube.h"

#include <cstddef>
#include <vector>

/// What of a bay's hanging is sought for it to rest as drawn, and what that leaves unbalanced.
/// Internal to the response room.
namespace stillbay {

/// The most unknowns there are: two of each tube.
inline constexpr int kMostSought = 2 * static_cast<int>(kMountPointCount.max);

/// Values of the unknowns: planned, all elevations [rad] and then all stretches [1]; drilled, all
/// free lengths [m].
using SoughtValues = Eigen::Matrix<double, Eigen::Dynamic, 1, Eigen::ColMajor, kMostSought, 1>;

/// Column k: the slope of a six-vector by unknown k.
using SoughtSlopes = Eigen::Matrix<double, 6, Eigen::Dynamic, Eigen::ColMajor, 6, kMostSought>;

/// One tube with what is not sought.
struct HungTube {
    Tube tube;
    Vector3d p_CB = Vector3d::Zero();  ///< [m] centre of mass to bay point
    double azimuth = 0.0;              ///< [rad]
    Vector3d d = Vector3d::Zero();     ///< drilled: bay to anchor, of length 1
    double distance = 0.0;             ///< [m] drilled: bay point to anchor
};

/// The tubes of a bay and the unknowns with their ranges.
struct SoughtHanging {
    bool drilled = false;
    double weight = 0.0;  ///< [N]
    std::vector<HungTube> tubes;
    SoughtValues start;      ///< as the mounts are, within the range
    SoughtValues low, high;  ///< the range
    SoughtValues units;      ///< what counts as one step
    /// Where the stretches begin, whose sum is kept. Drilled, where there are none: count().
    Eigen::Index stretches = 0;

    Eigen::Index count() const { return start.size(); }
};

/// @param suspension  of these mounts, @param stock  the kind its tubes are of
/// @param mounts      valid ones
SoughtHanging soughtHangingOf(const MassFigures& bay, const Suspension& suspension,
                              const TubeKind& stock, const Mounts& mounts);

/// A straight tube's pull on the bay as drawn.
struct TubePull {
    Vector3d d = Vector3d::Zero();  ///< bay to anchor, of length 1
    double tension = 0.0;           ///< [N]
    double slope = 0.0;             ///< by the tube's stretch [N], drilled by its free length [N/m]
};

/// @param i  of hanging.tubes
TubePull tubePull(const SoughtHanging& hanging, const SoughtValues& x, std::size_t i);

/// Force and moment about the centre of mass that the drawn bay is left with [N, N·m].
///
/// @param slopes  filled with their slopes by the unknowns; may be null
/// @source docs/theory.md (7a); own derivation.
Vector6d unbalancedForce(const SoughtHanging& hanging, const SoughtValues& x, SoughtSlopes* slopes);

/// Makes what the unknowns are into mounts, rounded to what a protractor, a ruler or a knife can
/// follow: 0.01°, 10⁻⁴ of stretch, 0.01 mm. Stretches that are all alike are the common one, and so
/// are lengths.
///
/// @param mounts  those that `hanging` was made of; what is not sought stays
Mounts mountsAt(const SoughtHanging& hanging, const SoughtValues& x, Mounts mounts);

/// Gives a suspension the unknowns' values, without rounding.
///
/// @param suspension  of the same bay and tubes, whatever values it has
void hangAt(Suspension& suspension, const SoughtHanging& hanging, const SoughtValues& x);

}  // namespace stillbay
