// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/calibrate/correction.h"
#include "core/calibrate/film_match.h"
#include "core/setup/setup.h"

#include <cstddef>
#include <optional>
#include <span>

namespace stillbay {

inline constexpr std::size_t kFewestFilms = 3;

/// The unbalance from films at three throttles or more: what order 1 shows over what is predicted,
/// its geometric mean. Each unbalance of the craft is multiplied by it. Films whose speed is not
/// settled, that were stabilised, or that lie beyond the full pack are left out, with a warning of
/// each kind.
///
/// @param films  matchForUnbalance() of each that has one
/// @param asked  how many there are with those that have none; none: as many as films
/// @error BadInput  fewer than kFewestFilms were asked. NoAnswer  fewer than that have a match, or
///                  at fewer speeds, further apart than kOrderWidth, order 1 shows.
/// @source own derivation; wobble is proportional to the unbalance
Result<Correction> unbalanceFromFilms(const Setup& setup, std::span<const FilmMatch> films,
                                      std::optional<std::size_t> asked = {});

}  // namespace stillbay
