// SPDX-License-Identifier: MIT
#include "core/base/solve.h"

#include <Eigen/Cholesky>
#include <Eigen/LU>

namespace stillbay {

using Eigen::MatrixXd;

Matrix6d inverse(const Matrix6d& A)
{
    return A.inverse();
}

Matrix6cd inverse(const Matrix6cd& A)
{
    return A.inverse();
}

std::vector<Vector6cd> solve(const Matrix6cd& A, const std::vector<Vector6cd>& b)
{
    const Eigen::PartialPivLU<Matrix6cd> lu(A);
    std::vector<Vector6cd> x;
    x.reserve(b.size());
    for (const Vector6cd& one : b)
        x.emplace_back(lu.solve(one));
    return x;
}

std::optional<Matrix6d> choleskyFactor(const Matrix6d& A)
{
    const Eigen::LLT<Matrix6d> factor(A);
    if (factor.info() != Eigen::Success)
        return std::nullopt;
    return Matrix6d(factor.matrixL());
}

std::optional<MatrixXd> denseCholesky(const MatrixXd& A)
{
    const Eigen::LLT<MatrixXd> factor(A);
    if (factor.info() != Eigen::Success)
        return std::nullopt;
    return MatrixXd(factor.matrixL());
}

Vector6d solveCholesky(const Matrix6d& L, const Vector6d& b)
{
    const auto lower = L.triangularView<Eigen::Lower>();
    return lower.transpose().solve(lower.solve(b));
}

MatrixXd solveDenseCholesky(const MatrixXd& L, const MatrixXd& b)
{
    const auto lower = L.triangularView<Eigen::Lower>();
    return lower.transpose().solve(lower.solve(b));
}

MatrixXd solveSymmetric(const MatrixXd& A, const MatrixXd& b)
{
    return A.ldlt().solve(b);
}

}  // namespace stillbay
