// SPDX-License-Identifier: MIT
#include "tests/lapack/lapack.h"

#define lapack_complex_float std::complex<float>
#define lapack_complex_double std::complex<double>
#include <cstdlib>
#include <iostream>
#include <lapacke.h>
#include <vector>

namespace stillbay::test {
namespace {

void require(lapack_int info, const char* routine)
{
    if (info == 0)
        return;
    std::cerr << "LAPACK's " << routine << " answers " << info << '\n';
    std::abort();
}

lapack_int size(Eigen::Index n)
{
    return static_cast<lapack_int>(n);
}

}  // namespace

Eigen::MatrixXcd solveByLapack(Eigen::MatrixXcd A, Eigen::MatrixXcd b)
{
    const lapack_int n = size(A.rows());
    std::vector<lapack_int> pivots(static_cast<std::size_t>(n));
    require(
        LAPACKE_zgesv(LAPACK_COL_MAJOR, n, size(b.cols()), A.data(), n, pivots.data(), b.data(), n),
        "zgesv");
    return b;
}

Eigen::VectorXcd eigenvaluesByLapack(Eigen::MatrixXcd K, Eigen::MatrixXcd M)
{
    const lapack_int n = size(K.rows());
    Eigen::VectorXcd alpha(n), beta(n);
    require(LAPACKE_zggev(LAPACK_COL_MAJOR, 'N', 'N', n, K.data(), n, M.data(), n, alpha.data(),
                          beta.data(), nullptr, 1, nullptr, 1),
            "zggev");
    return alpha.cwiseQuotient(beta);
}

Eigen::VectorXd hermitianEigenvaluesByLapack(Eigen::MatrixXcd A)
{
    Eigen::VectorXd values(A.rows());
    require(LAPACKE_zheev(LAPACK_COL_MAJOR, 'N', 'L', size(A.rows()), A.data(), size(A.rows()),
                          values.data()),
            "zheev");
    return values;
}

Eigen::VectorXd symmetricEigenvaluesByLapack(Eigen::MatrixXd K, Eigen::MatrixXd M)
{
    const lapack_int n = size(K.rows());
    Eigen::VectorXd values(n);
    require(
        LAPACKE_dsygv(LAPACK_COL_MAJOR, 1, 'N', 'L', n, K.data(), n, M.data(), n, values.data()),
        "dsygv");
    return values;
}

Eigen::MatrixXd leastSquaresByLapack(Eigen::MatrixXd A, Eigen::MatrixXd b)
{
    const lapack_int rows = size(A.rows()), columns = size(A.cols());
    require(LAPACKE_dgels(LAPACK_COL_MAJOR, 'N', rows, columns, size(b.cols()), A.data(), rows,
                          b.data(), rows),
            "dgels");
    return b.topRows(columns);
}

}  // namespace stillbay::test
