// SPDX-License-Identifier: MIT
#include "core/airframe/tip.h"

#include <numbers>

namespace stillbay {

MassFigures tipBodyFigures(const TipBody& body, const Vector3d& p_OT)
{
    return {body.mass, p_OT + Vector3d(0, 0, body.height),
            Vector3d(body.level, body.level, body.upright).asDiagonal()};
}

Matrix6d tipMassMatrix(const Tip& tip)
{
    Matrix6d M = Matrix6d::Zero();
    for (const TipBody* body : {&tip.motor, &tip.propeller}) {
        const MassFigures figures = tipBodyFigures(*body, Vector3d::Zero());
        const Matrix6d toCentre = carry(figures.centre);
        M += toCentre.transpose() * massMatrix(figures) * toCentre;
    }
    return M;
}

double rotorMomentum(const Tip& tip, double speed)
{
    return 2 * std::numbers::pi * speed * tip.rotorInertia;
}

void addGyroscopicMoment(Matrix6cd& D, double momentum, double omega)
{
    D(3, 4) += Complex(0, omega * momentum);
    D(4, 3) -= Complex(0, omega * momentum);
}

}  // namespace stillbay
