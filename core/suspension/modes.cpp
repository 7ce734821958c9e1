// SPDX-License-Identifier: MIT
#include "core/suspension/modes.h"

#include "core/base/solve.h"
#include "core/suspension/motion_text.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <numeric>

namespace stillbay {

Result<Modes> solveModes(const Matrix6cd& K, const Matrix6d& inverseMu)
{
    // μ⁻¹ = N Nᵀ turns the pencil into the plain problem A y = ω² y with A = Nᵀ K* N, φ = N y.
    const auto factor = choleskyFactor(inverseMu);
    if (!factor)
        return fail(Errc::NoAnswer, phrase("the mass matrix is not positive definite"),
                    "bay.parts");
    const Matrix6cd N = factor->cast<Complex>();
    const Matrix6cd A = N.transpose() * K * N;
    const auto solution = complexEigen(A);
    if (!solution)
        return fail(Errc::NoAnswer, phrase("the modes' iteration did not converge"), "mounts");

    std::array<Eigen::Index, 6> order;
    std::iota(order.begin(), order.end(), 0);
    std::sort(order.begin(), order.end(), [&](Eigen::Index i, Eigen::Index j) {
        return solution->values[i].real() < solution->values[j].real();
    });
    Modes modes;
    Matrix6cd Y;
    for (Eigen::Index k = 0; k < 6; ++k) {
        modes.omegaSquare[k] = solution->values[order[static_cast<std::size_t>(k)]];
        Y.col(k) = solution->vectors.col(order[static_cast<std::size_t>(k)]);
    }
    if (!(modes.omegaSquare[0].real() > 0))
        return fail(Errc::NoAnswer, phrase("a mode of the bay does not swing back"), "mounts");

    const Matrix6cd Y_inverse = inverse(Y);
    const double misfit = (A - Y * modes.omegaSquare.asDiagonal() * Y_inverse).norm();
    if (!(misfit <= 1e-8 * A.norm()))
        return fail(Errc::NoAnswer,
                    phrase("two modes of the bay coincide so closely that they cannot be told "
                           "apart"),
                    "mounts");
    modes.Phi = N * Y;
    modes.Psi = Y_inverse * N.transpose();
    return modes;
}

double frequency_hz(Complex omegaSquare)
{
    return std::sqrt(omegaSquare.real()) / (2 * std::numbers::pi);
}

double lossFactor(Complex omegaSquare)
{
    return omegaSquare.imag() / omegaSquare.real();
}

Vector6d motionOf(const Vector6cd& shape)
{
    Vector6cd scaled = shape;
    scaled.tail<3>() *= kMotionRadius;
    Eigen::Index largest = 0;
    scaled.cwiseAbs().maxCoeff(&largest);
    return Vector6cd(scaled / scaled[largest]).real();
}

Vector6d energyShares(const Vector6d& motion, const Matrix6d& mu)
{
    Vector6d shape = motion;
    shape.tail<3>() /= kMotionRadius;
    const Vector6d energy = shape.cwiseProduct(mu * shape);
    return energy / energy.sum();
}

double decoupling(const Matrix6d& shares)
{
    const Matrix6d size = shares.cwiseAbs();
    return (size.colwise().maxCoeff().array() / size.colwise().sum().array()).mean();
}

Matrix6d inverseReducedMass(const Matrix6d& M_b, const Matrix6d& M_f, const Vector3d& p_FB)
{
    const Matrix6d P = carry(p_FB);
    const Matrix6d sum = inverse(M_b) + P * inverse(M_f) * P.transpose();
    return 0.5 * (sum + sum.transpose());
}

}  // namespace stillbay
