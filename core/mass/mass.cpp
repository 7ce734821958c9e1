// SPDX-License-Identifier: MIT
#include "core/mass/mass.h"

#include "core/base/check.h"

namespace stillbay {
namespace {

// Inertia of a point mass at p.
Matrix3d pointInertia(double mass, const Vector3d& p)
{
    return mass * (p.squaredNorm() * Matrix3d::Identity() - p * p.transpose());
}

}  // namespace

MassFigures boxFigures(double mass, const Vector3d& centre, const Vector3d& size,
                       const Matrix3d& R_EB)
{
    const Vector3d squares = size.cwiseAbs2();
    const Vector3d principal = mass / 12 * (Vector3d::Constant(squares.sum()) - squares);
    return {mass, centre, R_EB * principal.asDiagonal() * R_EB.transpose()};
}

MassFigures pointFigures(double mass, const Vector3d& centre)
{
    return {mass, centre, Matrix3d::Zero()};
}

MassFigures combine(std::span<const MassFigures> bodies)
{
    MassFigures total;
    for (const MassFigures& body : bodies) {
        total.mass += body.mass;
        total.centre += body.mass * body.centre;
    }
    check(total.mass > 0, "combine: no mass");
    total.centre /= total.mass;
    for (const MassFigures& body : bodies)
        total.inertia += body.inertia + pointInertia(body.mass, body.centre - total.centre);
    return total;
}

Matrix6d massMatrix(const MassFigures& body, const Matrix3d& R)
{
    Matrix6d M = Matrix6d::Zero();
    M.topLeftCorner<3, 3>() = body.mass * Matrix3d::Identity();
    M.bottomRightCorner<3, 3>() = R * body.inertia * R.transpose();
    return M;
}

}  // namespace stillbay
