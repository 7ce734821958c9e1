// SPDX-License-Identifier: MIT
#include "core/base/solve.h"
#include "core/base/units.h"
#include "core/craft/craft.h"
#include "core/suspension/coupled.h"
#include "core/suspension/modes.h"
#include "tests/assess/crafts.h"
#include "tests/assess/two_bodies.h"
#include "tests/lapack/lapack.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

using Craft = Setup;  // inside TEST the name Setup is taken

// Amplitude (a few µm on tubes of 2 cm), drift, and what both let ring free.
constexpr double kNotQuiteSmall = 1e-4;

// Steady tube pull and weight keep or change their direction as the airframe tilts, which small
// vibration about rest leaves out: a displacement of g/ω² a radian, that is g/(ω² r) of a motion
// that turns about r = 3 cm, the shortest lever of a tube, magnified as the nearest mode f_n
// magnifies. The project promises 1 %.
constexpr double kLever = 0.03;

double leftOut(double omega, double modeOverExcitation)
{
    const double magnified = 1 / std::abs(1 - modeOverExcitation * modeOverExcitation);
    return std::min(0.01, kGravity / (omega * omega * kLever) * std::max(1.0, magnified));
}

constexpr double kFromResonance = 0.1;

constexpr int kPeriods = 6;
constexpr int kSamples = 16;  // per period

// One motor's unbalance force, turning in the airframe's own axes.
struct CameraVibration {
    std::size_t motor = 0;
    double f_hz = 0.0;
    double unbalance_g_mm = 1.0;

    double omega() const { return 2 * std::numbers::pi * f_hz; }
    double size() const { return unbalance_g_mm * unit::g_mm * omega() * omega(); }
    double spin() const { return motor % 2 == 0 ? 1 : -1; }
    Vector3d force(double t) const
    {
        return size() * Vector3d(std::cos(omega() * t), spin() * std::sin(omega() * t), 0);
    }
    Vector3cd amplitude() const { return size() * Vector3cd(1, Complex(0, -spin()), 0); }
};

test::DrawnBay drawnBay(const Craft& craft, const Suspension& suspension)
{
    const double E = craft.tube.youngs_modulus_mpa
                         ? *craft.tube.youngs_modulus_mpa * unit::mpa
                         : youngsModulusFromShoreA(craft.tube.hardness_shore_a);
    return {{.section = {craft.tube.outer_diameter_mm * unit::mm, craft.tube.bore_mm * unit::mm},
             .shearModulus = E / 3,
             .density = craft.tube.density_kg_m3,
             .freeLength = craft.mounts.free_length_mm * unit::mm,
             .clamped = craft.mounts.ends == Ends::Clamped},
            suspension.bay,
            suspension.attachments};
}

// Angular momentum of all rotors: propeller and half of the motor at its rim, turning by turns one
// way and the other.
double momentumOfAllRotors(const Craft& craft, double speed)
{
    const Drive& drive = craft.drive;
    const double radius = motorFigures(drive.motor).diameter / 2;
    const double bell = drive.motor.mass_g * unit::g / 2 * radius * radius;
    const double each =
        (propellerFigures(drive.propeller).inertia + bell) * 2 * std::numbers::pi * speed;
    return craft.airframe.arms.size() % 2 == 0 ? 0.0 : each;
}

// The steady motion as the frequency domain has it, without loss: both bodies' complex amplitudes.
struct Predicted {
    Vector6cd airframe, bay;
    double nearestMode_hz = 0.0;
};

Predicted predict(const AirframeModel& model, const Suspension& suspension, const Pose& rest,
                  const CameraVibration& vibration)
{
    const MassFigures body = rigidFigures(model);
    const Matrix6cd K = dynamicStiffness(suspension, rest, 1.0);
    const Matrix6d M_b = massMatrix(suspension.bay, rest.R);
    const Vector3d p_FB = suspension.bay.centre + rest.shift - body.centre;
    const Matrix6cd P = carry(p_FB).cast<Complex>();
    const Receptance free = receptance(model, vibration.omega(), vibration.f_hz, false);

    Vector6cd tip;
    tip << vibration.amplitude(),
        skew(Vector3d(0, 0, model.tip.propeller.height)).cast<Complex>() * vibration.amplitude();
    const Vector6cd F = free.motor[vibration.motor] * tip;
    const AirframeAt at{vibration.omega(), free.R, {free.R * F}};
    const CoupledBay coupled(K, suspension.bay.mass, M_b.bottomRightCorner<3, 3>(), p_FB);
    const Vector3cd rotation = coupled.rotations({&at})[0][0];

    // The whole motion from the same equation; the core gives its rotations only.
    const Matrix6cd M_inverse = inverse(M_b).cast<Complex>();
    const double square = vibration.omega() * vibration.omega();
    const Matrix6cd A =
        Matrix6cd::Identity() + (P * free.R * P.transpose() - M_inverse / square) * K;
    const Vector6cd delta = test::solveByLapack(A, -P * (free.R * F));
    Predicted predicted;
    predicted.bay = M_inverse * K * delta / square;
    predicted.airframe = free.R * (F + P.transpose() * K * delta);
    EXPECT_LE((predicted.bay.tail<3>() - rotation).norm(), 1e-9 * rotation.norm());
    predicted.bay.tail<3>() = rotation;

    const Modes flight = solveModes(K, inverseReducedMass(M_b, massMatrix(body), p_FB)).value();
    double distance = 1e9;
    for (const Complex omegaSquare : flight.omegaSquare)
        if (std::abs(frequency_hz(omegaSquare) - vibration.f_hz) < distance) {
            distance = std::abs(frequency_hz(omegaSquare) - vibration.f_hz);
            predicted.nearestMode_hz = frequency_hz(omegaSquare);
        }
    return predicted;
}

test::BodyState onSteadyMotion(const Vector6cd& X, double omega)
{
    const Vector6d x = X.real(), v = (Complex(0, omega) * X).real();
    const Vector3d turn = x.tail<3>();
    return {x.head<3>(), Eigen::Quaterniond(Eigen::AngleAxisd(turn.norm(), turn.normalized())),
            v.head<3>(), v.tail<3>()};
}

Vector6d motionOfBody(const test::BodyState& body)
{
    const Eigen::AngleAxisd turn(body.turn);
    Vector6d motion;
    motion << body.shift, turn.angle() * turn.axis();
    return motion;
}

// The airframe's predicted motion without weight.
Vector6cd airframeOf(const Craft& craft, const CameraVibration& vibration)
{
    const Suspension suspension = makeMountedBay(craft).value().suspension;
    return predict(makeExcitedAirframe(craft).airframe, suspension, restPose(suspension, 0).value(),
                   vibration)
        .airframe;
}

void expectSameFlight(const Craft& craft, const CameraVibration& vibration, double load = 1)
{
    SCOPED_TRACE(craft.name + ", motor " + std::to_string(vibration.motor) + " at " +
                 std::to_string(vibration.f_hz) + " Hz");
    const AirframeModel model = makeExcitedAirframe(craft).airframe;
    const Suspension suspension = makeMountedBay(craft).value().suspension;
    const Pose rest = restPose(suspension, load).value();
    const Predicted predicted = predict(model, suspension, rest, vibration);
    ASSERT_GT(std::abs(vibration.f_hz / predicted.nearestMode_hz - 1), kFromResonance)
        << "resonance at " << predicted.nearestMode_hz << " Hz";

    const test::TwoBodies bodies{drawnBay(craft, suspension),
                                 rest,
                                 rigidFigures(model),
                                 load * kGravity,
                                 momentumOfAllRotors(craft, vibration.f_hz),
                                 propellerPoint(model, model.arms[vibration.motor]),
                                 [&](double t) {
                                     return vibration.force(t);
                                 }};
    const auto flight = test::flyInTime(bodies,
                                        {onSteadyMotion(predicted.airframe, vibration.omega()),
                                         onSteadyMotion(predicted.bay, vibration.omega())},
                                        vibration.omega(), kPeriods, kSamples);
    Eigen::Matrix<double, 6, Eigen::Dynamic> bay(6, static_cast<Eigen::Index>(flight.size()));
    Eigen::Matrix<double, 6, Eigen::Dynamic> airframe = bay;
    for (std::size_t k = 0; k < flight.size(); ++k) {
        bay.col(static_cast<Eigen::Index>(k)) = motionOfBody(flight[k].bay);
        airframe.col(static_cast<Eigen::Index>(k)) = motionOfBody(flight[k].airframe);
    }

    // Complex difference over complex size: amplitude and phase at once. A body whose turn and
    // shift all but cancel at its centre of mass moves less there than its turn says.
    const double left =
        load * leftOut(vibration.omega(), predicted.nearestMode_hz / vibration.f_hz);
    const double swung =
        kLever * std::max(predicted.bay.tail<3>().norm(), predicted.airframe.tail<3>().norm());
    const auto compare = [&](const Vector3cd& have, const Vector3cd& want, const char* what,
                             double least = 0) {
        const double tolerance = kNotQuiteSmall * want.norm() + left * std::max(want.norm(), least);
        EXPECT_LE((have - want).norm(), tolerance) << what;
    };
    const Vector6cd X_b = test::fundamental(bay, kSamples);
    const Vector6cd X_f = test::fundamental(airframe, kSamples);
    compare(X_b.tail<3>(), predicted.bay.tail<3>(), "bay rotation");
    compare(X_b.head<3>(), predicted.bay.head<3>(), "bay displacement", swung);
    compare(X_f.tail<3>(), predicted.airframe.tail<3>(), "airframe rotation");
    compare(X_f.head<3>(), predicted.airframe.head<3>(), "airframe displacement", swung);
}

// Oracle: independent method, full nonlinear time integration of both bodies with finite rotations
// (two_bodies.cpp), started on the predicted steady motion of a small unbalance, no loss, away from
// resonance.
TEST(FlightInTime, FollowsTheFrequencyDomain)
{
    const Craft reedbed = test::steepReedbed();
    for (const CameraVibration& vibration :
         {CameraVibration{0, 46}, CameraVibration{1, 72}, CameraVibration{2, 105}})
        expectSameFlight(reedbed, vibration);
}

// Oracle: as above, for crafts without symmetry that rest tilted, one clamped, two hinged.
TEST(FlightInTime, FollowsTheFrequencyDomainOfSkewCrafts)
{
    const Craft clamped = test::skewCraft(12), hinged = test::skewCraft(16);
    ASSERT_EQ(clamped.mounts.ends, Ends::Clamped);
    ASSERT_EQ(hinged.mounts.ends, Ends::Hinged);
    for (const CameraVibration& vibration : {CameraVibration{1, 60}, CameraVibration{2, 110}})
        expectSameFlight(clamped, vibration);
    for (const CameraVibration& vibration : {CameraVibration{0, 55}, CameraVibration{2, 110}})
        expectSameFlight(hinged, vibration);
    expectSameFlight(test::skewCraft(28), {1, 90});
}

// Oracle: as above without weight, where small vibration leaves nothing out: below, between and
// above the modes.
TEST(FlightInTime, FollowsTheFrequencyDomainAtAnyFrequencyWithoutWeight)
{
    constexpr double kWeightless = 0;
    const Craft reedbed = test::steepReedbed(), skew = test::skewCraft(12);
    for (const CameraVibration& vibration :
         {CameraVibration{0, 8}, CameraVibration{3, 25}, CameraVibration{1, 90}})
        expectSameFlight(reedbed, vibration, kWeightless);
    for (const CameraVibration& vibration :
         {CameraVibration{1, 9}, CameraVibration{0, 21}, CameraVibration{2, 100}})
        expectSameFlight(skew, vibration, kWeightless);
}

// Oracle: as above, with rotors so heavy that what is left over of an odd number of spins turns the
// airframe's answer by tens of percent: it is felt, and with its sign.
TEST(FlightInTime, FollowsTheFrequencyDomainWithHeavyRotors)
{
    constexpr double kWeightless = 0;
    Craft craft = test::skewCraft(12);
    craft.airframe.arms.resize(3);
    craft.drive.propeller.inertia_g_mm2 = 3e6;
    Craft light = craft;
    light.drive.propeller.inertia_g_mm2 = 1;
    for (const CameraVibration& vibration :
         {CameraVibration{0, 9}, CameraVibration{1, 60}, CameraVibration{2, 110}}) {
        expectSameFlight(craft, vibration, kWeightless);
        const Vector6cd heavy = airframeOf(craft, vibration), felt = airframeOf(light, vibration);
        EXPECT_GT((heavy - felt).tail<3>().norm(), 0.1 * felt.tail<3>().norm());
    }
}

}  // namespace
}  // namespace stillbay
