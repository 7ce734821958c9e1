// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"
#include "core/base/result.h"
#include "core/mass/mass.h"
#include "core/setup/setup.h"

#include <optional>

/// How the bay must be hung so that it rests where it is drawn.
///
/// As drawn every tube is straight, so it pulls the bay along its own line and six equations are
/// left: the pulls carry the weight, and their moments about the centre of mass vanish. While
/// planning, each tube's elevation and own stretch are sought, the mean stretch kept; bay points,
/// directions and free lengths stay. Of a drilled craft, whose holes stay, each tube's own free
/// length is sought.
namespace stillbay {

/// A bay rests as drawn when it is left neither farther off nor turned more than this. Finer than
/// anybody sees on the bench.
inline constexpr double kLevelShift_mm = 0.1;
inline constexpr double kLevelTurn_deg = 0.1;

/// No tube is stretched less than this for being level, unless it is already: one that is barely
/// taut goes slack as soon as the bay moves.
inline constexpr double kLeastLevelStretch = 1.02;

/// Why no hanging makes the bay rest as drawn.
enum class LevelFault {
    TooHeavy,      ///< the tubes cannot pull up as much as it weighs
    OutsideTubes,  ///< its centre of mass lies outside of them, seen from above
    Remains,       ///< something of the motion stays
};

struct LevelFailure {
    LevelFault fault = LevelFault::Remains;
    Phrase text;  ///< one sentence
};

/// Mounts that level the bay, and how it rests on them.
struct Levelled {
    Mounts mounts;
    Vector3d shift = Vector3d::Zero();     ///< [m] of the centre of mass from the drawing, at 1 g
    Vector3d rotation = Vector3d::Zero();  ///< [rad] rotation vector from the drawing
    std::optional<LevelFailure> why = {};  ///< none: it rests as drawn
};

/// Whether a rest counts as the drawn one. @param shift [m], @param rotation [rad].
bool restsAsDrawn(const Vector3d& shift, const Vector3d& rotation);

/// The mounts that come nearest to making the bay rest as drawn. Looks for no rest pose, so that a
/// search can afford it: where the six equations have no solution within the limits (stretch from
/// kLeastLevelStretch to the tube's limit, elevation within ±90°, free lengths that the model
/// covers), the rest is taken as what the stiffness as drawn makes of the unbalanced force. What is
/// level already is returned as it is, and so is what cannot be bettered. Elevations come to 0.01°,
/// stretches to 10⁻⁴, lengths to 0.01 mm.
///
/// @param mounts valid ones.
/// @error BadInput  as makeMountedBay().
/// @source docs/theory.md, "Level"; own derivation.
Result<Mounts> levelledMounts(const MassFigures& bay, const TubeKind& tube, const Mounts& mounts);

/// The same, the rest pose computed. Where the equations have no solution the mounts are those of
/// the least rest: the shift of the centre of mass and the turn at kMotionRadius, squared.
///
/// @error BadInput  as makeMountedBay(); NoAnswer  neither the given mounts nor the levelled ones
///                  have a rest pose, with the reason in words where one is known.
Result<Levelled> level(const MassFigures& bay, const TubeKind& tube, const Mounts& mounts);
Result<Levelled> level(const Setup& setup);

}  // namespace stillbay
