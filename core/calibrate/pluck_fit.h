// SPDX-License-Identifier: MIT
#pragma once

#include "core/calibrate/lowest_rubber.h"
#include "core/calibrate/pluck_model.h"

#include <cstddef>
#include <optional>
#include <stop_token>
#include <vector>

/// Ratio and loss of a plucked bay by least squares. Internal to the calibrate room.
namespace stillbay {

/// What a fit ends in.
struct FittedRubber {
    RubberFigures rubber;
    double ratioSpread = 0.0, lossSpread = 0.0;   ///< one standard deviation over the value
    double residual = 0.0, residualBefore = 0.0;  ///< rms over the record's
};

class PluckFit {
public:
    /// @param withShapes     the model's motions count too, not its poles alone
    /// @param tensionSpread  one standard deviation of the tubes' tension over the one computed; 0:
    ///                       taken as computed
    PluckFit(const PluckedBayModel& model, const Recording& recording,
             const std::vector<std::size_t>& channels, std::vector<Stretch> stretches,
             bool withShapes, double tensionSpread);

    std::optional<std::vector<SeenMode>> modes(const RubberFigures& rubber) const;
    double squares(const RubberFigures& rubber) const;

    LowestRubber from(const RubberFigures& start, const std::stop_token& stop) const;

    /// Where a look over all ratios finds the squares lower than around, the lowest first; three at
    /// most, none that is much worse than the first.
    std::vector<RubberFigures> hollows(const std::stop_token& stop) const;

    /// The minima that the starts lead to, each once, the lowest first.
    std::vector<LowestRubber> lowestFrom(const std::vector<RubberFigures>& starts,
                                         const std::stop_token& stop) const;

    /// @error NoAnswer  the squares have no bottom there
    Result<FittedRubber> fitted(const LowestRubber& lowest, const RubberFigures& before) const;

    /// The stretches without those in which hardly anything rings, and of each the part in which
    /// the bay swings so little that it counts as linear, until something else than its ringing
    /// begins.
    std::vector<Stretch> linearParts(const RubberFigures& rubber) const;

    const DecayData& data() const { return m_data; }

private:
    double variance(const std::vector<SeenMode>& seen) const;
    LowestRubber descended(const Vector3d& start, const std::stop_token& stop) const;

    const PluckedBayModel& m_model;
    DecayData m_data;
    bool m_withShapes;
    double m_tensionSpread;
    std::vector<Quantity> m_quantities;
};

}  // namespace stillbay
