// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/phrase.h"
#include "core/base/result.h"
#include "core/newcraft/answers.h"
#include "core/setup/setup.h"

#include <cstddef>
#include <optional>

/// A whole craft from the few things that a builder knows of it.
namespace stillbay {

/// The craft, hung level, its tubes held where a push sideways turns the bay least unless the
/// builder says where. Each number that was not entered has a source "typical"; one that was has
/// none. The bay's weight is no number of the setup: its parts share it.
///
/// What follows from what: propeller and arm length from each other and the layout, so that the
/// propellers clear each other; the arm's section from its length; the motor's class from the
/// propeller; cells and KV from each other; a higher KV where the craft would not hover; pack and
/// camera from the bay's weight, or from the propellers; of the tubes of Shore A 60 the softest
/// that keeps every constraint, with room to spare in a pull-up, without going up steeply; the
/// cruise window from the hover. No step of that is from a source: common practice and the samples'
/// proportions.
///
/// @error BadInput  an answer outside its range; `where` is a path of the setup where it has one.
Result<Setup> newCraft(const CraftAnswers& answers);

/// Which entries of the lists of core/presets a new craft is made from.
struct CraftChoices {
    std::size_t armMaterial = 0, motor = 0, pack = 0, camera = 0, tube = 0;

    bool operator==(const CraftChoices&) const = default;
};

/// @param setup  what newCraft() made of the answers
CraftChoices choicesOf(const CraftAnswers& answers, const Setup& setup);

/// Why such a craft cannot be hung level, as one sentence; none: it can.
std::optional<Phrase> whyNotLevel(const Setup& setup);

}  // namespace stillbay
