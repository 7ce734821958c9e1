// SPDX-License-Identifier: MIT
#include "core/advice/first_order.h"

#include "core/base/check.h"
#include "core/base/parallel.h"
#include "core/base/solve.h"
#include "core/base/unit_points.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <random>
#include <utility>

namespace stillbay {
namespace {

constexpr std::size_t kMostDegree = 8;      // of an input's polynomial
constexpr std::size_t kPointsPerTerm = 4;   // at least so many points for each coefficient
constexpr std::size_t kPointsPerInput = 8;  // fewer do not tell inputs apart
constexpr std::size_t kFolds = 16;          // of the jackknife
constexpr double kFlat = 1e-12;             // of the mean square: no variance but rounding

// √(2k+1) P_k(2u − 1) for k = 1 … degree, orthonormal on 0 ≤ u ≤ 1.
void addLegendre(double u, std::size_t degree, std::vector<double>& row)
{
    const double x = 2 * u - 1;
    double before = 1, present = x;
    for (std::size_t k = 1; k <= degree; ++k) {
        const auto order = static_cast<double>(k);
        row.push_back(std::sqrt(2 * order + 1) * present);
        before =
            std::exchange(present, ((2 * order + 1) * x * present - order * before) / (order + 1));
    }
}

// The sums over points that a least-squares fit needs. Terms: 1, then each input's polynomials.
struct Sums {
    explicit Sums(Eigen::Index terms)
        : gram(Eigen::MatrixXd::Zero(terms, terms)), moment(Eigen::VectorXd::Zero(terms))
    {
    }

    void add(const std::vector<double>& row, double y)
    {
        const Eigen::Map<const Eigen::VectorXd> x(row.data(),
                                                  static_cast<Eigen::Index>(row.size()));
        gram.selfadjointView<Eigen::Lower>().rankUpdate(x);
        moment += y * x;
        square += y * y;
        count += 1;
    }

    Sums without(const Sums& part) const
    {
        Sums rest = *this;
        rest.gram -= part.gram;
        rest.moment -= part.moment;
        rest.square -= part.square;
        rest.count -= part.count;
        return rest;
    }

    Eigen::MatrixXd gram;
    Eigen::VectorXd moment;
    double square = 0, count = 0;
};

// Share of each input before it is held to 0 and 1; none where the fit has no answer.
std::optional<std::vector<double>> rawShares(const Sums& sums, std::size_t degree)
{
    const Eigen::Index terms = sums.moment.size();
    const Eigen::MatrixXd gram = sums.gram.selfadjointView<Eigen::Lower>();
    const auto factor = denseCholesky(gram);
    if (!factor)
        return {};
    const Eigen::VectorXd c = solveDenseCholesky(*factor, sums.moment);
    const Eigen::MatrixXd covariance =
        solveDenseCholesky(*factor, Eigen::MatrixXd::Identity(terms, terms));
    const double mean = sums.moment[0] / sums.count;
    const double variance = (sums.square - sums.count * mean * mean) / (sums.count - 1);
    const double residual =
        std::max(0.0, sums.square - c.dot(sums.moment)) / (sums.count - static_cast<double>(terms));
    std::vector<double> shares;
    const auto size = static_cast<Eigen::Index>(degree);
    for (Eigen::Index at = 1; at < terms; at += size) {
        // The input's terms as these points have them; the unit matrix for points all over the
        // cube.
        const Eigen::VectorXd m = gram.col(0).segment(at, size) / sums.count;
        const Eigen::MatrixXd C = gram.block(at, at, size, size) / sums.count - m * m.transpose();
        const Eigen::VectorXd own = c.segment(at, size);
        const double scatter =
            residual * C.cwiseProduct(covariance.block(at, at, size, size)).sum();
        const double share = (own.dot(C * own) - scatter) / variance;
        if (!std::isfinite(share))
            return {};
        shares.push_back(share);
    }
    return shares;
}

// The groups' sums of the inputs' shares.
std::vector<double> grouped(const std::vector<double>& shares,
                            const std::vector<std::vector<std::size_t>>& groups)
{
    std::vector<double> sums;
    for (const std::vector<std::size_t>& group : groups)
        sums.push_back(
            std::accumulate(group.begin(), group.end(), 0.0,
                            [&](double sum, std::size_t input) { return sum + shares.at(input); }));
    return sums;
}

// Which of the folds each point falls to: evenly, at random, the same each time.
std::vector<std::size_t> foldsOf(std::size_t count)
{
    std::vector<std::size_t> folds(count);
    for (std::size_t i = 0; i < count; ++i)
        folds[i] = i % kFolds;
    std::mt19937 random(1);  // NOLINT(cert-msc32-c,cert-msc51-cpp): the same answer each time
    for (std::size_t i = count; i > 1; --i)
        std::swap(folds[i - 1], folds[random() % i]);
    return folds;
}

}  // namespace

std::optional<CubeSample> sampleCube(std::size_t dimensions, const CubeFunction& function,
                                     const SampleOptions& options, const std::stop_token& stop,
                                     const Progress& progress)
{
    CubeSample sample{unitPoints(options.count, dimensions, options.seed), {}};
    sample.outputs.resize(sample.points.size());
    const bool isDone = inParallel(
        sample.points.size(), options.threads,
        [&](std::size_t i) { sample.outputs[i] = function(sample.points[i]); }, stop, progress);
    return isDone ? std::optional(std::move(sample)) : std::nullopt;
}

std::optional<std::vector<VarianceShare>> firstOrderShares(
    const std::vector<std::vector<double>>& points, std::span<const double> output,
    const std::vector<std::vector<std::size_t>>& groups)
{
    check(points.size() == output.size(), "shares: one output a point");
    std::vector<std::size_t> used;
    double mean = 0;
    for (std::size_t i = 0; i < points.size(); ++i)
        if (!std::isnan(output[i])) {
            used.push_back(i);
            mean += output[i];
        }
    const std::size_t inputs = points.empty() ? 0 : points.front().size();
    if (inputs == 0 || used.size() < kPointsPerInput * inputs || used.size() < 2 * kFolds)
        return {};
    mean /= static_cast<double>(used.size());
    const std::size_t degree =
        std::clamp(used.size() / (kPointsPerTerm * inputs), std::size_t{1}, kMostDegree);
    const auto terms = static_cast<Eigen::Index>(1 + inputs * degree);

    Sums all(terms);
    std::vector<Sums> parts(kFolds, Sums(terms));
    const std::vector<std::size_t> folds = foldsOf(used.size());
    for (std::size_t n = 0; n < used.size(); ++n) {
        std::vector<double> row{1.0};
        for (const double u : points[used[n]])
            addLegendre(u, degree, row);
        parts[folds[n]].add(row, output[used[n]] - mean);  // centred: no digits cancel
    }
    for (const Sums& part : parts) {
        all.gram += part.gram;
        all.moment += part.moment;
        all.square += part.square;
        all.count += part.count;
    }
    if (!(all.square > kFlat * all.count * mean * mean) || !(all.square > 0))
        return {};

    const auto whole = rawShares(all, degree);
    if (!whole)
        return {};
    const std::vector<double> estimate = grouped(*whole, groups);
    std::vector<std::vector<double>> left;  // one fold left out
    for (const Sums& part : parts) {
        const auto shares = rawShares(all.without(part), degree);
        if (!shares)
            return {};
        left.push_back(grouped(*shares, groups));
    }
    std::vector<VarianceShare> result;
    for (std::size_t g = 0; g < groups.size(); ++g) {
        double middle = 0, square = 0;
        for (const std::vector<double>& shares : left)
            middle += shares[g] / kFolds;
        for (const std::vector<double>& shares : left)
            square += (shares[g] - middle) * (shares[g] - middle);
        result.push_back(
            {std::clamp(estimate[g], 0.0, 1.0), std::sqrt(square * (kFolds - 1.0) / kFolds)});
    }
    return result;
}

}  // namespace stillbay
