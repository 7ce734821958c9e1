// SPDX-License-Identifier: MIT
#pragma once

#include <Eigen/Core>
#include <Eigen/Geometry>
#include <Eigen/LU>

#include <complex>

/// Six-vectors are [x y z rx ry rz]: translation first.
namespace stillbay {

using Complex = std::complex<double>;
using Vector3d = Eigen::Vector3d;
using Matrix3d = Eigen::Matrix3d;
using Vector3cd = Eigen::Vector3cd;
using Matrix3cd = Eigen::Matrix3cd;
using Vector6d = Eigen::Matrix<double, 6, 1>;
using Matrix6d = Eigen::Matrix<double, 6, 6>;
using Vector6cd = Eigen::Matrix<Complex, 6, 1>;
using Matrix6cd = Eigen::Matrix<Complex, 6, 6>;

/// [v]×, so that skew(v) w = v × w.
inline Matrix3d skew(const Vector3d& v)
{
    Matrix3d S;
    S << 0.0, -v.z(), v.y(), v.z(), 0.0, -v.x(), -v.y(), v.x(), 0.0;
    return S;
}

/// Carries a rigid motion of point P to point Q of the same body, p_PQ = p: x_Q = carry(p) x_P.
/// Its transpose carries a wrench at Q to the equal wrench at P.
inline Matrix6d carry(const Vector3d& p)
{
    Matrix6d C = Matrix6d::Identity();
    C.topRightCorner<3, 3>() = -skew(p);
    return C;
}

}  // namespace stillbay
