// SPDX-License-Identifier: MIT
#include "core/assess/assess.h"
#include "core/base/units.h"
#include "core/craft/craft.h"
#include "tests/airframe/element_arm.h"
#include "tests/assess/crafts.h"
#include "tests/lapack/lapack.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

namespace stillbay {
namespace {

using Craft = Setup;  // inside TEST the name Setup is taken
using Matrix12cd = Eigen::Matrix<Complex, 12, 12>;

// Condition of the twelve equations (translations beside rotations), times rounding and 1/η.
constexpr double kRounding = 1e-8;

// Two free rigid bodies, airframe first: K₁₂ = [PᵀK*P, −PᵀK*; −K*P, K*], M₁₂ = diag(M_f, M_b), the
// bay where it rests and turned as it rests.
struct TwelveEquations {
    Matrix12cd K, M;
    Matrix3d R_rest;
};

TwelveEquations twelveEquations(const MountedBay& mounted, const MassFigures& airframe)
{
    const Pose rest = restPose(mounted.suspension, 1).value();
    const Matrix6cd K = dynamicStiffness(mounted.suspension, rest, mounted.dynamicFactor);
    const MassFigures& bay = mounted.suspension.bay;
    const Matrix6cd P = carry(bay.centre + rest.shift - airframe.centre).cast<Complex>();
    TwelveEquations equations{Matrix12cd::Zero(), Matrix12cd::Zero(), rest.R};
    equations.K << P.transpose() * K * P, -P.transpose() * K, -K * P, K;
    equations.M.diagonal() << Vector3cd::Constant(airframe.mass), Vector3cd::Zero(),
        Vector3cd::Constant(bay.mass), Vector3cd::Zero();
    equations.M.block<3, 3>(3, 3) = airframe.inertia.cast<Complex>();
    equations.M.block<3, 3>(9, 9) = (rest.R * bay.inertia * rest.R.transpose()).cast<Complex>();
    return equations;
}

// The picture's up, left and optical axes in the bay's own.
Matrix3d picture(const Camera& camera)
{
    const double tilt = camera.tilt_down_deg * unit::deg;
    const Vector3d optical(std::cos(tilt), 0, -std::sin(tilt)), left = Vector3d::UnitY();
    Matrix3d axes;
    axes << optical.cross(left).transpose(), left.transpose(), optical.transpose();
    return axes;
}

// Wobble and frame shake per rad about them, docs/theory.md (13) to (15), by the library's Bessel
// functions.
struct Film {
    Vector3d wobble, shake;
};

Film film(const Camera& camera, double f_hz)
{
    const double W = camera.width_px, H = camera.height_px;
    const double focal_px = W / 2 / std::tan(camera.horizontal_fov_deg * unit::deg / 2);
    const double a = std::numbers::pi * f_hz * camera.readout_ms / 1e3,
                 e = std::numbers::pi * f_hz * camera.exposure_ms / 1e3;
    const double j0 = std::sph_bessel(0, a), j1 = std::sph_bessel(1, a), j2 = std::sph_bessel(2, a);
    const double shift = focal_px * std::sqrt(1 - j0 * j0 - 3 * j1 * j1);
    const double roll = std::sqrt(W * W / 12 * (1 - j0 * j0) +
                                  H * H / 4 * (1.0 / 3 - j1 * j1 - std::pow(j0 - 2 * j2, 2) / 3));
    const double blur = std::abs(std::sph_bessel(0, e)) / std::sqrt(2.0);
    return {blur * Vector3d(shift, shift, roll),
            blur * std::abs(j0) * Vector3d(focal_px, focal_px, std::sqrt((W * W + H * H) / 12))};
}

struct Wobble {
    double power = 0.0, worst = 0.0, shake = 0.0;
};

// What spins on one tip: propeller and half of the motor at its rim, times the speed.
double rotorMomentum(const Craft& craft, double speed_rpm)
{
    const double motor = craft.drive.motor.mass_g * unit::g,
                 radius = *craft.drive.motor.diameter_mm / 2 * unit::mm;
    return (*craft.drive.propeller.inertia_g_mm2 * unit::g_mm2 + motor / 2 * radius * radius) * 2 *
           std::numbers::pi * speed_rpm / 60;
}

double spin(std::size_t motor)
{
    return motor % 2 == 0 ? 1 : -1;
}

double frequencyOf(const ExcitedAirframe& excited, std::size_t order, const ThrottlePoint& point)
{
    return point.speed_rpm / 60 * (order == 0 ? 1.0 : static_cast<double>(order) * excited.blades);
}

// Force on a propeller.
Vector3cd loadOf(const ExcitedAirframe& excited, std::size_t order, std::size_t motor,
                 const ThrottlePoint& point)
{
    if (order > 0)
        return Vector3cd(0, 0, excited.bladePass[order - 1] * point.thrust_per_motor);
    const double omega = 2 * std::numbers::pi * frequencyOf(excited, order, point);
    return excited.unbalance[motor] * omega * omega * Vector3cd(1, Complex(0, -spin(motor)), 0);
}

// Everything that excites the craft at one speed, motor by motor and order by order. The rotors
// turn by turns: where their number is odd, one is left over that keeps the airframe from tilting.
Wobble wobbleAt(const Craft& craft, const ThrottlePoint& point)
{
    const ExcitedAirframe excited = makeExcitedAirframe(craft);
    const MountedBay mounted = makeMountedBay(craft).value();
    const MassFigures airframe = rigidFigures(excited.airframe);
    const TwelveEquations equations = twelveEquations(mounted, airframe);
    const Matrix3d image = picture(craft.camera) * equations.R_rest.transpose();
    Wobble sum;
    for (std::size_t order = 0; order <= excited.bladePass.size(); ++order) {
        const double f_hz = frequencyOf(excited, order, point);
        const double omega = 2 * std::numbers::pi * f_hz;
        const Film filmed = film(craft.camera, f_hz);
        Matrix12cd D = equations.K - omega * omega * equations.M;
        for (std::size_t motor = 0; motor < excited.airframe.arms.size(); ++motor) {
            const double H = spin(motor) * rotorMomentum(craft, point.speed_rpm);
            D(3, 4) += Complex(0, omega * H);
            D(4, 3) -= Complex(0, omega * H);
        }
        const auto motors = static_cast<Eigen::Index>(excited.airframe.arms.size());
        Eigen::MatrixXcd loads = Eigen::MatrixXcd::Zero(12, motors);
        for (std::size_t motor = 0; motor < excited.airframe.arms.size(); ++motor) {
            const Vector3cd force = loadOf(excited, order, motor, point);
            const Vector3d propeller(0, 0, *craft.drive.propeller.height_above_arm_mm * unit::mm);
            const Vector3d lever =
                excited.airframe.arms[motor].p_OT() + propeller - airframe.centre;
            loads.block<3, 1>(0, static_cast<Eigen::Index>(motor)) = force;
            loads.block<3, 1>(3, static_cast<Eigen::Index>(motor)) =
                skew(lever).cast<Complex>() * force;
        }
        const Eigen::MatrixXcd turns = test::solveByLapack(D, loads).bottomRows<3>();
        for (Eigen::Index motor = 0; motor < motors; ++motor) {
            const Vector3d turn = (image.cast<Complex>() * turns.col(motor)).cwiseAbs();
            const double px = filmed.wobble.cwiseProduct(turn).norm();
            sum.power += px * px;
            sum.shake += filmed.shake.cwiseProduct(turn).squaredNorm();
            sum.worst += px;
        }
    }
    return sum;
}

// Oracle: independent method, the two bodies' twelve equations solved directly for each motor and
// order, at the rested place of the bay, for crafts without symmetry.
TEST(WholeCraft, WobblesAsTwelveEquationsSay)
{
    for (const unsigned seed : {4U, 12U, 16U, 28U}) {
        Craft craft = test::skewCraft(seed);
        craft.camera.tilt_down_deg = 25;
        craft.camera.horizontal_fov_deg = 50;
        const auto answer = assess(craft, {.throttle = Grid{0.13, 1.0, 0.17},
                                           .frequency_hz = {1.0, 10.0, 5.0},
                                           .flexible_airframe = false});
        ASSERT_TRUE(answer) << english(answer.error().what);
        for (const ThrottlePoint& point : answer->throttle) {
            const Wobble expected = wobbleAt(craft, point);
            EXPECT_NEAR(point.wobble_px, std::sqrt(expected.power),
                        kRounding * std::sqrt(expected.power))
                << "craft " << seed << " at " << point.throttle;
            EXPECT_NEAR(point.wobble_worst_px, expected.worst, kRounding * expected.worst);
            EXPECT_NEAR(point.frame_shake_px, std::sqrt(expected.shake),
                        kRounding * std::sqrt(expected.shake));
        }
    }
}

// The same with arms of finite elements: hub, all nodes of all arms, bay. Each arm's own nodes are
// eliminated first, which leaves the hub's and the bay's twelve equations.
class FlexibleCraft {
public:
    FlexibleCraft(const Craft& craft, double omega, double speed_rpm)
        : m_excited(makeExcitedAirframe(craft)), m_mounted(makeMountedBay(craft).value())
    {
        const AirframeModel& airframe = m_excited.airframe;
        const std::size_t motors = airframe.arms.size();
        m_stiffness.topLeftCorner<6, 6>() =
            -omega * omega * massMatrix(airframe.hub).cast<Complex>();
        m_loads = Eigen::MatrixXcd::Zero(12, 3 * static_cast<Eigen::Index>(motors));
        for (std::size_t motor = 0; motor < motors; ++motor)
            addArm(motor, test::elementArm(airframe.arm, airframe.arms[motor].length, airframe.tip,
                                           spin(motor) * rotorMomentum(craft, speed_rpm), omega,
                                           kElements));
        addBay(omega);
        m_turns = test::solveByLapack(m_stiffness, m_loads).bottomRows<3>();
    }

    // The bay's rotation by a force on a propeller, airframe axes.
    Vector3cd turn(std::size_t motor, const Vector3cd& force) const
    {
        return m_turns.middleCols<3>(3 * static_cast<Eigen::Index>(motor)) * force;
    }

    const ExcitedAirframe& excited() const { return m_excited; }
    const Matrix3d& R_rest() const { return m_rest.R; }

private:
    static constexpr int kElements = 16;

    // The root's six motions come first, the tip's six last.
    void addArm(std::size_t motor, const Eigen::MatrixXcd& arm)
    {
        const AirframeModel& airframe = m_excited.airframe;
        const ArmPlace& place = airframe.arms[motor];
        const Matrix3cd R_AO = place.R_OA().transpose().cast<Complex>();
        Matrix6cd turned = Matrix6cd::Zero();
        turned.topLeftCorner<3, 3>() = turned.bottomRightCorner<3, 3>() = R_AO;
        const Matrix6cd C = turned * carry(place.p_OR() - airframe.hub.centre).cast<Complex>();
        const Eigen::Index inner = arm.rows() - 6;

        Eigen::MatrixXcd right = Eigen::MatrixXcd::Zero(inner, 9);  // six of the root, three loads
        right.leftCols<6>() = arm.bottomLeftCorner(inner, 6) * C;
        auto load = right.bottomRightCorner<6, 3>();
        const double height = airframe.tip.propeller.height;
        load.topRows<3>() = R_AO;
        load.row(3) = -height * R_AO.row(1);
        load.row(4) = height * R_AO.row(0);
        const Eigen::MatrixXcd onRoot =
            C.transpose() * arm.topRightCorner(6, inner) *
            test::solveByLapack(arm.bottomRightCorner(inner, inner), right);
        m_stiffness.topLeftCorner<6, 6>() +=
            C.transpose() * arm.topLeftCorner<6, 6>() * C - onRoot.leftCols<6>();
        m_loads.block<6, 3>(0, 3 * static_cast<Eigen::Index>(motor)) = -onRoot.rightCols<3>();
    }

    void addBay(double omega)
    {
        m_rest = restPose(m_mounted.suspension, 1).value();
        const Matrix6cd K = dynamicStiffness(m_mounted.suspension, m_rest, m_mounted.dynamicFactor);
        const MassFigures& bay = m_mounted.suspension.bay;
        const Vector3d p_FB = bay.centre + m_rest.shift - m_excited.airframe.hub.centre;
        const Matrix6cd P = carry(p_FB).cast<Complex>();
        m_stiffness.topLeftCorner<6, 6>() += P.transpose() * K * P;
        m_stiffness.topRightCorner<6, 6>() -= P.transpose() * K;
        m_stiffness.bottomLeftCorner<6, 6>() -= K * P;
        m_stiffness.bottomRightCorner<6, 6>() +=
            K - omega * omega * massMatrix(bay, m_rest.R).cast<Complex>();
    }

    ExcitedAirframe m_excited;
    MountedBay m_mounted;
    Pose m_rest;
    Matrix12cd m_stiffness = Matrix12cd::Zero();
    Eigen::MatrixXcd m_loads;                           // by unit forces x, y, z on each propeller
    Eigen::Matrix<Complex, 3, Eigen::Dynamic> m_turns;  // the bay's, by the same
};

// Oracle: independent method, hub, finite elements of the arms, bodies and spin of the tips, and
// bay as one system, solved for each motor and order, for crafts without symmetry, with rigid and
// soft roots, odd and even numbers of arms. Elements in torsion miss by (ωh/c)²/12, up to 1e-4 of
// what they carry, and an arm's resonance of loss η magnifies that by 1/η.
TEST(WholeCraft, WobblesWithArmsOfFiniteElements)
{
    constexpr double kElementsMiss = 1e-3;
    int odd = 0;
    for (const unsigned seed : {4U, 12U, 16U, 28U}) {
        Craft craft = test::skewCraft(seed);
        craft.camera.tilt_down_deg = 25;
        odd += static_cast<int>(craft.airframe.arms.size() % 2);
        const Assessment answer = assess(craft, {.throttle = Grid{0.15, 1.0, 0.17}}).value();
        for (const ThrottlePoint& point : answer.throttle)
            for (std::size_t order = 0; order < point.orders.size(); ++order) {
                const double f_hz = point.orders[order].frequency_hz;
                const FlexibleCraft flexible(craft, 2 * std::numbers::pi * f_hz, point.speed_rpm);
                const Matrix3d toPicture = picture(craft.camera) * flexible.R_rest().transpose();
                for (std::size_t motor = 0; motor < craft.airframe.arms.size(); ++motor) {
                    const Vector3cd force = loadOf(flexible.excited(), order, motor, point);
                    const Vector3cd want = toPicture * flexible.turn(motor, force);
                    const Vector3cd have = point.orders[order].rotations[motor];
                    EXPECT_LE((have - want).norm(), kElementsMiss * want.norm())
                        << "craft " << seed << " at " << point.throttle << ", order " << order;
                }
            }
    }
    EXPECT_GT(odd, 0);
}

// Real parts of ω² of the pencil, rising.
std::vector<double> squares(const Eigen::MatrixXcd& K, const Eigen::MatrixXcd& M)
{
    std::vector<double> result;
    for (const Complex square : test::eigenvaluesByLapack(K, M))
        result.push_back(square.real());
    std::sort(result.begin(), result.end());
    return result;
}

// Oracle: independent method, eigenvalues of the twelve equations: in flight six rigid-body zeros
// and six modes; on the bench those of the bay's own six.
TEST(WholeCraft, SwingsAsTwelveEquationsSay)
{
    for (const unsigned seed : {4U, 12U, 16U, 28U}) {
        const Craft craft = test::skewCraft(seed);
        const auto answer = assess(craft, {.throttle = Grid{0.1, 1.0, 0.9},
                                           .frequency_hz = {1.0, 10.0, 5.0},
                                           .flexible_airframe = false});
        ASSERT_TRUE(answer) << english(answer.error().what);
        const TwelveEquations equations = twelveEquations(
            makeMountedBay(craft).value(), rigidFigures(makeExcitedAirframe(craft).airframe));
        const std::vector<double> flight = squares(equations.K, equations.M);
        const std::vector<double> bench =
            squares(equations.K.bottomRightCorner<6, 6>(), equations.M.bottomRightCorner<6, 6>());
        const auto hertz = [](double square) {
            return std::sqrt(square) / (2 * std::numbers::pi);
        };
        for (std::size_t k = 0; k < 6; ++k) {
            EXPECT_NEAR(flight[k], 0, kRounding * flight[11]);
            EXPECT_NEAR(answer->bench[k].frequency_hz, hertz(bench[k]),
                        kRounding * hertz(bench[5]));
            EXPECT_NEAR(answer->flight[k].frequency_hz, hertz(flight[k + 6]),
                        kRounding * hertz(flight[11]));
        }
    }
}

}  // namespace
}  // namespace stillbay
