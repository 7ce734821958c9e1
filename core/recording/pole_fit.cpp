// SPDX-License-Identifier: MIT
#include "core/recording/pole_fit.h"

#include "core/base/linalg.h"
#include "core/base/solve.h"

#include <Eigen/QR>

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>

namespace stillbay {
namespace {

using Eigen::Index;
using Eigen::MatrixXcd;
using Eigen::MatrixXd;
using Eigen::VectorXd;

// The motion and its derivatives over s and over the softening.
struct Motion {
    Eigen::VectorXcd value, slope, softer;
};

Motion movedBy(const DecaySamples& pluck, const DecayPole& pole)
{
    const auto n = static_cast<Index>(pluck.blocks());
    const Complex s = pole.s();
    const double fall = -s.real();
    Motion motion{Eigen::VectorXcd(n), Eigen::VectorXcd(n), {}};
    if (pole.isSoftening)
        motion.softer.resize(n);
    int width = 0;
    Complex gain, gainSlope, turn;
    for (Index j = 0; j < n; ++j) {
        const auto at = static_cast<std::size_t>(j);
        const double t = pluck.time[at];
        const bool isNew = pluck.width[at] != width;
        if (isNew) {
            width = pluck.width[at];
            gain = blockGain(s, width, pluck.sampleTime) * std::sqrt(static_cast<double>(width));
            gainSlope = blockGainSlope(s, width, pluck.sampleTime);
            turn = std::exp(s * (width * pluck.sampleTime));
        }
        if (pole.isSoftening) {
            // The phase lags by the integral of what the frequency lacks.
            const Complex lag(0.0, -pole.omega * pluck.strength * -std::expm1(-fall * t) / fall);
            motion.value[j] = gain * std::exp(s * t + pole.softening * lag);
            motion.softer[j] = motion.value[j] * lag;
        } else {
            motion.value[j] = isNew ? gain * std::exp(s * t) : motion.value[j - 1] * turn;
        }
        motion.slope[j] = motion.value[j] * (t + gainSlope);
    }
    return motion;
}

MatrixXd basisOf(const DecaySamples& pluck, const std::vector<Motion>& motions)
{
    const auto n = static_cast<Index>(pluck.blocks());
    const auto K = static_cast<Index>(motions.size());
    MatrixXd basis(n, 2 * K + kSlowColumns);
    for (Index k = 0; k < K; ++k) {
        basis.col(2 * k) = motions[static_cast<std::size_t>(k)].value.real();
        basis.col(2 * k + 1) = -motions[static_cast<std::size_t>(k)].value.imag();
    }
    const double end = pluck.time.empty() ? 1.0 : std::max(pluck.time.back(), 1e-12);
    for (Index j = 0; j < n; ++j) {
        const auto at = static_cast<std::size_t>(j);
        const double weight = std::sqrt(static_cast<double>(pluck.width[at]));
        basis(j, 2 * K) = weight;
        basis(j, 2 * K + 1) = weight * (2.0 * pluck.time[at] / end - 1.0);
    }
    return basis;
}

// What the poles leave, and which way is down: HᵀH and Hᵀr of the eliminated problem.
struct Normal {
    double squares = 0.0;
    MatrixXd curvature;
    VectorXd gradient;
    std::vector<MatrixXcd> amplitudes;
    std::vector<MatrixXd> residuals;
};

Normal normalOf(const std::vector<DecaySamples>& plucks, const std::vector<DecayPole>& poles)
{
    const auto K = static_cast<Index>(poles.size());
    const Index unknowns =
        2 * K + static_cast<Index>(std::count_if(
                    poles.begin(), poles.end(), [](const auto& pole) { return pole.isSoftening; }));
    Normal normal{0.0, MatrixXd::Zero(unknowns, unknowns), VectorXd::Zero(unknowns), {}, {}};
    for (const DecaySamples& pluck : plucks) {
        std::vector<Motion> motions;
        for (const DecayPole& pole : poles)
            motions.push_back(movedBy(pluck, pole));
        const MatrixXd basis = basisOf(pluck, motions);
        const Eigen::HouseholderQR<MatrixXd> qr(basis);
        const Index m = basis.cols();
        const MatrixXd Q = qr.householderQ() * MatrixXd::Identity(basis.rows(), m);
        const MatrixXd projected = Q.transpose() * pluck.values;
        const MatrixXd linear =
            qr.matrixQR().topRows(m).triangularView<Eigen::Upper>().solve(projected);
        MatrixXd residual = pluck.values - Q * projected;
        normal.squares += residual.squaredNorm();

        const Index channels = pluck.values.cols(), n = basis.rows();
        MatrixXcd amplitude(K, channels);
        for (Index k = 0; k < K; ++k)
            for (Index c = 0; c < channels; ++c)
                amplitude(k, c) = Complex(linear(2 * k, c), linear(2 * k + 1, c));
        MatrixXd J(n * channels, unknowns);
        Index last = 2 * K;
        for (Index k = 0; k < K; ++k) {
            const DecayPole& pole = poles[static_cast<std::size_t>(k)];
            const double root = std::sqrt(1.0 - pole.damping * pole.damping);
            const Complex perOmega = pole.s();
            const Complex perDamping =
                pole.omega * pole.damping * Complex(-1.0, -pole.damping / root);
            const Eigen::VectorXcd& slope = motions[static_cast<std::size_t>(k)].slope;
            for (Index c = 0; c < channels; ++c) {
                J.block(c * n, 2 * k, n, 1) = (slope * (perOmega * amplitude(k, c))).real();
                J.block(c * n, 2 * k + 1, n, 1) = (slope * (perDamping * amplitude(k, c))).real();
                if (pole.isSoftening)
                    J.block(c * n, last, n, 1) =
                        (motions[static_cast<std::size_t>(k)].softer * amplitude(k, c)).real();
            }
            last += pole.isSoftening ? 1 : 0;
        }
        for (Index c = 0; c < channels && unknowns > 0; ++c) {
            auto block = J.middleRows(c * n, n);
            const MatrixXd inside = Q.transpose() * block;
            block.noalias() -= Q * inside;
            normal.gradient.noalias() += block.transpose() * residual.col(c);
        }
        normal.curvature.noalias() += J.transpose() * J;
        normal.amplitudes.push_back(std::move(amplitude));
        normal.residuals.push_back(std::move(residual));
    }
    return normal;
}

constexpr double kLeastDamping = 1e-4, kMostDamping = 0.9, kMostSoftening = 0.4;

std::vector<DecayPole> stepped(std::vector<DecayPole> poles, const VectorXd& step)
{
    auto last = static_cast<Index>(2 * poles.size());
    for (std::size_t k = 0; k < poles.size(); ++k) {
        const auto at = static_cast<Index>(2 * k);
        if (poles[k].isSoftening)
            poles[k].softening =
                std::clamp(poles[k].softening + std::clamp(step[last++], -0.05, 0.05),
                           -kMostSoftening, kMostSoftening);
        poles[k].omega *= std::exp(std::clamp(step[at], -0.1, 0.1));
        poles[k].damping =
            std::clamp(poles[k].damping * std::exp(std::clamp(step[at + 1], -0.7, 0.7)),
                       kLeastDamping, kMostDamping);
    }
    return poles;
}

}  // namespace

Complex DecayPole::s() const
{
    return omega * Complex(-damping, std::sqrt(1.0 - damping * damping));
}

Eigen::VectorXcd motionOf(const DecaySamples& pluck, const DecayPole& pole)
{
    return movedBy(pluck, pole).value;
}

MatrixXd decayBasis(const DecaySamples& pluck, const std::vector<DecayPole>& poles)
{
    std::vector<Motion> motions;
    for (const DecayPole& pole : poles)
        motions.push_back(movedBy(pluck, pole));
    return basisOf(pluck, motions);
}

PoleFit fitPoles(const std::vector<DecaySamples>& plucks, std::vector<DecayPole> start,
                 const FitLimits& limits)
{
    Normal normal = normalOf(plucks, start);
    double lambda = 1e-3;
    for (int step = 0; step < limits.steps && !start.empty(); ++step) {
        MatrixXd damped = normal.curvature;
        damped.diagonal() *= 1.0 + lambda;
        damped.diagonal().array() += 1e-300;
        const VectorXd move = solveSymmetric(damped, normal.gradient);
        if (!move.allFinite())
            break;
        const auto next = stepped(start, move);
        Normal better = normalOf(plucks, next);
        if (better.squares < normal.squares) {
            const double gain = normal.squares - better.squares;
            start = next;
            normal = std::move(better);
            lambda *= 0.2;
            if (gain < limits.leastGain || gain < 1e-10 * normal.squares)
                break;
        } else {
            if (move.cwiseAbs().maxCoeff() < 1e-9)
                break;
            lambda = lambda < 1e-6 ? 1e-2 : lambda * 8.0;
            if (lambda > 1e6)
                break;
        }
    }
    PoleFit fit;
    fit.poles = std::move(start);
    fit.squares = normal.squares;
    for (const DecaySamples& pluck : plucks)
        fit.freedom +=
            static_cast<double>(pluck.values.cols()) *
            (static_cast<double>(pluck.values.rows()) -
             2.0 * static_cast<double>(fit.poles.size()) - static_cast<double>(kSlowColumns));
    const auto P = normal.curvature.rows();
    fit.freedom -= static_cast<double>(P);
    if (P > 0) {
        MatrixXd H = normal.curvature;
        const VectorXd scale = H.diagonal().cwiseMax(1e-300).cwiseSqrt().cwiseInverse();
        H = scale.asDiagonal() * H * scale.asDiagonal();
        H.diagonal().array() += 1e-14;
        fit.covariance =
            scale.asDiagonal() * solveSymmetric(H, MatrixXd::Identity(P, P)) * scale.asDiagonal();
    }
    fit.amplitudes = std::move(normal.amplitudes);
    fit.residuals = std::move(normal.residuals);
    return fit;
}

}  // namespace stillbay
