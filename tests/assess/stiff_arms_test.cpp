// SPDX-License-Identifier: MIT
#include "core/base/grid.h"
#include "core/base/solve.h"
#include "core/craft/craft.h"
#include "core/response/excitation.h"
#include "core/response/wobble.h"
#include "tests/assess/crafts.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

using Craft = Setup;  // inside TEST the name Setup is taken

constexpr double kStiffer = 1e6;  // times; arms then bend from some 50 kHz on

// (200 Hz/50 kHz)² of bending left over, in each of the tip's six motions, and rounding of
// stiffness against mass forces.
constexpr double kStillBends = 1e-4;

ExcitedAirframe stiffened(ExcitedAirframe craft)
{
    craft.airframe.arm.youngsModulus *= kStiffer;
    craft.airframe.arm.shearModulus *= kStiffer;
    if (craft.airframe.arm.rootStiffness)
        *craft.airframe.arm.rootStiffness *= kStiffer;
    return craft;
}

// Inertia that an arm has as a box of its outer size but not as a line of mass: m h²/12 and m w²/12
// about its own axes across; along it m(w² + h²)/12 against ρL(I_y + I_z), the same when solid.
Matrix3d boxNotRod(const AirframeModel& airframe)
{
    const ArmMaterial& arm = airframe.arm;
    const ArmSectionFigures section = sectionFigures(arm);
    Matrix3d sum = Matrix3d::Zero();
    for (const ArmPlace& place : airframe.arms) {
        const double mass = arm.density * section.area * place.length;
        const double w = arm.width * arm.width, h = arm.height * arm.height;
        const double along =
            mass * (w + h) / 12 -
            arm.density * place.length * (section.momentVertical + section.momentHorizontal);
        const Matrix3d own = Vector3d(along, mass * h / 12, mass * w / 12).asDiagonal();
        sum += place.R_OA() * own * place.R_OA().transpose();
    }
    return sum;
}

// The same airframe with its arms' mass on their lines, carried by the hub's inertia.
ExcitedAirframe withLineArms(ExcitedAirframe craft)
{
    craft.airframe.hub.inertia -= boxNotRod(craft.airframe);
    return craft;
}

std::vector<Craft> crafts()
{
    std::vector<Craft> result{test::sampleCraft("reedbed"), test::twoPlaneCraft()};
    for (const unsigned seed : {2U, 7U, 16U})
        result.push_back(test::skewCraft(seed));
    result.back().airframe.arm.wall_mm = 1.3;  // one craft with hollow arms
    return result;
}

// Gyroscopic stiffness per iω of all rotors on one body: they turn by turns, so that of an odd
// number one is left over. H = (I_p + ½ m r²) 2πn, dL/dt = H (θ̇_y, −θ̇_x, 0).
Matrix6d gyroscopic(const Craft& craft, double speed)
{
    const Drive& drive = craft.drive;
    const MotorFigures motor = motorFigures(drive.motor);
    const double bell = drive.motor.mass_g * 1e-3 / 8 * motor.diameter * motor.diameter;
    const double H = 2 * std::numbers::pi * speed *
                     (propellerFigures(drive.propeller).inertia + bell) *
                     static_cast<double>(craft.airframe.arms.size() % 2);
    Matrix6d G = Matrix6d::Zero();
    G(3, 4) = H;
    G(4, 3) = -H;
    return G;
}

// Oracle: limit. Arms a million times stiffer answer like one rigid body of hub, rods, motors and
// what is left over of their spin, carried to the hub's centre of mass; a force on a tip reaches
// the hub by its lever alone.
TEST(StiffArms, AnswerLikeARigidAirframe)
{
    for (const Craft& craft : crafts()) {
        const ExcitedAirframe stiff = stiffened(makeExcitedAirframe(craft));
        const AirframeModel rigid = withLineArms(stiff).airframe;
        const MassFigures body = rigidFigures(rigid);
        const Vector3d hub = stiff.airframe.hub.centre;
        const Matrix6d P = carry(hub - body.centre);
        for (const double f_hz : {12.0, 55.0, 180.0}) {
            const double omega = 2 * std::numbers::pi * f_hz, speed = f_hz / 2;
            const Receptance have = receptance(stiff.airframe, omega, speed, true);
            const Matrix6cd D = -omega * omega * massMatrix(body).cast<Complex>() +
                                Complex(0, omega) * gyroscopic(craft, speed).cast<Complex>();
            const Matrix6cd R = P.cast<Complex>() * inverse(D) * P.transpose().cast<Complex>();
            Vector6d scale = Vector6d::Ones();
            scale.tail<3>().setConstant(0.1);  // rotations at 0.1 m
            const Matrix6cd want = scale.asDiagonal() * R * scale.asDiagonal();
            const Matrix6cd got = scale.asDiagonal() * have.R * scale.asDiagonal();
            EXPECT_LE((got - want).norm(), kStillBends * want.norm());
            for (std::size_t i = 0; i < have.motor.size(); ++i) {
                const Matrix6d lever = carry(rigid.arms[i].p_OT() - hub).transpose();
                const Matrix6cd miss = have.motor[i] - lever.cast<Complex>();
                // Wrenches with moments over 0.1 m.
                EXPECT_LE((scale.cwiseInverse().asDiagonal() * miss * scale.asDiagonal()).norm(),
                          kStillBends * lever.norm());
            }
        }
    }
}

std::vector<ThrottlePoint> wobble(const ExcitedAirframe& craft, const MountedBay& mounted,
                                  const Camera& camera, bool flexible)
{
    const Pose rest = restPose(mounted.suspension, 1).value();
    const Matrix6cd K = dynamicStiffness(mounted.suspension, rest, mounted.dynamicFactor);
    return wobbleOverThrottle(prepareExcitation(craft, Grid{0.1, 1, 0.03}.values(), flexible),
                              mounted.suspension, rest, K, makeCamera(camera))
        .value();
}

// Oracle: limit, through the bay to the picture. Against the rigid airframe of rods the bending
// left over; against the rigid airframe of boxes also their share of the inertia. Both grow by what
// a resonance of loss η magnifies, 2/η.
TEST(StiffArms, MoveThePictureLikeARigidAirframe)
{
    for (const Craft& craft : crafts()) {
        const MountedBay mounted = makeMountedBay(craft).value();
        const ExcitedAirframe soft = makeExcitedAirframe(craft), stiff = stiffened(soft);
        const auto flexible = wobble(stiff, mounted, craft.camera, true);
        const auto rods = wobble(withLineArms(stiff), mounted, craft.camera, false);
        const auto boxes = wobble(soft, mounted, craft.camera, false);
        const double magnified = 2 / craft.tube.loss_factor;
        const Matrix3d J = rigidFigures(soft.airframe).inertia;
        const double share = (J.inverse() * boxNotRod(soft.airframe)).norm();
        ASSERT_LT(share, 1e-3);
        double peak = 0;
        for (const ThrottlePoint& point : boxes)
            peak = std::max(peak, point.wobble_px);
        for (std::size_t i = 0; i < boxes.size(); ++i) {
            EXPECT_NEAR(flexible[i].wobble_px, rods[i].wobble_px,
                        magnified * kStillBends * rods[i].wobble_px)
                << craft.name << " at " << rods[i].throttle;
            EXPECT_NEAR(flexible[i].wobble_px, boxes[i].wobble_px,
                        magnified * (kStillBends + share) * boxes[i].wobble_px)
                << craft.name << " at " << boxes[i].throttle;
        }
        EXPECT_GT(peak, 0);
    }
}

}  // namespace
}  // namespace stillbay
