// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/calibrate/correction.h"
#include "core/calibrate/film_match.h"
#include "core/setup/setup.h"

#include <span>

namespace stillbay {

/// The unbalance from films at three throttles or more: what order 1 shows over what is predicted,
/// its geometric mean. Each unbalance of the craft is multiplied by it. Films whose speed is not
/// settled, that were stabilised, or that lie beyond the full pack are left out, with a warning of
/// each kind.
///
/// @error BadInput  fewer than three films. NoAnswer  fewer than three speeds, further apart than
///                  kOrderWidth, whose films show order 1.
/// @source own derivation; wobble is proportional to the unbalance
Result<Correction> unbalanceFromFilms(const Setup& setup, std::span<const FilmMatch> films);

}  // namespace stillbay
