// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"

#include <Eigen/Core>

/// Dense algebra for oracles, by LAPACK: not what the core solves with, and compiled once. A matrix
/// that LAPACK refuses (singular, no convergence) ends the test program with its code.
namespace stillbay::test {

/// @return x with A x = b, by LU with partial pivoting (zgesv); a column for each of b.
Eigen::MatrixXcd solveByLapack(Eigen::MatrixXcd A, Eigen::MatrixXcd b);

/// @return λ of K x = λ M x, in no order (zggev).
Eigen::VectorXcd eigenvaluesByLapack(Eigen::MatrixXcd K, Eigen::MatrixXcd M);

/// @param A  Hermitian; the lower triangle is read
/// @return its eigenvalues, rising (zheev).
Eigen::VectorXd hermitianEigenvaluesByLapack(Eigen::MatrixXcd A);

/// @param K  symmetric, @param M symmetric positive definite; the lower triangles are read
/// @return λ of K x = λ M x, rising (dsygv).
Eigen::VectorXd symmetricEigenvaluesByLapack(Eigen::MatrixXd K, Eigen::MatrixXd M);

/// @return x with ‖A x − b‖ smallest, for A of full rank with no fewer rows than columns (dgels).
Eigen::MatrixXd leastSquaresByLapack(Eigen::MatrixXd A, Eigen::MatrixXd b);

}  // namespace stillbay::test
