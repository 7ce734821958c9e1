// SPDX-License-Identifier: MIT
#include "core/calibrate/pluck_fit.h"

#include "core/base/units.h"

#include <Eigen/Cholesky>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace stillbay {
namespace {

constexpr double kSmallSwing = 0.08;     // of the shortest tube: the bay counts as linear below
constexpr double kMostTrimmed = 0.6;     // of a stretch
constexpr double kHardlyPlucked = 0.01;  // of the mean square of the loudest stretch
constexpr double kLeastRatio = 0.6, kMostRatio = 4.0;  // where a fit is looked for
constexpr double kLeastLoss = 0.005, kMostLoss = 1.0;
constexpr double kRatioStep = 0.03;  // of the look over all ratios
constexpr std::size_t kCandidates = 3;
constexpr double kMuchWorse = 4.0;       // of the squares: no place to look further
constexpr double kSamePlace = 0.05;      // of two ratios
constexpr double kModelDoubt = 0.003;    // of the ratio: dimensions and masses are never exact
constexpr double kLossDoubt = 0.02;      // of the loss factor, likewise
constexpr double kSameFrequency = 0.06;  // of two modes that may be one, one standard deviation
constexpr double kSameLoss = 0.5;        // of the logarithm
constexpr double kWindow_s = 0.05;       // in which the residual is looked at
constexpr double kForeign = 5.0;         // rms there over the usual one: something else began

using Point = Vector3d;  // ln ρ_d, ln η, ln κ

RubberFigures rubberAt(const Point& point)
{
    return {std::exp(point[0]), std::exp(point[1]), std::exp(point[2])};
}

Point logarithmsOf(const RubberFigures& rubber)
{
    return {std::log(rubber.ratio), std::log(std::clamp(rubber.loss, kLeastLoss, kMostLoss)),
            std::log(rubber.tension)};
}

struct Slopes {
    Vector3d gradient = Vector3d::Zero();
    Matrix3d hessian = Matrix3d::Identity();
};

// By central differences in the first `free` directions.
template <class F>
Slopes slopesAt(const F& f, const LowestRubber& there, Eigen::Index free)
{
    const Vector3d step(1e-3, 1e-2, 1e-3);
    Slopes slopes;
    const auto moved = [&](Eigen::Index i, double a, Eigen::Index j, double b) {
        Point point = there.at;
        point[i] += a * step[i];
        point[j] += b * step[j];
        return f(point);
    };
    for (Eigen::Index i = 0; i < free; ++i) {
        const double more = moved(i, 1, i, 0), less = moved(i, -1, i, 0);
        slopes.gradient[i] = (more - less) / (2 * step[i]);
        slopes.hessian(i, i) = (more - 2 * there.value + less) / (step[i] * step[i]);
        for (Eigen::Index j = 0; j < i; ++j)
            slopes.hessian(i, j) = slopes.hessian(j, i) =
                (moved(i, 1, j, 1) - moved(i, 1, j, -1) - moved(i, -1, j, 1) +
                 moved(i, -1, j, -1)) /
                (4 * step[i] * step[j]);
    }
    return slopes;
}

// Newton's method, lifted where the surface is not a bowl; steps that do not descend are shortened.
// The tension stays where `free` is 2.
template <class F>
LowestRubber descend(const F& f, const Point& at, Eigen::Index free, const std::stop_token& stop)
{
    constexpr double kLongest = 0.15, kDone = 1e-6;
    LowestRubber lowest{.at = at, .value = f(at)};
    for (int k = 0; k < 40 && !stop.stop_requested(); ++k) {
        const Slopes slopes = slopesAt(f, lowest, free);
        lowest.hessian = slopes.hessian;
        const Eigen::LLT<Matrix3d> bowl(slopes.hessian);
        const Vector3d step = bowl.info() == Eigen::Success
                                  ? Vector3d(-bowl.solve(slopes.gradient))
                                  : Vector3d(-slopes.gradient.array() /
                                             (slopes.hessian.diagonal().array().abs() + 1e-300));
        const double length =
            std::max({std::abs(step[0]), 0.3 * std::abs(step[1]), std::abs(step[2])});
        double shorter = std::min(1.0, kLongest / std::max(length, 1e-300));
        bool isLower = false;
        for (int cut = 0; cut < 12 && !isLower; ++cut, shorter *= 0.4) {
            const Point next = lowest.at + shorter * step;
            const double value = f(next);
            if (value < lowest.value) {
                isLower = true;
                lowest.at = next;
                lowest.value = value;
            }
        }
        if (!isLower || length * shorter < kDone)
            break;
    }
    return lowest;
}

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

RubberFigures LowestRubber::rubber() const
{
    return rubberAt(at);
}

std::optional<Matrix3d> LowestRubber::covariance() const
{
    constexpr double kMostOpen = 1e6;
    const Eigen::LLT<Matrix3d> bowl(hessian);
    if (bowl.info() != Eigen::Success)
        return std::nullopt;
    const Matrix3d covariance = bowl.solve(Matrix3d::Identity());
    const bool isDetermined =
        (covariance.diagonal().array() * hessian.diagonal().array() < kMostOpen).all();
    return isDetermined ? std::optional(covariance) : std::nullopt;
}

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
LowestRubber PluckFit::descended(const Point& start, const std::stop_token& stop) const
{
    const auto seen = modes(rubberAt(start));
    if (!(m_tensionSpread > 0.0) || !seen)
        return descend([&](const Point& point) { return squares(rubberAt(point)); }, start, 2,
                       stop);
    const double weight = variance(*seen) / (m_tensionSpread * m_tensionSpread);
    return descend(
        [&](const Point& point) { return squares(rubberAt(point)) + weight * point[2] * point[2]; },
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

double unlikeness(const DecayingMode& measured, Complex lambda, const std::vector<Complex>& seen)
{
    const double f_hz = std::abs(lambda) / (2 * std::numbers::pi);
    const double loss = -2 * lambda.real() / std::abs(lambda);
    double cost = std::pow(std::log(measured.frequency_hz / f_hz) / kSameFrequency, 2) +
                  std::pow(std::log(std::max(measured.lossFactor, 1e-4) / loss) / kSameLoss, 2);
    if (seen.size() > 1 && seen.size() == measured.shape.size()) {
        Complex product = 0.0;
        double a = 0.0, b = 0.0;
        for (std::size_t c = 0; c < seen.size(); ++c) {
            product += std::conj(seen[c]) * measured.shape[c];
            a += std::norm(seen[c]);
            b += std::norm(measured.shape[c]);
        }
        cost += 4 * (1 - std::norm(product) / std::max(a * b, 1e-300));
    }
    return cost;
}

RubberFigures rubberOfMatching(const PluckedBayModel& model,
                               const std::vector<DecayingMode>& measured,
                               const std::vector<std::optional<std::size_t>>& matching,
                               const RubberFigures& start, const std::stop_token& stop)
{
    const auto misfit = [&](const Point& point) {
        const auto modes = model.modes(rubberAt(point));
        if (!modes)
            return std::numeric_limits<double>::infinity();
        double sum = 0.0;
        for (std::size_t m = 0; m < measured.size(); ++m)
            if (matching[m]) {
                const Complex square = modes->omegaSquare[static_cast<Eigen::Index>(*matching[m])];
                const Complex lambda = Complex(0, 1) * std::sqrt(square);
                sum += measured[m].share * unlikeness(measured[m], lambda, {});
            }
        return sum;
    };
    return descend(misfit, logarithmsOf(start), 2, stop).rubber();
}

}  // namespace stillbay
