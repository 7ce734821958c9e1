// SPDX-License-Identifier: MIT
#include "tests/assess/two_bodies.h"

#include "core/base/solve.h"
#include "tests/lapack/lapack.h"

#include <boost/numeric/odeint/integrate/integrate_const.hpp>
#include <boost/numeric/odeint/stepper/generation.hpp>
#include <boost/numeric/odeint/stepper/runge_kutta_fehlberg78.hpp>
#include <cmath>
#include <numbers>

namespace stillbay::test {
namespace {

namespace odeint = boost::numeric::odeint;

// Motions are micrometres, microradians and their rates: far below what is compared.
constexpr double kAbsolute = 1e-12;
constexpr double kRelative = 1e-9;

// Each body: shift, quaternion (w x y z), velocity, angular velocity; airframe first.
constexpr std::size_t kPerBody = 13;
using State = std::vector<double>;

void pack(const BodyState& body, double* out)
{
    const Eigen::Quaterniond& q = body.turn;
    Eigen::Map<Eigen::Matrix<double, 13, 1>>(out) << body.shift, q.w(), q.x(), q.y(), q.z(),
        body.velocity, body.angularVelocity;
}

BodyState unpack(const double* in)
{
    const Eigen::Map<const Eigen::Matrix<double, 13, 1>> v(in);
    return {v.head<3>(), Eigen::Quaterniond(v[3], v[4], v[5], v[6]).normalized(), v.segment<3>(7),
            v.tail<3>()};
}

// Newton and Euler: rates of one body under a force at its centre of mass and a moment about it.
void rates(const BodyState& body, double mass, const Matrix3d& J, const Vector3d& force,
           const Vector3d& moment, double* out)
{
    const Vector3d& w = body.angularVelocity;
    const Eigen::Quaterniond spin(0, w.x(), w.y(), w.z());
    const Eigen::Quaterniond turning = spin * body.turn;
    const Vector3d angular = J.inverse() * (moment - w.cross(J * w));
    Eigen::Map<Eigen::Matrix<double, 13, 1>>(out) << body.velocity, 0.5 * turning.w(),
        0.5 * turning.x(), 0.5 * turning.y(), 0.5 * turning.z(), force / mass, angular;
}

class Equations {
public:
    explicit Equations(const TwoBodies& bodies) : m_bodies(bodies), m_energy(bodies.drawn)
    {
        const MassFigures& bay = bodies.drawn.bay;
        m_p_FB = bay.centre + bodies.rest.shift - bodies.airframe.centre;
        m_p_FH = m_p_FB * bay.mass / (bay.mass + bodies.airframe.mass);
    }

    void operator()(const State& x, State& dxdt, double t) const
    {
        const BodyState airframe = unpack(x.data()), bay = unpack(x.data() + kPerBody);
        const MassFigures& b = m_bodies.drawn.bay;
        const MassFigures& f = m_bodies.airframe;
        const Matrix3d R_f = airframe.turn.toRotationMatrix();
        const Matrix3d R_b = bay.turn.toRotationMatrix() * m_bodies.rest.R;

        // Where the airframe sees the bay, and what the tubes' energy asks of it there.
        const Vector3d p_FB = m_p_FB + bay.shift - airframe.shift;
        const OwnPose seen{(R_f.transpose() * p_FB - (b.centre - f.centre)).cast<Real>(),
                           (R_f.transpose() * R_b).cast<Real>()};
        const Vector6d gradient = m_energy.gradient(seen);
        // Work of a motion of the bay alone, then of the airframe alone: u = −δx_f − δφ_f × p_FB.
        const Vector3d pull = R_f * gradient.head<3>(), twist = R_f * gradient.tail<3>();

        const Vector3d weight_b(0, 0, -b.mass * m_bodies.gravity);
        const Vector3d weight_f(0, 0, -f.mass * m_bodies.gravity);
        const Vector3d hover = -(weight_b + weight_f);
        const Vector3d vibration = R_f * m_bodies.force(t);
        const Vector3d p_FM = R_f * (m_bodies.p_OM - f.centre);
        // Rotors at a steady speed carry their angular momentum round with the airframe.
        const Vector3d gyroscopic =
            airframe.angularVelocity.cross(m_bodies.rotorMomentum * R_f.col(2));

        rates(bay, b.mass, R_b * b.inertia * R_b.transpose(), weight_b - pull, -twist,
              dxdt.data() + kPerBody);
        rates(airframe, f.mass, R_f * f.inertia * R_f.transpose(),
              weight_f + hover + pull + vibration,
              twist + p_FB.cross(pull) + (R_f * m_p_FH).cross(hover) + p_FM.cross(vibration) -
                  gyroscopic,
              dxdt.data());
    }

private:
    const TwoBodies& m_bodies;
    OwnEnergy m_energy;
    Vector3d m_p_FB;  // at rest
    Vector3d m_p_FH;  // airframe's centre of mass to the hover force, fixed in the airframe
};

}  // namespace

std::vector<TwoBodyState> flyInTime(const TwoBodies& bodies, const TwoBodyState& start,
                                    double omega, int periods, int samples)
{
    State x(2 * kPerBody);
    pack(start.airframe, x.data());
    pack(start.bay, x.data() + kPerBody);
    const double step = 2 * std::numbers::pi / (omega * samples);
    const std::size_t count = static_cast<std::size_t>(periods) * static_cast<std::size_t>(samples);

    std::vector<TwoBodyState> flight;
    flight.reserve(count + 1);
    const auto stepper =
        odeint::make_controlled(kAbsolute, kRelative, odeint::runge_kutta_fehlberg78<State>());
    odeint::integrate_const(
        stepper, Equations(bodies), x, 0.0, (static_cast<double>(count) - 0.5) * step, step,
        [&](const State& now, double) {
            flight.push_back({unpack(now.data()), unpack(now.data() + kPerBody)});
        });
    flight.resize(count);
    return flight;
}

Vector6cd fundamental(const Eigen::Matrix<double, 6, Eigen::Dynamic>& motions, int samples)
{
    const Eigen::Index count = motions.cols();
    Eigen::MatrixXd basis(count, 7);
    for (Eigen::Index k = 0; k < count; ++k) {
        const double phase = 2 * std::numbers::pi * static_cast<double>(k) / samples;
        const double t = static_cast<double>(2 * k) / static_cast<double>(count) - 1;
        basis.row(k) << std::cos(phase), std::sin(phase), std::cos(2 * phase), std::sin(2 * phase),
            1, t, t * t;
    }
    const Eigen::MatrixXd c = leastSquaresByLapack(basis, motions.transpose());
    Vector6cd X;
    for (Eigen::Index j = 0; j < 6; ++j)
        X[j] = Complex(c(0, j), -c(1, j));  // Re(X e^{iωt}) = Re X cos ωt − Im X sin ωt
    return X;
}

}  // namespace stillbay::test
