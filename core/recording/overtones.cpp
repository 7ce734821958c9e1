// SPDX-License-Identifier: MIT
#include "core/recording/overtones.h"

#include "core/base/linalg.h"
#include "core/recording/pole_choice.h"

#include <algorithm>
#include <cmath>

namespace stillbay {
namespace {

using Eigen::Index;

constexpr double kMostEnergy = 0.05;                   // over the weaker parent's
constexpr double kFrequencySlack = 0.004;              // besides three spreads: the parents soften
constexpr double kLeastDecay = 0.8, kMostDecay = 2.5;  // over both parents' together
constexpr double kMostUnlike = 0.3;                    // of its energy that is not their product's

Index placeOf(std::size_t k)
{
    return static_cast<Index>(k);
}

// Deviations of the frequency and of the fall, over themselves.
double frequencySpread(const PoleFit& fit, std::size_t k)
{
    return std::sqrt(std::max(0.0, noiseOf(fit) * fit.covariance(2 * placeOf(k), 2 * placeOf(k))));
}

double dampingSpread(const PoleFit& fit, std::size_t k)
{
    return std::sqrt(
        std::max(0.0, noiseOf(fit) * fit.covariance(2 * placeOf(k) + 1, 2 * placeOf(k) + 1)));
}

// A pluck each: the pole's amplitude where it moves most.
std::vector<Complex> largestOf(const PoleFit& fit, std::size_t k)
{
    Eigen::VectorXd squares = Eigen::VectorXd::Zero(fit.amplitudes.front().cols());
    for (const Eigen::MatrixXcd& amplitudes : fit.amplitudes)
        squares += amplitudes.row(placeOf(k)).cwiseAbs2().transpose();
    Index largest = 0;
    squares.maxCoeff(&largest);
    std::vector<Complex> ofPluck;
    for (const Eigen::MatrixXcd& amplitudes : fit.amplitudes)
        ofPluck.push_back(amplitudes(placeOf(k), largest));
    return ofPluck;
}

// Share of a pole's energy that is not one factor a channel times the given amplitudes.
double unlike(const PoleFit& fit, std::size_t k, const std::vector<Complex>& product)
{
    double whole = 0.0, squares = 0.0;
    Eigen::RowVectorXcd sum = Eigen::RowVectorXcd::Zero(fit.amplitudes.front().cols());
    for (std::size_t p = 0; p < product.size(); ++p) {
        const auto own = fit.amplitudes[p].row(placeOf(k));
        whole += own.squaredNorm();
        squares += std::norm(product[p]);
        sum += std::conj(product[p]) * own;
    }
    return whole > 0.0 && squares > 0.0 ? 1.0 - sum.squaredNorm() / (squares * whole) : 1.0;
}

bool isProduct(const PoleFit& fit, std::size_t k, std::size_t a, std::size_t b, bool isSum)
{
    const Complex sa = fit.poles[a].s(), sb = fit.poles[b].s(), s = fit.poles[k].s();
    const Complex together = isSum ? sa + sb : sa + std::conj(sb);
    const double off = std::abs(s.imag() - std::abs(together.imag()));
    const double spread =
        std::hypot(s.imag() * frequencySpread(fit, k), sa.imag() * frequencySpread(fit, a),
                   sb.imag() * frequencySpread(fit, b));
    if (off > 3.0 * spread + kFrequencySlack * s.imag())
        return false;
    const double fall = s.real() / together.real(), slack = 3.0 * dampingSpread(fit, k);
    if (fall < kLeastDecay - slack || fall > kMostDecay + slack)
        return false;
    std::vector<Complex> product = largestOf(fit, a);
    const std::vector<Complex> other = largestOf(fit, b);
    for (std::size_t p = 0; p < product.size(); ++p)
        product[p] *= isSum ? other[p] : std::conj(other[p]);
    if (together.imag() < 0.0)
        for (Complex& each : product)
            each = std::conj(each);
    return unlike(fit, k, product) < kMostUnlike;
}

}  // namespace

std::optional<std::pair<std::size_t, std::size_t>> parentsOf(const PoleFit& fit,
                                                             const std::vector<double>& shares,
                                                             std::size_t pole)
{
    if (fit.amplitudes.size() < 2)
        return std::nullopt;
    std::vector<std::size_t> stronger;
    for (std::size_t k = 0; k < fit.poles.size(); ++k)
        if (k != pole && shares[pole] < kMostEnergy * shares[k])
            stronger.push_back(k);
    for (std::size_t i = 0; i < stronger.size(); ++i)
        for (std::size_t j = i; j < stronger.size(); ++j)
            for (const bool isSum : {true, false})
                if ((isSum || i != j) && isProduct(fit, pole, stronger[i], stronger[j], isSum))
                    return std::pair{stronger[i], stronger[j]};
    return std::nullopt;
}

}  // namespace stillbay
