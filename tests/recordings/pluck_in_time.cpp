// SPDX-License-Identifier: MIT
#include "tests/recordings/pluck_in_time.h"

#include "core/base/rotation.h"
#include "core/base/units.h"
#include "core/craft/craft.h"
#include "tests/lapack/lapack.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>
#include <stdexcept>

namespace stillbay::test {
namespace {

constexpr double kFinestPhase = 0.15;  // [rad] of the fastest mode in one step: Runge-Kutta's error
                                       // of its phase is 1e-6 of that, of its amplitude less

/// Numbers that look random and are the same on every machine.
class Scatter {
public:
    explicit Scatter(std::uint64_t seed) : m_bits(seed) {}
    double normal()
    {
        const double radius = std::sqrt(-2 * std::log(even()));
        return radius * std::cos(2 * std::numbers::pi * even());
    }

private:
    double even() { return (static_cast<double>(m_bits() >> 11) + 0.5) * 0x1p-53; }
    std::mt19937_64 m_bits;
};

struct ModesOfBay {
    Vector6cd omega;  // [rad/s], decaying: e^{iωt}
    Matrix6cd shapes;
};

// Frequencies by LAPACK's general complex eigenvalues, shapes by inverse iteration with its LU.
ModesOfBay modesOf(const Suspension& suspension, const Pose& rest, Complex g)
{
    const Eigen::MatrixXcd K = dynamicStiffness(suspension, rest, g);
    const Eigen::MatrixXcd M = massMatrix(suspension.bay, rest.R).cast<Complex>();
    const Eigen::VectorXcd values = eigenvaluesByLapack(K, M);
    std::array<Complex, 6> squares;
    std::copy(values.begin(), values.end(), squares.begin());
    std::sort(squares.begin(), squares.end(),
              [](Complex a, Complex b) { return a.real() < b.real(); });
    ModesOfBay modes;
    for (int k = 0; k < 6; ++k) {
        const Complex square = squares[static_cast<std::size_t>(k)];
        modes.omega[k] = std::sqrt(square);
        const Eigen::MatrixXcd near = K - square * (1.0 + 1e-11) * M;
        Eigen::MatrixXcd shape = Eigen::VectorXcd::LinSpaced(6, Complex(0.3, 0.1), Complex(1, -1));
        for (int again = 0; again < 3; ++again) {
            shape = solveByLapack(near, M * shape);
            shape /= shape.norm();
        }
        modes.shapes.col(k) = shape;
    }
    return modes;
}

/// Rest, and what the rubber adds to its static forces about it.
struct BayInTime {
    Suspension suspension;
    Pose rest;
    ModesOfBay modes;
    Matrix6d stiffness, damping;  // [N/m …], [N·s/m …]
};

BayInTime bayInTime(const PluckedBay& plucked)
{
    const Setup craft = withSensor(plucked.craft, plucked.sensor);
    BayInTime bay;
    bay.suspension = makeMountedBay(craft).value().suspension;
    bay.rest = restPose(bay.suspension, 1.0).value();
    const double ratio = craft.tube.dynamic_ratio, loss = craft.tube.loss_factor;
    bay.modes = modesOf(bay.suspension, bay.rest, ratio * Complex(1, loss));

    // [K C] [Φ; ΦΛ] = −M Φ Λ² over the six modes and their conjugates, Λ = diag iω.
    const Matrix6d M = massMatrix(bay.suspension.bay, bay.rest.R);
    Eigen::MatrixXcd Phi(6, 12), PhiLambda(6, 12), PhiLambda2(6, 12);
    for (int k = 0; k < 6; ++k) {
        const Complex lambda = Complex(0, 1) * bay.modes.omega[k];
        Phi.col(k) = bay.modes.shapes.col(k);
        PhiLambda.col(k) = lambda * Phi.col(k);
        PhiLambda2.col(k) = lambda * lambda * Phi.col(k);
    }
    for (Eigen::MatrixXcd* of : {&Phi, &PhiLambda, &PhiLambda2})
        of->rightCols(6) = of->leftCols(6).conjugate().eval();
    Eigen::MatrixXcd both(12, 12);
    both << Phi, PhiLambda;
    const Eigen::MatrixXcd left = -M.cast<Complex>() * PhiLambda2;
    const Eigen::MatrixXcd matrices = solveByLapack(both.transpose(), left.transpose()).transpose();
    bay.stiffness = matrices.leftCols(6).real() - elasticity(bay.suspension, bay.rest).hessian;
    bay.damping = matrices.rightCols(6).real();
    return bay;
}

/// Centre of mass, turn and their rates against rest.
struct BayState {
    Vector3d shift, velocity, spin;
    Eigen::Quaterniond turn;
};

BayState operator+(const BayState& a, const BayState& b)
{
    return {a.shift + b.shift, a.velocity + b.velocity, a.spin + b.spin,
            Eigen::Quaterniond(a.turn.coeffs() + b.turn.coeffs())};
}

BayState operator*(double t, const BayState& a)
{
    return {t * a.shift, t * a.velocity, t * a.spin, Eigen::Quaterniond(t * a.turn.coeffs())};
}

// Newton and Euler: velocity, acceleration, angular acceleration and the quaternion's rate.
BayState ratesOf(const BayInTime& bay, const BayState& state)
{
    const Eigen::Quaterniond turn = state.turn.normalized();
    Pose pose;
    pose.shift = bay.rest.shift + state.shift;
    pose.R = turn.toRotationMatrix() * bay.rest.R;
    pose.theta = vectorFromRotation(pose.R);
    const Eigen::AngleAxisd small(turn);
    Vector6d moved, speed;
    moved << state.shift, small.angle() * small.axis();
    speed << state.velocity, state.spin;
    Vector6d force =
        -elasticity(bay.suspension, pose).gradient - bay.stiffness * moved - bay.damping * speed;
    if (!force.allFinite())
        throw std::runtime_error("pluckInTime: a tube is crushed");
    const double mass = bay.suspension.bay.mass;
    force[2] -= mass * kGravity;
    const Matrix3d J = pose.R * bay.suspension.bay.inertia * pose.R.transpose();
    const Eigen::Quaterniond spin(0, state.spin.x(), state.spin.y(), state.spin.z());
    const Eigen::Quaterniond rate(0.5 * (spin * turn).coeffs());
    return {state.velocity, force.head<3>() / mass,
            J.inverse() * (force.tail<3>() - state.spin.cross(J * state.spin)), rate};
}

void step(const BayInTime& bay, BayState& state, double dt)
{
    const BayState k1 = ratesOf(bay, state);
    const BayState k2 = ratesOf(bay, state + dt / 2 * k1);
    const BayState k3 = ratesOf(bay, state + dt / 2 * k2);
    const BayState k4 = ratesOf(bay, state + dt * k3);
    state = state + dt / 6 * (k1 + 2.0 * k2 + 2.0 * k3 + k4);
    state.turn.normalize();
}

BayState heldState(const HeldAt& held)
{
    const Vector3d turn = held.turn_deg * unit::deg;
    return {held.shift_mm * unit::mm, Vector3d::Zero(), Vector3d::Zero(),
            Eigen::Quaterniond(rotationFromVector(turn))};
}

// What the sensor feels, its own axes: the acceleration of its middle less gravity.
Vector3d felt(const BayInTime& bay, const SensorOnBay& sensor, const BayState& state, bool isHeld)
{
    const Matrix3d R = state.turn.toRotationMatrix() * bay.rest.R;
    const Vector3d place(sensor.centre_mm[0], sensor.centre_mm[1], sensor.centre_mm[2]);
    const Vector3d r = R * (place * unit::mm - bay.suspension.bay.centre);
    Vector3d acceleration(0, 0, kGravity);
    if (!isHeld) {
        const BayState rates = ratesOf(bay, state);
        acceleration +=
            rates.velocity + rates.spin.cross(r) + state.spin.cross(state.spin.cross(r));
    }
    return sensor.axes.transpose() * R.transpose() * acceleration;
}

}  // namespace

Setup withSensor(const Setup& craft, const SensorOnBay& sensor)
{
    Setup plucked = craft;
    if (sensor.mass_g > 0.0)
        plucked.bay.parts.push_back(
            {"sensor", sensor.mass_g, sensor.centre_mm, sensor.size_mm, {}});
    return plucked;
}

PluckRecord pluckInTime(const PluckedBay& plucked)
{
    const BayInTime bay = bayInTime(plucked);
    const double fastest = bay.modes.omega.cwiseAbs().maxCoeff();
    Scatter scatter(plucked.seed);
    PluckRecord record;
    const auto samplesOf = [&](double duration) {
        return static_cast<std::size_t>(std::lround(duration * plucked.rate_hz));
    };
    const std::size_t held = samplesOf(plucked.held_s), ringing = samplesOf(plucked.ringing_s);
    for (const HeldAt& pluck : plucked.plucks) {
        BayState state = heldState(pluck);
        double now = 0.0;  // since it was let go
        for (std::size_t i = 0; i < held + ringing; ++i) {
            const double even = static_cast<double>(record.times.size()) / plucked.rate_hz;
            const double late = plucked.jitter_s * scatter.normal();
            const double t =
                (static_cast<double>(i) - static_cast<double>(held)) / plucked.rate_hz + late;
            const auto steps =
                static_cast<int>(std::ceil(std::max(0.0, t - now) * fastest / kFinestPhase));
            for (int k = 0; k < steps; ++k)
                step(bay, state, (t - now) / steps);
            now = std::max(now, t);
            const Vector3d value = felt(bay, plucked.sensor, state, t <= 0.0);
            record.times.push_back(even + late);
            for (int axis = 0; axis < 3; ++axis)
                record.values[static_cast<std::size_t>(axis)].push_back(
                    value[axis] + plucked.noise * scatter.normal());
        }
    }
    return record;
}

Recording PluckRecord::recording(double rate_hz) const
{
    Recording recording;
    recording.rate = rate_hz;
    recording.channels = {{"ax", Quantity::Acceleration, values[0]},
                          {"ay", Quantity::Acceleration, values[1]},
                          {"az", Quantity::Acceleration, values[2]}};
    return recording;
}

std::array<std::array<double, 2>, 6> trueModes(const PluckedBay& plucked)
{
    const BayInTime bay = bayInTime(plucked);
    std::array<std::array<double, 2>, 6> modes{};
    for (int k = 0; k < 6; ++k) {
        const Complex square = bay.modes.omega[k] * bay.modes.omega[k];
        modes[static_cast<std::size_t>(k)] = {std::sqrt(square.real()) / (2 * std::numbers::pi),
                                              square.imag() / square.real()};
    }
    return modes;
}

}  // namespace stillbay::test
