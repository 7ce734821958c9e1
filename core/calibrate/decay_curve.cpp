// SPDX-License-Identifier: MIT
#include "core/calibrate/decay_curve.h"

#include "core/base/solve.h"

#include <Eigen/Core>

#include <cmath>
#include <complex>

namespace stillbay {

// Normal equations are enough for a drawing: the columns are scaled alike, and twins among the
// modes are held apart by a small ridge.
std::vector<double> decayCurve(std::span<const double> samples, double rate,
                               std::span<const DecayingMode> modes)
{
    const auto rows = static_cast<Eigen::Index>(samples.size());
    const auto columns = static_cast<Eigen::Index>(2 * modes.size() + 1);
    Eigen::MatrixXd A(rows, columns);
    A.col(0).setOnes();
    for (std::size_t m = 0; m < modes.size(); ++m) {
        const std::complex<double> step = std::exp(modes[m].pole() / rate);
        std::complex<double> value = 1.0;
        const auto column = static_cast<Eigen::Index>(2 * m + 1);
        for (Eigen::Index k = 0; k < rows; ++k, value *= step) {
            A(k, column) = value.real();
            A(k, column + 1) = value.imag();
        }
    }
    const Eigen::Map<const Eigen::VectorXd> y(samples.data(), rows);
    Eigen::MatrixXd N = A.transpose() * A;
    constexpr double kRidge = 1e-12;
    N.diagonal() *= 1.0 + kRidge;
    const Eigen::VectorXd amplitudes = solveSymmetric(N, A.transpose() * y);
    const Eigen::VectorXd fit = A * amplitudes;
    return {fit.data(), fit.data() + rows};
}

}  // namespace stillbay
