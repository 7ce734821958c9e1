// SPDX-License-Identifier: MIT
#pragma once

#include "core/calibrate/pluck_model.h"

#include <cstddef>
#include <limits>
#include <optional>
#include <stop_token>
#include <vector>

/// Ratio and loss of a plucked bay by least squares. Internal to the calibrate room.
namespace stillbay {

/// A minimum over ln ρ_d, ln η and ln κ, with the second derivatives there.
struct LowestRubber {
    Vector3d at = Vector3d::Zero();
    double value = std::numeric_limits<double>::infinity();
    Matrix3d hessian = Matrix3d::Identity();

    RubberFigures rubber() const;
    /// Of what the squares leave open, over twice their variance; none where that has no bounds.
    std::optional<Matrix3d> covariance() const;
};

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

/// Where the modes matched by hand lie nearest to the measured ones.
RubberFigures rubberOfMatching(const PluckedBayModel& model,
                               const std::vector<DecayingMode>& measured,
                               const std::vector<std::optional<std::size_t>>& matching,
                               const RubberFigures& start, const std::stop_token& stop);

/// How unlike a measured mode and one of the model are: 0 the same, kOtherMode or more another one.
/// @param seen  what channels show of it; empty: not known
double unlikeness(const DecayingMode& measured, Complex lambda, const std::vector<Complex>& seen);
inline constexpr double kOtherMode = 9.0;

}  // namespace stillbay
