// SPDX-License-Identifier: MIT
#pragma once

#include "core/film/rows.h"

#include <cstdint>
#include <span>
#include <vector>

/// Bends a drawn scene as a rolling shutter records it.
namespace stillbay {

/// A picture of four packed 8-bit channels in any order, row by row from the top.
struct Scene {
    int width = 0;
    int height = 0;
    std::span<const std::uint32_t> pixels;
};

struct Canvas {
    int width = 0;
    int height = 0;
    std::span<std::uint32_t> pixels;
};

/// One frame of a film that may be drawn smaller than it was recorded.
struct Shot {
    CameraModel camera;
    std::vector<CameraVibration> vibrations;
    double gain = 1.0;  ///< the motion is drawn so many times larger than it is
    int frame = 0;      ///< 0, 1, …
};

/// Of one order: the motors' rotations added up out of step, each a quarter turn ahead of the sum
/// of those before it. Motors turn at slightly different speeds and so are in every position to
/// one another; this one has the mean power: |pixels ∘ sum|² = Σ|pixels ∘ rotation|².
///
/// @param rotations one amplitude a motor of e^{iωt} with all motors in step [rad]
/// @param pixels    per radian about each axis
/// @source |s + a e^{iφ}|² = |s|² + |a|² + 2 Re(e^{iφ} sᴴa); own derivation.
Vector3cd addOutOfStep(std::span<const Vector3cd> rotations, const Vector3d& pixels);

/// Draws the columns [from, to) of a frame: each row of the canvas is the scene, shifted and
/// turned about the canvas' middle by what the camera did while that row was exposed, and smeared
/// by how far it moved meanwhile.
///
/// @param scene  not smaller than the canvas, centred on it: what stands out is what a moving
///               camera sees beyond its edges. Beyond the scene its edge is repeated.
/// @param canvas the whole frame, whatever its size: the motion is scaled by canvas width / film
///               width. Its height is read out from top to bottom over the readout.
void filmFrame(const Scene& scene, const Shot& shot, Canvas canvas, int from, int to);

}  // namespace stillbay
