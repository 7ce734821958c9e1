// SPDX-License-Identifier: MIT
#include "core/base/rotation.h"

#include <cmath>

namespace stillbay {
namespace {

// A(θ) = 1 − ½[θ]× + c [θ]×² with c = 1/θ² − (1 + cos θ)/(2 θ sin θ).
struct JacobianTerms {
    double c;       // [1]
    double cSlope;  // (dc/dθ)/θ
};

JacobianTerms jacobianTerms(double angle)
{
    const double t = angle * angle;
    if (angle < 0.3)  // the closed forms cancel; the next terms are below 1e-14
        return {1.0 / 12 + t * (1.0 / 720 + t * (1.0 / 30240 + t * (1.0 / 1209600 + t / 47900160))),
                1.0 / 360 + t * (1.0 / 7560 + t * (1.0 / 201600 + t * (1.0 / 5987520 +
                                                                       5.284190138687493e-9 * t)))};
    const double half = angle / 2;
    const double cotangent = std::cos(half) / std::sin(half);
    const double c = 1 / t - cotangent / (2 * angle);
    const double slope =
        -2 / (t * angle) + cotangent / (2 * t) + (1 + cotangent * cotangent) / (4 * angle);
    return {c, slope / angle};
}

}  // namespace

Matrix3d rotationFromVector(const Vector3d& theta)
{
    const double angle = theta.norm();
    const Matrix3d S = skew(theta);
    const double t = angle * angle;
    const double first = angle < 1e-3 ? 1 - t / 6 * (1 - t / 20) : std::sin(angle) / angle;
    const double half = std::sin(angle / 2);
    const double second = angle < 1e-3 ? 0.5 - t / 24 : 2 * half * half / t;
    return Matrix3d::Identity() + first * S + second * S * S;
}

Vector3d vectorFromRotation(const Matrix3d& R)
{
    Eigen::Quaterniond q(R);
    if (q.w() < 0)
        q.coeffs() *= -1;
    const double sine = q.vec().norm();
    const double scale = sine < 1e-9 ? 2 / q.w() : 2 * std::atan2(sine, q.w()) / sine;
    return scale * q.vec();
}

Matrix3d inverseLeftJacobian(const Vector3d& theta)
{
    const Matrix3d S = skew(theta);
    return Matrix3d::Identity() - 0.5 * S + jacobianTerms(theta.norm()).c * S * S;
}

Matrix3d logCurvature(const Vector3d& theta, const Vector3d& v)
{
    const auto [c, cSlope] = jacobianTerms(theta.norm());
    const Matrix3d A = inverseLeftJacobian(theta), S = skew(theta);
    // d/dt of A(θ) δ, with θ' = A δ, one term of A after the other.
    const Matrix3d H = 0.5 * A.transpose() * skew(v) +
                       cSlope * (A.transpose() * theta) * (S * S * v).transpose() -
                       c * A.transpose() * (skew(v) * S + skew(v.cross(theta)));
    return 0.5 * (H + H.transpose());
}

}  // namespace stillbay
