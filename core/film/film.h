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
    bool fisheye = false;         ///< equidistant; else rectilinear
    double readout = 0.0;         ///< [s] first to last row
    double exposure = 0.0;        ///< [s] of each row
    double frameRate_hz = 0.0;
};

/// Rows: the picture's up, left and optical axes in bay axes. At no tilt z, y, x.
Matrix3d pictureAxes(const CameraModel& camera);

/// Pixels per rad of rotation about the picture's up axis (across), its left axis (up) and its
/// optical axis (roll, rms over the frame): f_px = (W/2)/tan(HFOV/2) twice, of a fisheye
/// (W/2)/(HFOV/2) in the middle of the picture, and √((W² + H²)/12).
Vector3d pixelsPerRadian(const CameraModel& camera);

/// Wobble [px rms] left in a frame per rad of a sine's amplitude about the picture's up, left and
/// optical axes: the frame's mean shift, straight skew and rigid turn taken out, averaged over
/// phase, blurred by the exposure. A roll bends even where it only grows in proportion to the row.
///
/// @param f_hz ≥ 0.
/// @source With a = πft_r: f_px/√2·√(1 − j₀² − 3j₁²) twice and, of a roll,
///         1/√2·√((W²/12)(1 − j₀²) + (H²/4)(⅓ − j₁² − (j₀ − 2j₂)²/3)), each times |j₀(πft_e)|:
///         Legendre series of a plane wave, DLMF 10.60.7; own derivation, tested against
///         brute-force rows.
Vector3d wobblePerRadian(const CameraModel& camera, double f_hz);

/// Frame shake [px rms] per rad of a sine's amplitude about the same axes: the mean shift of whole
/// frames, in a roll their mean turn, rms over the frame; averaged over phase, blurred by the
/// exposure.
///
/// @param f_hz ≥ 0.
/// @source pixelsPerRadian()/√2·|j₀(πft_r) j₀(πft_e)|: the term j₀ of the same series.
Vector3d frameShakePerRadian(const CameraModel& camera, double f_hz);

/// Frequency at which a wobble beats against the frame rate, |f − fps·round(f/fps)| [Hz].
double beat_hz(double f_hz, double frameRate_hz);

}  // namespace stillbay
