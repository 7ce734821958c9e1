// SPDX-License-Identifier: MIT
#include "core/base/solve.h"

#include <Eigen/Eigenvalues>

namespace stillbay {

SymmetricEigen symmetricEigen(const Matrix6d& A)
{
    const DenseEigen eigen = denseSymmetricEigen(A);
    return {eigen.values, eigen.vectors};
}

DenseEigen denseSymmetricEigen(const Eigen::MatrixXd& A)
{
    const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> solver(A);
    return {solver.eigenvalues(), solver.eigenvectors()};
}

std::optional<ComplexEigen> complexEigen(const Matrix6cd& A)
{
    const Eigen::ComplexEigenSolver<Matrix6cd> solver(A);
    if (solver.info() != Eigen::Success)
        return std::nullopt;
    return ComplexEigen{solver.eigenvalues(), solver.eigenvectors()};
}

}  // namespace stillbay
