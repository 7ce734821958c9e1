// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/calibrate/pluck_model.h"
#include "core/recording/ring_down.h"

#include <cstddef>
#include <optional>
#include <stop_token>
#include <vector>

/// Which measured mode is which of the bay's. Internal to the calibrate room.
namespace stillbay {

/// For each measured mode which of the bay's; none: no mode of the bay.
using ModeMatching = std::vector<std::optional<std::size_t>>;

/// By frequency, loss and motion; the most alike first, none twice.
ModeMatching matched(const std::vector<DecayingMode>& measured, const std::vector<SeenMode>& modes);

/// Why a matching by hand cannot be meant; an empty one is none.
std::optional<Error> refusedMatching(const ModeMatching& matching, std::size_t measured);

/// Where the modes matched by hand lie nearest to the measured ones.
RubberFigures rubberOfMatching(const PluckedBayModel& model,
                               const std::vector<DecayingMode>& measured,
                               const ModeMatching& matching, const RubberFigures& start,
                               const std::stop_token& stop);

}  // namespace stillbay
