// SPDX-License-Identifier: MIT
#include "core/recording/pole_choice.h"

#include "core/base/solve.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

namespace stillbay {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;

// The same for one number more: a softening.
constexpr double kSofteningNeeded = 40.0;

// By how much the sum of squares must grow, over the noise's mean square, for a pole to be needed:
// chi-square of its freedom d, five deviations above its mean and ten more because the pole was
// sought where the noise looks most like one.
double needed(const std::vector<DecaySamples>& plucks)
{
    double freedom = 2.0;
    for (const DecaySamples& pluck : plucks)
        freedom += 2.0 * static_cast<double>(pluck.values.cols());
    return freedom + 5.0 * std::sqrt(2.0 * freedom) + 10.0;
}

// Normal equations of all candidates, of which any subset is solved without the samples.
struct LinearProblem {
    struct Pluck {
        MatrixXd gram, right;
        double squares = 0.0;
    };
    std::vector<Pluck> plucks;

    LinearProblem(const std::vector<DecaySamples>& samples, const std::vector<DecayPole>& poles)
    {
        for (const DecaySamples& pluck : samples) {
            const MatrixXd basis = decayBasis(pluck, poles);
            plucks.push_back({basis.transpose() * basis, basis.transpose() * pluck.values,
                              pluck.values.squaredNorm()});
        }
    }

    double squares(const std::vector<std::size_t>& kept) const
    {
        double sum = 0.0;
        for (const Pluck& pluck : plucks) {
            std::vector<Index> columns;
            for (const std::size_t k : kept) {
                columns.push_back(static_cast<Index>(2 * k));
                columns.push_back(static_cast<Index>(2 * k + 1));
            }
            for (Index slow = pluck.gram.cols() - kSlowColumns; slow < pluck.gram.cols(); ++slow)
                columns.push_back(slow);
            MatrixXd gram = pluck.gram(columns, columns);
            gram.diagonal() *= 1.0 + 1e-11;
            const MatrixXd right = pluck.right(columns, Eigen::all);
            sum += pluck.squares - right.cwiseProduct(solveSymmetric(gram, right)).sum();
        }
        return std::max(sum, 0.0);
    }
};

double freedomOf(const std::vector<DecaySamples>& plucks, std::size_t poles)
{
    double freedom = 0.0;
    for (const DecaySamples& pluck : plucks)
        freedom += static_cast<double>(pluck.values.cols()) *
                   (static_cast<double>(pluck.values.rows()) - 2.0 * static_cast<double>(poles) -
                    static_cast<double>(kSlowColumns));
    return std::max(freedom, 1.0);
}

std::vector<std::size_t> without(std::vector<std::size_t> list, std::size_t place)
{
    list.erase(list.begin() + static_cast<std::ptrdiff_t>(place));
    return list;
}

// Leaves out candidates as they are, unfitted, while the loss is what noise would lose.
std::vector<DecayPole> thinned(const std::vector<DecaySamples>& plucks,
                               const std::vector<DecayPole>& candidates, std::size_t most)
{
    const LinearProblem problem(plucks, candidates);
    std::vector<std::size_t> kept(candidates.size());
    for (std::size_t k = 0; k < kept.size(); ++k)
        kept[k] = k;
    double squares = problem.squares(kept);
    const double noise = squares / freedomOf(plucks, kept.size());
    const double bound = needed(plucks) * noise;
    while (!kept.empty()) {
        std::size_t least = 0;
        double best = std::numeric_limits<double>::infinity();
        for (std::size_t place = 0; place < kept.size(); ++place) {
            const double left = problem.squares(without(kept, place));
            if (left < best) {
                best = left;
                least = place;
            }
        }
        if (best - squares > bound && kept.size() <= most)
            break;
        squares = best;
        kept = without(kept, least);
    }
    std::vector<DecayPole> poles;
    for (const std::size_t k : kept)
        poles.push_back(candidates[k]);
    return poles;
}

// Leaves out fitted poles while what stays, fitted again, is not worse than noise makes it.
PoleFit withoutNeedless(const std::vector<DecaySamples>& plucks, PoleFit fit)
{
    while (!fit.poles.empty()) {
        const double bound = needed(plucks) * noiseOf(fit);
        const LinearProblem problem(plucks, fit.poles);
        std::vector<std::size_t> all(fit.poles.size());
        for (std::size_t k = 0; k < all.size(); ++k)
            all[k] = k;
        std::vector<std::pair<double, std::size_t>> costs;
        for (std::size_t k = 0; k < all.size(); ++k)
            costs.emplace_back(problem.squares(without(all, k)) - fit.squares, k);
        std::sort(costs.begin(), costs.end());
        std::optional<PoleFit> fewer;
        for (const auto& [cost, k] : costs) {
            // Fitting again wins back a part of the cost, hardly more than this.
            if (cost > 300.0 * bound)
                break;
            auto rest = fit.poles;
            rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(k));
            PoleFit refitted = fitPoles(plucks, rest, {8, 0.05 * bound});
            if (refitted.squares - fit.squares < bound) {
                fewer = std::move(refitted);
                break;
            }
        }
        if (!fewer)
            break;
        fit = *std::move(fewer);
    }
    return fit;
}

// Parts one pole into two close ones where the samples ask for it.
PoleFit withParted(const std::vector<DecaySamples>& plucks, PoleFit fit, std::size_t most)
{
    for (bool again = true; again && fit.poles.size() < most;) {
        again = false;
        const double bound = needed(plucks) * noiseOf(fit);
        for (std::size_t k = 0; k < fit.poles.size() && !again; ++k) {
            auto parted = fit.poles;
            const double apart = 0.4 * std::max(fit.poles[k].damping, 0.01);
            parted[k].omega *= 1.0 - apart;
            parted.push_back(fit.poles[k]);
            parted.back().omega *= 1.0 + apart;
            parted.back().isSoftening = false;
            parted.back().softening = 0.0;
            // A few steps show whether it is worth the others.
            PoleFit two = fitPoles(plucks, parted, {4, 0.05 * bound});
            if (fit.squares - two.squares > 0.3 * bound)
                two = fitPoles(plucks, two.poles, {12, 0.02 * bound});
            if (fit.squares - two.squares > needed(plucks) * noiseOf(two)) {
                fit = std::move(two);
                again = true;
            }
        }
    }
    return fit;
}

double energyOfPole(const PoleFit& fit, std::size_t k)
{
    double energy = 0.0;
    for (const Eigen::MatrixXcd& amplitudes : fit.amplitudes)
        energy += amplitudes.row(static_cast<Index>(k)).squaredNorm();
    return energy / -fit.poles[k].s().real();
}

// Whether two poles move the channels alike in the pluck that the first is largest in, as two
// halves of one mode do.
bool moveAlike(const PoleFit& fit, std::size_t a, std::size_t b)
{
    const auto at = [](std::size_t k) {
        return static_cast<Index>(k);
    };
    const auto largest = std::max_element(
        fit.amplitudes.begin(), fit.amplitudes.end(), [&](const auto& x, const auto& y) {
            return x.row(at(a)).squaredNorm() < y.row(at(a)).squaredNorm();
        });
    const auto first = largest->row(at(a)), second = largest->row(at(b));
    return std::norm(first.dot(second)) > 0.95 * first.squaredNorm() * second.squaredNorm();
}

// The strongest mode, if it softens, looks like several close ones. Where one number, its
// softening, explains the samples as well as its smaller neighbours do, they go; likewise where it
// explains what no pole did. A few steps show whether it is worth the others.
PoleFit withSoftening(const std::vector<DecaySamples>& plucks, PoleFit fit)
{
    std::size_t k = 0;
    for (std::size_t other = 0; other < fit.poles.size(); ++other)
        if (energyOfPole(fit, other) > energyOfPole(fit, k))
            k = other;
    if (fit.poles.empty() || fit.poles[k].isSoftening)
        return fit;
    const double noise = noiseOf(fit), bound = needed(plucks) * noise;
    const double reach = std::max(2.0 * fit.poles[k].damping, 0.05);
    std::vector<DecayPole> fewer{fit.poles[k]};
    fewer[0].isSoftening = true;
    for (std::size_t other = 0; other < fit.poles.size(); ++other)
        if (other != k &&
            (energyOfPole(fit, other) > 0.5 * energyOfPole(fit, k) ||
             std::abs(std::log(fit.poles[other].omega / fit.poles[k].omega)) > reach ||
             !moveAlike(fit, k, other)))
            fewer.push_back(fit.poles[other]);
    const bool isFewer = fewer.size() < fit.poles.size();
    const double allowed = isFewer ? 0.5 * bound : -kSofteningNeeded * noise;
    PoleFit tried = fitPoles(plucks, fewer, {isFewer ? 5 : 2, 0.01 * bound});
    const double open = isFewer ? 20.0 * bound : -0.25 * kSofteningNeeded * noise;
    if (tried.squares - fit.squares < open)
        tried = fitPoles(plucks, tried.poles, {14, 0.01 * bound});
    if (tried.squares - fit.squares < allowed)
        return withoutNeedless(plucks, std::move(tried));
    return fit;
}

}  // namespace

double noiseOf(const PoleFit& fit)
{
    return fit.squares / std::max(fit.freedom, 1.0);
}

PoleFit choosePoles(const std::vector<DecaySamples>& plucks, std::vector<DecayPole> candidates)
{
    std::size_t shortest = std::numeric_limits<std::size_t>::max();
    for (const DecaySamples& pluck : plucks)
        shortest = std::min(shortest, pluck.blocks());
    const std::size_t room = shortest > 8 ? (shortest - 4) / 4 : 1;
    candidates.resize(std::min(candidates.size(), std::min<std::size_t>(room, 20)));
    const std::size_t most = std::min<std::size_t>(room, 10);
    PoleFit fit = fitPoles(plucks, thinned(plucks, candidates, most), {12, 0.1});
    fit = withoutNeedless(plucks, std::move(fit));
    fit = withSoftening(plucks, std::move(fit));
    return withParted(plucks, std::move(fit), most);
}

}  // namespace stillbay
