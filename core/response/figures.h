// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"

#include <optional>
#include <vector>

/// How the bay of one craft rests and answers, as plain values: what assessment and search share.
/// SI inside ([m], [N], [rad]); Hz, rpm and px carry their unit in the name.
namespace stillbay {

enum class TubeState { Taut, Slack, Buckled };

struct TubeAtRest {
    double stretch = 0.0;
    double tension = 0.0;  ///< [N]
    TubeState state = TubeState::Taut;
    double bend = 0.0;       ///< [rad] largest angle of an end against the chord; 0 when hinged
    double elevation = 0.0;  ///< [rad] of the anchor, seen from the bay point
};

/// Where the bay comes to rest.
struct RestFigures {
    double load_factor = 1.0;
    Vector3d shift = Vector3d::Zero();     ///< [m] of the bay's centre of mass from the drawing
    Vector3d rotation = Vector3d::Zero();  ///< [rad] rotation vector from the drawing
    std::vector<TubeAtRest> tubes;         ///< in the order of the mount points
};

/// The bay's answer to one order: multiples of the rotor speed.
struct OrderPoint {
    int order = 1;  ///< 1, B, 2B, …
    double frequency_hz = 0.0;
    double wobble_px = 0.0;  ///< rms, powers added over the motors
    /// [rad] per motor: the camera's rotation about the picture's up, left and optical axes, as
    /// amplitudes of e^{iωt} with all motors in step. Empty while the motors stand still.
    std::vector<Vector3cd> rotations;
    /// The same for a bay that is rigidly mounted to the airframe instead of on tubes.
    std::vector<Vector3cd> rigidRotations;
};

struct ThrottlePoint {
    double throttle = 0.0;
    double speed_rpm = 0.0;
    double thrust_per_motor = 0.0;  ///< [N]
    double wobble_px = 0.0;         ///< rms, powers added over motors and orders
    double wobble_worst_px = 0.0;   ///< plain sum over motors and orders
    double frame_shake_px = 0.0;    ///< shift of whole frames: rms, powers added likewise
    /// wobble_px of a bay that is rigidly mounted to the airframe; none exactly on an undamped
    /// resonance.
    std::optional<double> rigid_px;
    std::vector<OrderPoint> orders;
};

/// A point of the wobble's curve over the throttle.
struct WobbleAt {
    double throttle = 0.0, wobble_px = 0.0;
};

enum class Grade { Clean, Faint, Bad };

/// A stretch of the throttle with one grade; neighbours share their border.
struct ThrottleRange {
    double from = 0.0, to = 0.0;
    Grade grade = Grade::Clean;
};

/// Wobble over the cruise throttles of one pack state.
struct CruiseWobble {
    double worst_px = 0.0;        ///< the true largest, to 1 %
    double worst_throttle = 0.0;  ///< where it stands
    double mean_px = 0.0;         ///< over the window
};

/// Wobble over the cruise throttles from the full to the empty pack.
struct CruiseFigures {
    CruiseWobble full, empty;

    double worst_px() const;  ///< the larger of both packs
    double mean_px() const;   ///< mean of both packs
};

}  // namespace stillbay
