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

/// @param A  symmetric; the lower triangle is read
/// @return its eigenvalues, rising (dsyev).
Eigen::VectorXd symmetricEigenvaluesByLapack(Eigen::MatrixXd A);

/// @return x with ‖A x − b‖ smallest, for A of full rank with no fewer rows than columns (dgels).
Eigen::MatrixXd leastSquaresByLapack(Eigen::MatrixXd A, Eigen::MatrixXd b);

}  // namespace stillbay::test
