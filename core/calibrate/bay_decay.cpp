// SPDX-License-Identifier: MIT
#include "core/calibrate/bay_decay.h"

#include "core/base/solve.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace stillbay {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr double kDecayRidge =
    1e-13;  // of the largest diagonal: two modes of one pole stay solvable

// Offset and drift over a stretch, orthonormal: columns.
MatrixXd slowBasis(Index samples)
{
    MatrixXd slow(samples, 2);
    slow.col(0).setConstant(1 / std::sqrt(static_cast<double>(samples)));
    for (Index i = 0; i < samples; ++i)
        slow(i, 1) = static_cast<double>(i) - 0.5 * static_cast<double>(samples - 1);
    slow.col(1) /= std::max(slow.col(1).norm(), 1e-300);
    return slow;
}

// Re and −Im of exp(λt) for each mode, so that their factors are an amplitude's parts.
MatrixXd ringBasis(const std::vector<SeenMode>& modes, Index samples, double sampleTime)
{
    MatrixXd ring(samples, 2 * static_cast<Index>(modes.size()));
    for (std::size_t k = 0; k < modes.size(); ++k) {
        const Complex turn = std::exp(modes[k].lambda * sampleTime);
        const Index column = 2 * static_cast<Index>(k);
        Complex now = 1.0;
        for (Index i = 0; i < samples; ++i) {
            ring(i, column) = now.real();
            ring(i, column + 1) = -now.imag();
            now *= turn;
        }
    }
    return ring;
}

MatrixXd withoutSlow(MatrixXd columns, const MatrixXd& slow)
{
    columns -= slow * (slow.transpose() * columns);
    return columns;
}

MatrixXd solveGram(MatrixXd gram, const MatrixXd& right)
{
    gram.diagonal().array() += kDecayRidge * std::max(gram.diagonal().maxCoeff(), 1e-300);
    return solveSymmetric(gram, right);
}

// (Re, Im) of a mode's common amplitude to those of a channel that sees h of it.
Eigen::Matrix2d turnBy(Complex h)
{
    Eigen::Matrix2d turn;
    turn << h.real(), -h.imag(), h.imag(), h.real();
    return turn;
}

}  // namespace

/// Of one stretch.
struct DecayData::Solved {
    MatrixXd ring;         // basis without its offset and drift
    MatrixXd gram;         // of it
    MatrixXd factors;      // its columns × channels, weighted
    double squares = 0.0;  // left
};

DecayData::DecayData(const Recording& recording, std::vector<std::size_t> channels,
                     std::vector<Stretch> stretches)
    : m_sampleTime(1 / recording.rate),
      m_channels(std::move(channels)),
      m_stretches(std::move(stretches))
{
    for (const Stretch& stretch : m_stretches) {
        const auto samples = static_cast<Index>(stretch.samples());
        MatrixXd values(samples, static_cast<Index>(m_channels.size()));
        for (std::size_t c = 0; c < m_channels.size(); ++c)
            for (Index i = 0; i < samples; ++i)
                values(i, static_cast<Index>(c)) =
                    recording.channels[m_channels[c]]
                        .values[stretch.from + static_cast<std::size_t>(i)];
        m_values.push_back(withoutSlow(std::move(values), slowBasis(samples)));
    }
    std::map<Quantity, double> size;
    for (std::size_t c = 0; c < m_channels.size(); ++c)
        for (const MatrixXd& values : m_values)
            size[recording.channels[m_channels[c]].quantity] +=
                values.col(static_cast<Index>(c)).squaredNorm();
    for (const std::size_t channel : m_channels) {
        const double squares = size[recording.channels[channel].quantity];
        m_weights.push_back(size.size() > 1 && squares > 0.0 ? 1 / std::sqrt(squares) : 1.0);
    }
    for (MatrixXd& values : m_values) {
        for (std::size_t c = 0; c < m_channels.size(); ++c)
            values.col(static_cast<Index>(c)) *= m_weights[c];
        m_squares += values.squaredNorm();
    }
}

std::size_t DecayData::samples() const
{
    std::size_t samples = 0;
    for (const Stretch& stretch : m_stretches)
        samples += stretch.samples();
    return samples * m_channels.size();
}

DecayData::Solved DecayData::solve(const std::vector<SeenMode>& modes, const MatrixXd& values) const
{
    const auto count = static_cast<Index>(modes.size());
    Solved solved;
    solved.ring =
        withoutSlow(ringBasis(modes, values.rows(), m_sampleTime), slowBasis(values.rows()));
    solved.gram = solved.ring.transpose() * solved.ring;
    const MatrixXd right = solved.ring.transpose() * values;
    const bool isKnown = !modes.empty() && !modes.front().channels.empty();
    if (!isKnown) {
        solved.factors = solveGram(solved.gram, right);
        solved.squares = values.squaredNorm() - solved.factors.cwiseProduct(right).sum();
        return solved;
    }
    // One amplitude a mode for all channels.
    MatrixXd gram = MatrixXd::Zero(2 * count, 2 * count);
    VectorXd moment = VectorXd::Zero(2 * count);
    const auto channel = [&](Index k, std::size_t c) {
        return Eigen::Matrix2d(m_weights[c] *
                               turnBy(modes[static_cast<std::size_t>(k)].channels[c]));
    };
    for (std::size_t c = 0; c < m_channels.size(); ++c)
        for (Index k = 0; k < count; ++k) {
            const Eigen::Matrix2d seen = channel(k, c);
            moment.segment<2>(2 * k) +=
                seen.transpose() * right.block<2, 1>(2 * k, static_cast<Index>(c));
            for (Index j = 0; j < count; ++j)
                gram.block<2, 2>(2 * k, 2 * j) +=
                    seen.transpose() * solved.gram.block<2, 2>(2 * k, 2 * j) * channel(j, c);
        }
    const VectorXd common = solveGram(std::move(gram), moment);
    solved.factors.resize(2 * count, values.cols());
    for (std::size_t c = 0; c < m_channels.size(); ++c)
        for (Index k = 0; k < count; ++k)
            solved.factors.block<2, 1>(2 * k, static_cast<Index>(c)) =
                channel(k, c) * common.segment<2>(2 * k);
    solved.squares = values.squaredNorm() - common.dot(moment);
    return solved;
}

DecayData::Fit DecayData::fit(const std::vector<SeenMode>& modes) const
{
    Fit fit;
    fit.energy.assign(modes.size(), 0.0);
    const bool isKnown = !modes.empty() && !modes.front().channels.empty();
    for (const MatrixXd& values : m_values) {
        const Solved solved = solve(modes, values);
        fit.squares += solved.squares;
        fit.parameters +=
            2 * modes.size() * (isKnown ? 1 : m_channels.size()) + 2 * m_channels.size();
        std::vector<std::vector<Complex>> amplitudes(modes.size());
        for (std::size_t k = 0; k < modes.size(); ++k) {
            const Index at = 2 * static_cast<Index>(k);
            const MatrixXd own = solved.factors.middleRows(at, 2);
            fit.energy[k] += own.cwiseProduct(solved.gram.block<2, 2>(at, at) * own).sum();
            for (std::size_t c = 0; c < m_channels.size(); ++c)
                amplitudes[k].push_back(
                    Complex(own(0, static_cast<Index>(c)), own(1, static_cast<Index>(c))) /
                    m_weights[c]);
        }
        fit.amplitudes.push_back(std::move(amplitudes));
    }
    return fit;
}

std::vector<MatrixXd> DecayData::residuals(const std::vector<SeenMode>& modes) const
{
    std::vector<MatrixXd> residuals;
    for (const MatrixXd& values : m_values) {
        const Solved solved = solve(modes, values);
        residuals.push_back(values - solved.ring * solved.factors);
    }
    return residuals;
}

}  // namespace stillbay
