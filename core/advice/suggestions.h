// SPDX-License-Identifier: MIT
#pragma once

#include "core/advice/practical_steps.h"
#include "core/assess/assess.h"
#include "core/base/progress.h"

#include <cstddef>
#include <optional>
#include <stop_token>
#include <vector>

namespace stillbay {

/// What one practical step does to the wobble in cruise.
struct Suggestion {
    PracticalStep step;
    double after_px = 0.0;             ///< largest wobble in cruise after it, full to empty pack
    std::vector<Warning> newWarnings;  ///< those whose code the craft does not have yet
    bool mayFly = true;                ///< after it no constraint forbids flight
    bool mends = false;                ///< the craft may not fly as it is, but after it
    /// Where it moves wobble to: a place outside of the cruise window at which the film becomes
    /// worse than it was anywhere outside, and no longer clean.
    std::optional<WobbleAt> movedTo = {};
};

struct Suggestions {
    /// Largest wobble in cruise as it is; none: no throttle lies in the cruise window, and no step
    /// can be compared.
    std::optional<double> before_px;
    std::vector<Suggestion> all;  ///< every step with an answer, smallest wobble first, those after
                                  ///< which the craft may not fly behind all others
    bool stopped = false;         ///< on demand, before every step was tried

    /// The steps that lower the wobble by a hundredth or more or let the craft fly, in the order of
    /// `all`, no more than `most`.
    std::vector<Suggestion> best(std::size_t most) const;
    /// The first of them after which the craft may fly; none: there is no such step.
    std::optional<Suggestion> next() const;
};

/// How many steps the window and the report show.
inline constexpr std::size_t kShownSuggestions = 5;

/// Tries every practical step. Steps without an answer are left out.
///
/// @param options   those of the assessment beside which the answer is shown
/// @param stop      ends it after the step under way, with what is known by then
/// @param progress  told after each step
/// @error  what assess() says of the craft as it is.
Result<Suggestions> findSuggestions(const Setup& setup, const AssessOptions& options = {},
                                    const std::stop_token& stop = {},
                                    const Progress& progress = {});

/// "outside of cruise 3.1 px at 72 % throttle"
Phrase movedText(const WobbleAt& to);

/// What a step would spoil, in a few words ("a tube goes slack"); empty for a warning that does
/// not speak against taking it.
Phrase dangerText(const Warning& warning);

}  // namespace stillbay
