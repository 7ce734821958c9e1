// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"

/// What a rolling shutter makes of a small swinging rotation of the camera.
namespace stillbay {

struct CameraModel {
    double tiltDown = 0.0;  ///< [rad] of the optical axis, about the bay's y
    double width_px = 0.0;
    double height_px = 0.0;
    double horizontalView = 0.0;  ///< [rad] full angle
    double readout = 0.0;         ///< [s] first to last row
    double exposure = 0.0;        ///< [s] of each row
    double frameRate_hz = 0.0;
};

/// Rows: the picture's up, left and optical axes in bay axes. At no tilt z, y, x.
Matrix3d pictureAxes(const CameraModel& camera);

/// Pixels per rad of rotation about the picture's up axis (across), its left axis (up) and its
/// optical axis (roll, rms over the frame): f_px = (W/2)/tan(HFOV/2) twice, and half the
/// diagonal/√3.
Vector3d pixelsPerRadian(const CameraModel& camera);

/// Wobble [px rms] left in a frame per pixel of a sine's amplitude: the frame's mean shift and
/// linear skew taken out, averaged over phase, blurred by the exposure.
///
/// @param f_hz ≥ 0.
/// @source 1/√2·√(1 − j₀²(πft_r) − 3j₁²(πft_r))·|j₀(πft_e)|: Legendre series of a plane wave,
///         DLMF 10.60.7; own derivation, tested against brute-force rows.
double wobbleGain(const CameraModel& camera, double f_hz);

/// Frequency at which a wobble beats against the frame rate, |f − fps·round(f/fps)| [Hz].
double beat_hz(double f_hz, double frameRate_hz);

}  // namespace stillbay
