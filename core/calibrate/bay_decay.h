// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"
#include "core/recording/plucks.h"
#include "core/recording/recording.h"

#include <cstddef>
#include <vector>

/// A recorded ring-down against modes that are known but for their amplitudes.
namespace stillbay {

/// A mode as channels see it.
struct SeenMode {
    Complex lambda;                 ///< [1/s] it rings as exp(λt)
    std::vector<Complex> channels;  ///< what each shows of it; empty: not known, all free
};

/// The samples of some stretches, channels of unlike kinds weighted to one size.
class DecayData {
public:
    /// @param channels  indices into recording.channels, all finite
    DecayData(const Recording& recording, std::vector<std::size_t> channels,
              std::vector<Stretch> stretches);

    /// What the modes leave unexplained when their amplitudes in each stretch, and the offset and
    /// drift of each channel there, are as good as can be.
    struct Fit {
        double squares = 0.0;  ///< sum of the weighted residuals' squares
        /// A stretch each: a mode each: a channel each: amplitude where the stretch begins, in the
        /// channel's unit.
        std::vector<std::vector<std::vector<Complex>>> amplitudes;
        std::vector<double> energy;  ///< a mode each: weighted sum of its squares over all
        std::size_t parameters = 0;  ///< amplitudes, offsets and drifts
    };
    /// @param modes  those with channels have one for each channel
    Fit fit(const std::vector<SeenMode>& modes) const;

    /// What fit() leaves: a stretch each, samples × channels, weighted.
    std::vector<Eigen::MatrixXd> residuals(const std::vector<SeenMode>& modes) const;

    double squares() const { return m_squares; }  ///< of the samples less offset and drift
    std::size_t samples() const;                  ///< of all stretches and channels
    /// Of one stretch: mean square of its samples less offset and drift, weighted.
    double meanSquare(std::size_t stretch) const
    {
        return m_values[stretch].squaredNorm() / static_cast<double>(m_values[stretch].size());
    }
    double sampleTime() const { return m_sampleTime; }
    const std::vector<Stretch>& stretches() const { return m_stretches; }
    const std::vector<std::size_t>& channels() const { return m_channels; }
    const std::vector<double>& weights() const { return m_weights; }

private:
    struct Solved;
    Solved solve(const std::vector<SeenMode>& modes, const Eigen::MatrixXd& values) const;

    double m_sampleTime = 0.0;
    std::vector<std::size_t> m_channels;
    std::vector<Stretch> m_stretches;
    std::vector<double> m_weights;          // a channel each
    std::vector<Eigen::MatrixXd> m_values;  // a stretch each: samples × channels
    double m_squares = 0.0;
};

}  // namespace stillbay
