// SPDX-License-Identifier: MIT
#include "core/airframe/arm.h"

#include "core/airframe/arm_stiffness.h"
#include "core/airframe/beam.h"
#include "core/base/solve.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

double solidTorsionConstant(double width, double height)
{
    const double a = std::max(width, height), b = std::min(width, height), q = b / a;
    return a * b * b * b * (1.0 / 3 - 0.21 * q * (1 - q * q * q * q / 12));
}

double bredtTorsionConstant(double width, double height, double wall)
{
    const double w = width - wall, h = height - wall;
    return 4 * w * w * h * h * wall / (2 * (w + h));
}

// Adds a small end-motion matrix to the rows of the 12×12: root dofs 0–5, tip dofs 6–11. A sign −1
// stands where the beam's slope is the negative rotation (z = w, ry = −w′).
template <int N>
void scatter(Matrix12cd& D, const Eigen::Matrix<Complex, N, N>& K, const std::array<int, N>& dof,
             const std::array<double, N>& sign)
{
    for (std::size_t i = 0; i < N; ++i)
        for (std::size_t j = 0; j < N; ++j)
            D(dof[i], dof[j]) +=
                sign[i] * sign[j] * K(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j));
}

// A rotational spring between hub and root: the root's own rotation is condensed away.
void softenRoot(CondensedArm& arm, double stiffness)
{
    const Matrix3cd K = stiffness * Matrix3cd::Identity();
    const Matrix3cd root = (arm.D.bottomRightCorner<3, 3>() + K).inverse();
    // Root rotation = S·(hub motion) + root·(moment of the tip's load on the root).
    Eigen::Matrix<Complex, 3, 6> S;
    S << -root * arm.D.bottomLeftCorner<3, 3>(), root * K;
    const Eigen::Matrix<Complex, 3, 6> load = arm.F.bottomRows<3>();
    Matrix6cd D, F;
    D.topRows<3>() = arm.D.topRightCorner<3, 3>() * S;
    D.topLeftCorner<3, 3>() += arm.D.topLeftCorner<3, 3>();
    D.bottomRows<3>() = -K * S;
    D.bottomRightCorner<3, 3>() += K;
    F.topRows<3>() = arm.F.topRows<3>() - arm.D.topRightCorner<3, 3>() * root * load;
    F.bottomRows<3>() = K * root * load;
    arm = {D, F};
}

// Smallest positive root of the tip-loaded cantilever, μ = tip mass/beam mass.
double cantileverRoot(double mu)
{
    const auto value = [mu](double b) {
        return 1 + std::cos(b) * std::cosh(b) +
               mu * b * (std::cos(b) * std::sinh(b) - std::sin(b) * std::cosh(b));
    };
    double low = 0.0, high = 1.8751041;  // positive at 0, not positive at the bare beam's root
    for (int k = 0; k < 100; ++k) {
        const double middle = 0.5 * (low + high);
        (value(middle) > 0 ? low : high) = middle;
    }
    return 0.5 * (low + high);
}

}  // namespace

Matrix12cd armStiffness(const ArmMaterial& material, double length, double omega)
{
    const ArmSectionFigures section = sectionFigures(material);
    const Complex loss(1.0, material.lossFactor);
    const Complex E = loss * material.youngsModulus, G = loss * material.shearModulus;
    const double mass = material.density * section.area;
    const double polar = material.density * (section.momentVertical + section.momentHorizontal);

    Matrix12cd D = Matrix12cd::Zero();
    scatter<2>(D, rodStiffness(E * section.area, mass, length, omega), {0, 6}, {1, 1});
    scatter<2>(D, rodStiffness(G * section.torsionConstant, polar, length, omega), {3, 9}, {1, 1});
    scatter<4>(D, bendingStiffness(E * section.momentHorizontal, mass, length, omega),
               {1, 5, 7, 11}, {1, 1, 1, 1});
    scatter<4>(D, bendingStiffness(E * section.momentVertical, mass, length, omega), {2, 4, 8, 10},
               {1, -1, 1, -1});
    return D;
}

ArmSectionFigures sectionFigures(const ArmMaterial& material)
{
    const double w = material.width, h = material.height;
    ArmSectionFigures figures{w * h, w * h * h * h / 12, h * w * w * w / 12,
                              solidTorsionConstant(w, h)};
    if (material.wall) {
        const double t = *material.wall, wi = w - 2 * t, hi = h - 2 * t;
        figures.area -= wi * hi;
        figures.momentVertical -= wi * hi * hi * hi / 12;
        figures.momentHorizontal -= hi * wi * wi * wi / 12;
        figures.torsionConstant = bredtTorsionConstant(w, h, t);
    }
    return figures;
}

CondensedArms condensedArms(const ArmMaterial& material, double length, const Tip& tip,
                            double omega, double speed)
{
    const Matrix12cd D = armStiffness(material, length, omega);
    Matrix6cd D_tt = D.bottomRightCorner<6, 6>() - omega * omega * tipMassMatrix(tip);
    addGyroscopicMoment(D_tt, rotorMomentum(tip, speed), omega);
    const Matrix6cd flexibility = inverse(D_tt);
    const Matrix6cd D_rt = D.topRightCorner<6, 6>();  // symmetric with the other corner
    const Matrix6cd toRoot = D_rt * flexibility;
    const Matrix6cd passed = toRoot * D_rt.transpose();
    // All but the gyroscopic moment is symmetric and that is skew: the other way round D_tt is
    // transposed, and so is all that comes of it. The second arm costs one product.
    CondensedArms arms{
        {D.topLeftCorner<6, 6>() - passed, -toRoot},
        {D.topLeftCorner<6, 6>() - passed.transpose(), -D_rt * flexibility.transpose()}};
    if (material.rootStiffness) {
        softenRoot(arms.counterClockwise, *material.rootStiffness);
        softenRoot(arms.clockwise, *material.rootStiffness);
    }
    return arms;
}

CantileverFrequencies cantileverFrequencies(const ArmMaterial& material, double length,
                                            double tipMass)
{
    const ArmSectionFigures section = sectionFigures(material);
    const double mass = material.density * section.area * length;
    const double b = cantileverRoot(tipMass / mass);
    const double unit = b * b / (2 * std::numbers::pi) *
                        std::sqrt(material.youngsModulus / (mass * length * length * length));
    return {unit * std::sqrt(section.momentVertical), unit * std::sqrt(section.momentHorizontal)};
}

}  // namespace stillbay
