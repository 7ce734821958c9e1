// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"

#include <optional>
#include <vector>

/// Dense algebra of six-by-six matrices, and of such as are as large as the data ask. Each function
/// spells Eigen's templates out once; in every file that used them they would cost seconds of
/// compiling.
namespace stillbay {

/// @return A⁻¹ by LU with partial pivoting; entries that are not finite for a singular A.
Matrix6d inverse(const Matrix6d& A);
Matrix6cd inverse(const Matrix6cd& A);

/// @return x with A x = b for each b, by LU with partial pivoting; entries that are not finite for
/// a singular A.
std::vector<Vector6cd> solve(const Matrix6cd& A, const std::vector<Vector6cd>& b);

/// @param A  symmetric; the lower triangle is read
/// @return L with A = L Lᵀ, lower triangular; none where A is not positive definite.
std::optional<Matrix6d> choleskyFactor(const Matrix6d& A);
std::optional<Eigen::MatrixXd> denseCholesky(const Eigen::MatrixXd& A);

/// @return x with L Lᵀ x = b, L from choleskyFactor().
Vector6d solveCholesky(const Matrix6d& L, const Vector6d& b);
Eigen::MatrixXd solveDenseCholesky(const Eigen::MatrixXd& L, const Eigen::MatrixXd& b);

/// @param A  symmetric, positive or negative semidefinite; the lower triangle is read
/// @return x with A x = b for each column of b, by L D Lᵀ with pivoting
Eigen::MatrixXd solveSymmetric(const Eigen::MatrixXd& A, const Eigen::MatrixXd& b);

/// A symmetric matrix's eigenvalues, rising, and its orthonormal eigenvectors as columns.
template <int Size>
struct EigenOf {
    Eigen::Matrix<double, Size, 1> values;
    Eigen::Matrix<double, Size, Size> vectors;
};
using SymmetricEigen = EigenOf<6>;
using DenseEigen = EigenOf<Eigen::Dynamic>;

/// @param A  symmetric, finite; the lower triangle is read
SymmetricEigen symmetricEigen(const Matrix6d& A);
DenseEigen denseSymmetricEigen(const Eigen::MatrixXd& A);

/// A x = λ x, in no order; columns are eigenvectors.
struct ComplexEigen {
    Vector6cd values;
    Matrix6cd vectors;
};

/// @return none where the iteration did not converge.
std::optional<ComplexEigen> complexEigen(const Matrix6cd& A);

}  // namespace stillbay
