// SPDX-License-Identifier: MIT
#include "core/calibrate/pluck_fit.h"

#include "core/base/units.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace stillbay {
namespace {

constexpr double kSmallSwing = 0.08;  // of the shortest tube: the bay counts as linear below
constexpr double kMostTrimmed = 0.6;  // of a stretch
constexpr std::size_t kFewestSamples = 32;
constexpr double kHardlyPlucked = 0.01;                // of the mean square of the loudest stretch
constexpr double kLeastRatio = 0.6, kMostRatio = 4.0;  // where a fit is looked for
constexpr double kRatioStep = 0.03;                    // of the look over all ratios
constexpr std::size_t kCandidates = 3;
constexpr double kMuchWorse = 4.0;    // of the squares: no place to look further
constexpr double kSamePlace = 0.05;   // of two ratios
constexpr double kModelDoubt = 0.02;  // of the ratio: dimensions and masses are never exact
constexpr double kLossDoubt = 0.02;   // of the loss factor, likewise
constexpr double kWindow_s = 0.05;    // in which the residual is looked at
constexpr double kForeign = 5.0;      // rms there over the usual one: something else began

// By how much the residuals agree with their neighbours, as variance of a mean over that of
// unlike ones; at least 1.
double alikeness(const std::vector<Eigen::MatrixXd>& residuals)
{
    constexpr Eigen::Index kFarthest = 200;
    double none = 0.0;
    for (const Eigen::MatrixXd& residual : residuals)
        none += residual.squaredNorm();
    double alike = 1.0;
    for (Eigen::Index lag = 1; lag < kFarthest && none > 0.0; ++lag) {
        double sum = 0.0;
        for (const Eigen::MatrixXd& residual : residuals)
            if (residual.rows() > lag)
                sum += residual.topRows(residual.rows() - lag)
                           .cwiseProduct(residual.bottomRows(residual.rows() - lag))
                           .sum();
        if (sum <= 0.0)
            break;
        alike += 2 * sum / none;
    }
    return alike;
}

// Where the residual of a stretch suddenly is another: a hand that takes the bay again.
std::size_t endOfRinging(const Eigen::MatrixXd& residual, double sampleTime)
{
    const auto window = std::max<Eigen::Index>(8, std::lround(kWindow_s / sampleTime));
    std::vector<double> squares;
    for (Eigen::Index at = 0; at + window <= residual.rows(); at += window)
        squares.push_back(residual.middleRows(at, window).squaredNorm());
    if (squares.size() < 4)
        return static_cast<std::size_t>(residual.rows());
    std::vector<double> sorted = squares;
    std::nth_element(sorted.begin(), sorted.begin() + static_cast<long>(sorted.size() / 2),
                     sorted.end());
    const double usual = sorted[sorted.size() / 2];
    for (std::size_t w = squares.size() / 3; w < squares.size(); ++w)
        if (squares[w] > kForeign * kForeign * usual)  // the window before may hold its first touch
            return (w - 1) * static_cast<std::size_t>(window);
    return static_cast<std::size_t>(residual.rows());
}

constexpr const char* kUndetermined =
    translatable("the record does not determine the dynamic ratio and the loss factor");

}  // namespace

PluckFit::PluckFit(const PluckedBayModel& model, const Recording& recording,
                   const std::vector<std::size_t>& channels, std::vector<Stretch> stretches,
                   bool withShapes, double tensionSpread)
    : m_model(model),
      m_data(recording, channels, std::move(stretches)),
      m_withShapes(withShapes),
      m_tensionSpread(tensionSpread)
{
    for (const std::size_t channel : channels)
        m_quantities.push_back(recording.channels[channel].quantity);
}

std::optional<std::vector<SeenMode>> PluckFit::modes(const RubberFigures& rubber) const
{
    const auto modes = m_model.modes(rubber);
    return modes ? std::optional(m_model.seen(*modes, m_quantities, m_withShapes)) : std::nullopt;
}

double PluckFit::squares(const RubberFigures& rubber) const
{
    const auto seen = modes(rubber);
    return seen ? m_data.fit(*seen).squares : std::numeric_limits<double>::infinity();
}

// What is known of the tension beforehand weighs as the samples do: by the variance that they leave
// at the start.
LowestRubber PluckFit::descended(const Vector3d& start, const std::stop_token& stop) const
{
    const auto seen = modes(rubberAt(start));
    if (!(m_tensionSpread > 0.0) || !seen)
        return descend([&](const Vector3d& point) { return squares(rubberAt(point)); }, start, 2,
                       stop);
    const double weight = variance(*seen) / (m_tensionSpread * m_tensionSpread);
    return descend(
        [&](const Vector3d& point) {
            return squares(rubberAt(point)) + weight * point[2] * point[2];
        },
        start, 3, stop);
}

LowestRubber PluckFit::from(const RubberFigures& start, const std::stop_token& stop) const
{
    const LowestRubber near = descended(logarithmsOf(start), stop);
    return m_tensionSpread > 0.0 ? descended(near.at, stop) : near;
}

std::vector<RubberFigures> PluckFit::hollows(const std::stop_token& stop) const
{
    struct Place {
        RubberFigures rubber;
        double squares;
    };
    std::vector<Place> line;
    for (double ratio = kLeastRatio; ratio < kMostRatio && !stop.stop_requested();
         ratio *= 1 + kRatioStep) {
        const double low = squares({ratio, 0.06}), high = squares({ratio, 0.15});
        line.push_back(low < high ? Place{{ratio, 0.06, 1.0}, low}
                                  : Place{{ratio, 0.15, 1.0}, high});
    }
    std::vector<Place> hollows;
    for (std::size_t i = 0; i < line.size(); ++i)
        if ((i == 0 || line[i].squares <= line[i - 1].squares) &&
            (i + 1 == line.size() || line[i].squares <= line[i + 1].squares))
            hollows.push_back(line[i]);
    std::sort(hollows.begin(), hollows.end(),
              [](const Place& a, const Place& b) { return a.squares < b.squares; });
    std::vector<RubberFigures> places;
    for (const Place& hollow : hollows)
        if (places.size() < kCandidates && hollow.squares <= kMuchWorse * hollows.front().squares)
            places.push_back(hollow.rubber);
    return places;
}

std::vector<LowestRubber> PluckFit::lowestFrom(const std::vector<RubberFigures>& starts,
                                               const std::stop_token& stop) const
{
    std::vector<LowestRubber> lowest;
    for (const RubberFigures& start : starts) {
        const LowestRubber found = from(start, stop);
        const bool isKnown =
            std::any_of(lowest.begin(), lowest.end(), [&](const LowestRubber& other) {
                return std::abs(other.at[0] - found.at[0]) < kSamePlace;
            });
        if (!isKnown)
            lowest.push_back(found);
    }
    std::sort(lowest.begin(), lowest.end(),
              [](const LowestRubber& a, const LowestRubber& b) { return a.value < b.value; });
    return lowest;
}

// Of a residual, as if its samples were independent: wider as far as neighbours agree.
double PluckFit::variance(const std::vector<SeenMode>& seen) const
{
    const DecayData::Fit there = m_data.fit(seen);
    const double freedom = std::max(
        1.0, static_cast<double>(m_data.samples()) - static_cast<double>(there.parameters) - 2);
    return std::max(0.0, there.squares) / freedom * alikeness(m_data.residuals(seen));
}

Result<FittedRubber> PluckFit::fitted(const LowestRubber& lowest, const RubberFigures& before) const
{
    const auto seen = modes(lowest.rubber());
    const auto covariance = lowest.covariance();
    if (!covariance || !seen)
        return fail(Errc::NoAnswer, phrase(kUndetermined));
    const DecayData::Fit there = m_data.fit(*seen);
    const double open = 2 * variance(*seen);
    FittedRubber fitted;
    fitted.rubber = lowest.rubber();
    fitted.ratioSpread = std::hypot(std::sqrt(open * (*covariance)(0, 0)), kModelDoubt);
    fitted.lossSpread = std::hypot(std::sqrt(open * (*covariance)(1, 1)), kLossDoubt);
    const auto share = [&](double squares) {
        return std::sqrt(std::clamp(squares / m_data.squares(), 0.0, 1.0));
    };
    fitted.residual = share(there.squares);
    fitted.residualBefore = share(squares(before));
    return fitted;
}

std::vector<Stretch> PluckFit::linearParts(const RubberFigures& rubber) const
{
    const auto seen = modes(rubber);
    if (!seen)
        return m_data.stretches();
    const DecayData::Fit all = m_data.fit(*seen);
    const std::vector<Eigen::MatrixXd> residuals = m_data.residuals(*seen);
    double loudest = 0.0;
    for (std::size_t s = 0; s < residuals.size(); ++s)
        loudest = std::max(loudest, m_data.meanSquare(s));
    std::vector<Stretch> parts;
    for (std::size_t s = 0; s < residuals.size(); ++s) {
        Stretch part = m_data.stretches()[s];
        if (m_data.meanSquare(s) < kHardlyPlucked * loudest)
            continue;
        part.to = part.from + endOfRinging(residuals[s], m_data.sampleTime());
        if (part.samples() < kFewestSamples)
            continue;
        std::vector<double> swing;  // [m] of each mode, from the channels of acceleration
        for (std::size_t k = 0; k < seen->size(); ++k) {
            double square = 0.0;
            for (std::size_t c = 0; c < m_quantities.size(); ++c)
                if (m_quantities[c] == Quantity::Acceleration)
                    square += std::norm(all.amplitudes[s][k][c] /
                                        ((*seen)[k].lambda * (*seen)[k].lambda));
            swing.push_back(std::sqrt(square));
        }
        const auto most =
            static_cast<std::size_t>(kMostTrimmed * static_cast<double>(part.samples()));
        for (std::size_t i = 0; i < most; ++i, ++part.from) {
            const double t = static_cast<double>(i) * m_data.sampleTime();
            double sum = 0.0;
            for (std::size_t k = 0; k < seen->size(); ++k)
                sum += swing[k] * std::exp((*seen)[k].lambda.real() * t);
            if (sum < kSmallSwing * m_model.shortestTube())
                break;
        }
        parts.push_back(part);
    }
    return parts.empty() ? m_data.stretches() : parts;
}

}  // namespace stillbay
