// SPDX-License-Identifier: MIT
#include "core/recording/pole_candidates.h"

#include "core/base/linalg.h"
#include "core/base/solve.h"
#include "core/recording/decay_samples.h"

#include <Eigen/Core>
#include <Eigen/Eigenvalues>

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>

namespace stillbay {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;

constexpr std::size_t kBandBlocks = 192;  // of a pluck and band
constexpr Index kHankelRows = 64;         // rows of the Hankel matrix
constexpr Index kLargestOrder = 24;
constexpr std::size_t kLeastBandBlocks = 12;
constexpr double kLeastRepeat = 3;  // orders

// Windows of a decay under each other, of all plucks and channels: their Gram matrix.
MatrixXd gramOf(const std::vector<DecaySamples>& plucks, Index window)
{
    MatrixXd gram = MatrixXd::Zero(window, window);
    for (const DecaySamples& pluck : plucks) {
        const Index n = pluck.values.rows(), shifts = n - window + 1;
        if (shifts < 1)
            continue;
        MatrixXd hankel(window, shifts);
        for (Index c = 0; c < pluck.values.cols(); ++c) {
            const double offset = pluck.values.col(c).tail(std::max<Index>(n / 4, 1)).mean();
            for (Index k = 0; k < shifts; ++k)
                hankel.col(k) = pluck.values.col(c).segment(k, window).array() - offset;
            gram.selfadjointView<Eigen::Lower>().rankUpdate(hankel);
        }
    }
    return gram.selfadjointView<Eigen::Lower>();
}

// Eigenvalues of a matrix in Schur's real form: blocks of one or two along its diagonal.
std::vector<Complex> eigenvaluesOf(const MatrixXd& T)
{
    std::vector<Complex> values;
    for (Index k = 0; k < T.rows(); ++k) {
        if (k + 1 == T.rows() || T(k + 1, k) == 0.0) {
            values.emplace_back(T(k, k));
            continue;
        }
        const double half = 0.5 * (T(k, k) - T(k + 1, k + 1));
        const Complex root = std::sqrt(Complex(half * half + T(k, k + 1) * T(k + 1, k)));
        values.push_back(T(k + 1, k + 1) + half + root);
        values.push_back(T(k + 1, k + 1) + half - root);
        ++k;
    }
    return values;
}

// Eigenvalues z of the shift, one list a model order.
std::vector<std::vector<Complex>> shiftsOf(const MatrixXd& gram)
{
    const Index window = gram.rows();
    const Index most = std::min(kLargestOrder, window / 2);
    const DenseEigen eigen = denseSymmetricEigen(gram);
    const MatrixXd U = eigen.vectors.rightCols(most).rowwise().reverse();
    const MatrixXd up = U.topRows(window - 1), down = U.bottomRows(window - 1);
    const MatrixXd product = up.transpose() * down;
    std::vector<std::vector<Complex>> shifts;
    for (Index order = 2; order <= most; ++order) {
        // up'up = 1 − l l', whose inverse is 1 + l l'/(1 − l'l).
        const Eigen::VectorXd last = U.row(window - 1).head(order).transpose();
        const double rest = 1.0 - last.squaredNorm();
        if (rest < 1e-9)
            continue;
        MatrixXd shift = product.topLeftCorner(order, order);
        shift += (last / rest) * (last.transpose() * shift).eval();
        const Eigen::RealSchur<MatrixXd> schur(shift, false);
        if (schur.info() == Eigen::Success)
            shifts.push_back(eigenvaluesOf(schur.matrixT()));
    }
    return shifts;
}

struct Seen {
    double logOmega = 0.0, damping = 0.0;
    int times = 0;
    std::size_t order = 0;  // at which it was seen last
};

bool isNear(const Seen& seen, double logOmega, double damping)
{
    return std::abs(seen.logOmega - logOmega) < 0.012 &&
           std::abs(seen.damping - damping) < 0.35 * std::max(seen.damping, damping) + 0.003;
}

void see(std::vector<Seen>& all, double logOmega, double damping, std::size_t order)
{
    for (Seen& seen : all)
        if (seen.order != order && isNear(seen, logOmega, damping)) {
            ++seen.times;
            seen.order = order;
            // The newer ones count more: a higher order parts what a lower one mixed.
            const double part = std::max(1.0 / seen.times, 0.3);
            seen.logOmega += part * (logOmega - seen.logOmega);
            seen.damping += part * (damping - seen.damping);
            return;
        }
    all.push_back({logOmega, damping, 1, order});
}

std::vector<Seen> polesOfBand(const std::vector<DecaySamples>& plucks, double blockTime,
                              double lowest_hz, double highest_hz)
{
    std::size_t longest = 0;
    for (const DecaySamples& pluck : plucks)
        longest = std::max(longest, pluck.blocks());
    if (longest < kLeastBandBlocks)
        return {};
    const Index window = std::min<Index>(kHankelRows, static_cast<Index>(longest) / 2);
    const auto shifts = shiftsOf(gramOf(plucks, window));
    std::vector<Seen> all;
    for (std::size_t order = 0; order < shifts.size(); ++order)
        for (const Complex z : shifts[order]) {
            if (z.imag() <= 0.0 || std::abs(z) >= 1.0)
                continue;
            const Complex s = std::log(z) / blockTime;
            const double omega = std::abs(s), damping = -s.real() / omega;
            const double f_hz = omega / (2.0 * std::numbers::pi);
            if (f_hz < lowest_hz || f_hz > highest_hz || damping < 5e-4 || damping > 0.6)
                continue;
            see(all, std::log(omega), damping, order + 1);
        }
    std::erase_if(all, [](const Seen& seen) { return seen.times < kLeastRepeat; });
    return all;
}

}  // namespace

std::vector<PoleCandidate> poleCandidates(const Recording& recording,
                                          const std::vector<std::size_t>& channels,
                                          const std::vector<double>& noise,
                                          const std::vector<Stretch>& stretches,
                                          const CandidateRange& range)
{
    std::vector<Seen> all;
    std::size_t longest = 0;
    for (const Stretch& stretch : stretches)
        longest = std::max(longest, stretch.samples());
    const double quarter = recording.rate / (3.3 * range.highest_hz);
    for (int width = std::max(1, static_cast<int>(quarter));
         longest / static_cast<std::size_t>(width) >= kLeastBandBlocks; width *= 2) {
        const double rate = recording.rate / width;
        if (0.45 * rate < range.lowest_hz)
            break;
        std::vector<DecaySamples> plucks;
        for (const Stretch& stretch : stretches)
            plucks.push_back(evenBlocks(recording, channels, noise, stretch, width, kBandBlocks));
        for (const Seen& seen :
             polesOfBand(plucks, 1.0 / rate, std::max(range.lowest_hz, rate / 20.0),
                         std::min(range.highest_hz, 0.45 * rate))) {
            const auto old = std::find_if(all.begin(), all.end(), [&](const Seen& other) {
                return isNear(other, seen.logOmega, seen.damping);
            });
            if (old == all.end())
                all.push_back(seen);
            else if (old->times < seen.times)
                *old = seen;
        }
    }
    std::vector<PoleCandidate> candidates;
    for (const Seen& seen : all)
        candidates.push_back({{std::exp(seen.logOmega), seen.damping}, seen.times});
    std::stable_sort(candidates.begin(), candidates.end(),
                     [](const auto& a, const auto& b) { return a.seen > b.seen; });
    return candidates;
}

}  // namespace stillbay
