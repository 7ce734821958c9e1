// SPDX-License-Identifier: MIT
#include "core/airframe/airframe.h"

#include "core/base/solve.h"

namespace stillbay {
namespace {

// blockdiag(R, R)
Matrix6d turned(const Matrix3d& R)
{
    Matrix6d T = Matrix6d::Zero();
    T.topLeftCorner<3, 3>() = R;
    T.bottomRightCorner<3, 3>() = R;
    return T;
}

Receptance rigidReceptance(const AirframeModel& airframe, double omega, double speed)
{
    const MassFigures body = rigidFigures(airframe);
    Matrix6cd D = (-omega * omega * massMatrix(body)).cast<Complex>();
    for (std::size_t motor = 0; motor < airframe.arms.size(); ++motor)
        addGyroscopicMoment(D, spinOf(motor) * rotorMomentum(airframe.tip, speed), omega);
    Receptance result;
    result.R = inverse(D);
    for (const ArmPlace& place : airframe.arms)
        result.motor.push_back(carry(place.p_OT() - body.centre).transpose().cast<Complex>());
    return result;
}

}  // namespace

Matrix3d ArmPlace::R_OA() const
{
    return Eigen::AngleAxisd(azimuth, Vector3d::UnitZ()).toRotationMatrix();
}

Vector3d ArmPlace::p_OR() const
{
    return R_OA() * Vector3d(rootRadius, 0, height);
}

Vector3d ArmPlace::p_OT() const
{
    return R_OA() * Vector3d(rootRadius + length, 0, height);
}

double spinOf(std::size_t motor)
{
    return motor % 2 == 0 ? 1.0 : -1.0;
}

Vector3d propellerPoint(const AirframeModel& airframe, const ArmPlace& place)
{
    return place.p_OT() + Vector3d(0, 0, airframe.tip.propeller.height);
}

MassFigures rigidFigures(const AirframeModel& airframe)
{
    const ArmMaterial& arm = airframe.arm;
    const double massPerLength = arm.density * sectionFigures(arm).area;
    std::vector<MassFigures> bodies{airframe.hub};
    for (const ArmPlace& place : airframe.arms) {
        bodies.push_back(boxFigures(massPerLength * place.length,
                                    0.5 * (place.p_OR() + place.p_OT()),
                                    {place.length, arm.width, arm.height}, place.R_OA()));
        bodies.push_back(tipBodyFigures(airframe.tip.motor, place.p_OT()));
        bodies.push_back(tipBodyFigures(airframe.tip.propeller, place.p_OT()));
    }
    return combine(bodies);
}

Vector3d referencePoint(const AirframeModel& airframe, bool flexible)
{
    return flexible ? airframe.hub.centre : rigidFigures(airframe).centre;
}

Receptance receptance(const AirframeModel& airframe, double omega, double speed, bool flexible)
{
    if (!flexible)
        return rigidReceptance(airframe, omega, speed);
    Receptance result;
    Matrix6cd D = (-omega * omega * massMatrix(airframe.hub)).cast<Complex>();
    CondensedArms both;
    double armLength = -1.0;
    for (std::size_t motor = 0; motor < airframe.arms.size(); ++motor) {
        const ArmPlace& place = airframe.arms[motor];
        if (place.length != armLength) {  // like arms in a row share one beam
            both = condensedArms(airframe.arm, place.length, airframe.tip, omega, speed);
            armLength = place.length;
        }
        const CondensedArm& arm = both.of(spinOf(motor));
        const Matrix6d T = turned(place.R_OA());
        const Matrix6d C = T.transpose() * carry(place.p_OR() - airframe.hub.centre);
        D += C.transpose().cast<Complex>() * arm.D * C.cast<Complex>();
        result.motor.push_back(C.transpose().cast<Complex>() * arm.F *
                               T.transpose().cast<Complex>());
    }
    result.R = inverse(D);
    return result;
}

}  // namespace stillbay
