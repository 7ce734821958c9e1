// SPDX-License-Identifier: MIT
#include "tests/suspension/own_energy.h"

#include <cmath>

namespace stillbay::test {
namespace {

constexpr Real kPi = 3.14159265358979323846264338327950288L;

// Step of the differences: (h/scale)⁴ ≈ 1e-13 of truncation for lengths of 2 cm and angles of 1
// rad, while rounding, 1e-19 U/h², stays below 1e-10 N/m.
constexpr Real kShiftStep = 1e-5L;     // [m]
constexpr Real kRotationStep = 5e-4L;  // [rad]

template <class Vector>
Vector steps();
template <>
Vector6r steps<Vector6r>()
{
    Vector6r h;
    h << Vector3r::Constant(kShiftStep), Vector3r::Constant(kRotationStep);
    return h;
}
template <>
Vector8r steps<Vector8r>()
{
    Vector8r h = Vector8r::Constant(kRotationStep);
    h[0] = kShiftStep;
    return h;
}

// ∂f/∂x_j at x, central, fourth order.
template <class Vector, class F>
auto slope(const F& f, const Vector& x, Eigen::Index j)
{
    const Real h = steps<Vector>()[j];
    const auto at = [&](Real steps_h) {
        Vector y = x;
        y[j] += steps_h * h;
        return f(y);
    };
    using Value = std::decay_t<decltype(f(x))>;
    const Value near = at(1) - at(-1), far = at(2) - at(-2);
    return Value((Real(8) * near - far) / (Real(12) * h));
}

template <class Vector, class F>
Vector gradientOf(const F& f, const Vector& x)
{
    Vector g;
    for (Eigen::Index j = 0; j < x.size(); ++j)
        g[j] = slope(f, x, j);
    return g;
}

template <class Vector, class F>
auto hessianOf(const F& f, const Vector& x)
{
    constexpr int n = Vector::RowsAtCompileTime;
    const auto gradient = [&f](const Vector& y) {
        return gradientOf(f, y);
    };
    Eigen::Matrix<Real, n, n> H;
    for (Eigen::Index j = 0; j < n; ++j)
        H.col(j) = slope(gradient, x, j);
    return Eigen::Matrix<Real, n, n>((H + H.transpose()) / 2);
}

Vector3r real(const Vector3d& v)
{
    return v.cast<Real>();
}

Matrix3r rotation(const Vector3r& theta)
{
    const Real angle = theta.norm();
    if (angle == 0)
        return Matrix3r::Identity();
    return Eigen::AngleAxis<Real>(angle, theta / angle).toRotationMatrix();
}

}  // namespace

OwnEnergy::OwnEnergy(const DrawnBay& drawn) : m_drawn(drawn)
{
    const Real D = drawn.tube.section.outerDiameter, d = drawn.tube.section.bore;
    m_area = kPi / 4 * (D * D - d * d);
    m_secondMoment = kPi / 64 * (D * D * D * D - d * d * d * d);
    const Real m = d / D, q = (1 + m * m) * (1 + m * m);
    m_kappa = 9 * q / (10 * q + 26 * m * m);  // Cowper at ν = ½
    m_delta = drawn.tube.clamped ? 0.075L * std::sqrt(D * D - d * d) : 0;
    m_effectiveLength = drawn.tube.freeLength - 2 * m_delta;
}

Real OwnEnergy::tension(Real length) const
{
    const Real stretch = 1 + (length - m_drawn.tube.freeLength) / m_effectiveLength;
    return m_drawn.tube.shearModulus * m_area * (stretch - 1 / (stretch * stretch));
}

Real OwnEnergy::axialStiffness(Real length) const
{
    const Real stretch = 1 + (length - m_drawn.tube.freeLength) / m_effectiveLength;
    return m_drawn.tube.shearModulus * m_area / m_effectiveLength *
           (1 + 2 / (stretch * stretch * stretch));
}

std::array<ComplexReal, 2> OwnEnergy::ends(Real length, ComplexReal g) const
{
    if (!m_drawn.tube.clamped)
        return {};
    const Real G = m_drawn.tube.shearModulus, L = length;
    const Real stretch = 1 + (L - m_drawn.tube.freeLength) / m_effectiveLength;
    const ComplexReal EI = g * G * m_secondMoment * (1 + 2 / (stretch * stretch * stretch));
    const ComplexReal S = g * m_kappa * G * m_area / (stretch * stretch);
    const Real T = tension(L);
    const ComplexReal s = S / (S + T), x = s * T * L * L / (Real(4) * EI);
    const ComplexReal root = std::sqrt(x);
    // Series of tanh(√x)/√x where the closed form would cancel in φ.
    const bool small = std::abs(x) < 1e-3L;
    const ComplexReal tc =
        small ? Real(1) - x / 3.0L + 2.0L * x * x / 15.0L - 17.0L * x * x * x / 315.0L +
                    62.0L * x * x * x * x / 2835.0L - 1382.0L * x * x * x * x * x / 155925.0L
              : std::tanh(root) / root;
    const ComplexReal phi = small ? 1 / 3.0L - 2.0L * x / 15.0L + 17.0L * x * x / 315.0L -
                                        62.0L * x * x * x / 2835.0L +
                                        1382.0L * x * x * x * x / 155925.0L
                                  : (Real(1) - tc) / x;
    ComplexReal p = EI / L * Real(2) * tc / (Real(4) * EI / (L * L * S) + s * phi);
    ComplexReal m = EI / L * Real(2) / tc;
    p /= Real(1) - m_delta * p / EI;
    m /= Real(1) - m_delta * m / EI;
    return {(p + m) / Real(2), (p - m) / Real(2)};
}

Real OwnEnergy::energyOfMeasures(const Vector8r& z) const
{
    const Real length = z[0], twist = z[7];
    const Vector3r alpha_f = z.segment<3>(1), alpha_b = z.segment<3>(4);
    const Real G = m_drawn.tube.shearModulus;
    const Real stretch = 1 + (length - m_drawn.tube.freeLength) / m_effectiveLength;
    const Real axial = G * m_area * m_effectiveLength * (stretch * stretch + 2 / stretch - 3) / 2;
    if (!m_drawn.tube.clamped)
        return axial;
    const auto [a, b] = ends(length, 1);
    const Real torsion = G * 2 * m_secondMoment / length;
    return axial + a.real() * (alpha_f.squaredNorm() + alpha_b.squaredNorm()) / 2 +
           b.real() * alpha_f.dot(alpha_b) + torsion * twist * twist / 2;
}

Vector8r OwnEnergy::measures(const Attachment& attachment, const OwnPose& pose) const
{
    const Vector3r a = real(attachment.p_OA), b0 = real(attachment.p_OB);
    const Vector3r centre = real(m_drawn.bay.centre);
    const Vector3r e0 = (b0 - a).normalized();
    const Vector3r chord = centre + pose.shift + pose.R * (b0 - centre) - a;
    const Real length = chord.norm();
    const Vector3r e = chord / length;
    const Eigen::AngleAxis<Real> turn(pose.R);
    Vector8r z;
    z << length, e.cross(e0), e.cross(pose.R * e0), turn.angle() * turn.axis().dot(e);
    return z;
}

Real OwnEnergy::energy(const OwnPose& pose) const
{
    Real sum = 0;
    for (const Attachment& attachment : m_drawn.attachments)
        sum += energyOfMeasures(measures(attachment, pose));
    return sum;
}

Vector6d OwnEnergy::gradient(const OwnPose& pose) const
{
    const auto f = [&](const Vector6r& q) {
        return energy(moved(pose, q));
    };
    return gradientOf<Vector6r>(f, Vector6r::Zero()).cast<double>();
}

Matrix6d OwnEnergy::hessian(const OwnPose& pose) const
{
    const auto f = [&](const Vector6r& q) {
        return energy(moved(pose, q));
    };
    return hessianOf<Vector6r>(f, Vector6r::Zero()).cast<double>();
}

Matrix6cd OwnEnergy::dynamicStiffness(const OwnPose& pose, Complex g) const
{
    Matrix6cd K = hessian(pose).cast<Complex>();
    const ComplexReal factor(g.real(), g.imag());
    for (const Attachment& attachment : m_drawn.attachments) {
        const Vector8r z = measures(attachment, pose);
        const auto U = [&](const Vector8r& y) {
            return energyOfMeasures(y);
        };
        // C* − C: (g − 1) of the whole, but for the a, b blocks.
        Eigen::Matrix<ComplexReal, 8, 8> change =
            (factor - Real(1)) * hessianOf<Vector8r>(U, z).cast<ComplexReal>();
        const auto atRest = ends(z[0], 1), excited = ends(z[0], factor);
        const Matrix3r one = Matrix3r::Identity();
        change.block<3, 3>(1, 1) = (excited[0] - atRest[0]) * one.cast<ComplexReal>();
        change.block<3, 3>(4, 4) = change.block<3, 3>(1, 1);
        change.block<3, 3>(1, 4) = (excited[1] - atRest[1]) * one.cast<ComplexReal>();
        change.block<3, 3>(4, 1) = change.block<3, 3>(1, 4);
        const auto zOf = [&](const Vector6r& q) {
            return measures(attachment, moved(pose, q));
        };
        Eigen::Matrix<ComplexReal, 8, 6> B;
        for (Eigen::Index j = 0; j < 6; ++j)
            B.col(j) = slope(zOf, Vector6r(Vector6r::Zero()), j).cast<ComplexReal>();
        K += (B.transpose() * change * B).cast<Complex>();
    }
    return K;
}

OwnPose ownPose(const Pose& pose)
{
    return {real(pose.shift), rotation(real(pose.theta))};
}

OwnPose moved(const OwnPose& pose, const Vector6r& motion)
{
    return {pose.shift + motion.head<3>(), rotation(motion.tail<3>()) * pose.R};
}

Pose poseOf(const Vector3d& shift, const Vector3d& theta)
{
    Pose pose{shift, theta, Matrix3d::Identity()};
    if (theta.norm() > 0)
        pose.R = Eigen::AngleAxisd(theta.norm(), theta.normalized()).toRotationMatrix();
    return pose;
}

}  // namespace stillbay::test
