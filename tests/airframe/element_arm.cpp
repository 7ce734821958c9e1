// SPDX-License-Identifier: MIT
#include "tests/airframe/element_arm.h"

#include <array>

namespace stillbay::test {
namespace {

using Index = Eigen::Index;

// Places of the motions: the hub's at the root, then the root's own rotations where a spring is
// between, then node by node.
class Places {
public:
    Places(bool spring, int elements) : m_spring(spring), m_elements(elements) {}

    Index of(int node, Index motion) const
    {
        if (node > 0)
            return 6 + (m_spring ? 3 : 0) + 6 * (node - 1) + motion;
        return m_spring && motion >= 3 ? 3 + motion : motion;
    }
    Index count() const { return 6 + (m_spring ? 3 : 0) + 6 * m_elements; }

private:
    bool m_spring;
    int m_elements;
};

template <int N>
void add(Eigen::MatrixXcd& D, const Eigen::Matrix<Complex, N, N>& K,
         const std::array<Index, N>& place, const std::array<double, N>& sign)
{
    for (std::size_t i = 0; i < N; ++i)
        for (std::size_t j = 0; j < N; ++j)
            D(place[i], place[j]) +=
                sign[i] * sign[j] * K(static_cast<Index>(i), static_cast<Index>(j));
}

Eigen::Matrix2cd rod(Complex rigidity, double inertia, double h, double omega)
{
    Eigen::Matrix2d K, M;
    K << 1, -1, -1, 1;
    M << 2, 1, 1, 2;
    return rigidity / h * K - omega * omega * inertia * h / 6 * M;
}

Eigen::Matrix4cd beam(Complex EI, double mass, double h, double omega)
{
    Eigen::Matrix4d K, M;
    K << 12, 6 * h, -12, 6 * h, 6 * h, 4 * h * h, -6 * h, 2 * h * h,  //
        -12, -6 * h, 12, -6 * h, 6 * h, 2 * h * h, -6 * h, 4 * h * h;
    M << 156, 22 * h, 54, -13 * h, 22 * h, 4 * h * h, 13 * h, -3 * h * h,  //
        54, 13 * h, 156, -22 * h, -13 * h, -3 * h * h, -22 * h, 4 * h * h;
    return EI / (h * h * h) * K - omega * omega * mass * h / 420 * M;
}

// Forces and moments on the tip that its bodies ask for, divided by e^{iωt}. A body at height h
// moves with (x + h ry, y − h rx, z); its forces have the lever h about the tip; the rotor's
// angular momentum H tilts with it, dL/dt = iωH (ry, −rx, 0).
void addTip(Eigen::MatrixXcd& D, const std::array<Index, 6>& at, const Tip& tip, double momentum,
            double omega)
{
    const auto [x, y, z, rx, ry, rz] = at;
    for (const TipBody& body : {tip.motor, tip.propeller}) {
        const double m = omega * omega * body.mass, h = body.height;
        const double level = omega * omega * body.level;
        D(x, x) -= m;
        D(x, ry) -= m * h;
        D(ry, x) -= m * h;
        D(ry, ry) -= m * h * h + level;
        D(y, y) -= m;
        D(y, rx) += m * h;
        D(rx, y) += m * h;
        D(rx, rx) -= m * h * h + level;
        D(z, z) -= m;
        D(rz, rz) -= omega * omega * body.upright;
    }
    D(rx, ry) += Complex(0, omega * momentum);
    D(ry, rx) -= Complex(0, omega * momentum);
}

}  // namespace

Eigen::MatrixXcd elementArm(const ArmMaterial& material, double length, const Tip& tip,
                            double momentum, double omega, int elements)
{
    const ArmSectionFigures section = sectionFigures(material);
    const Complex loss(1, material.lossFactor);
    const Complex E = loss * material.youngsModulus, G = loss * material.shearModulus;
    const double mass = material.density * section.area;
    const double polar = material.density * (section.momentVertical + section.momentHorizontal);
    const double h = length / elements;
    const Places places(material.rootStiffness.has_value(), elements);
    Eigen::MatrixXcd D = Eigen::MatrixXcd::Zero(places.count(), places.count());
    for (int e = 0; e < elements; ++e) {
        const auto p = [&](int end, Index motion) {
            return places.of(e + end, motion);
        };
        add<2>(D, rod(E * section.area, mass, h, omega), {p(0, 0), p(1, 0)}, {1, 1});
        add<2>(D, rod(G * section.torsionConstant, polar, h, omega), {p(0, 3), p(1, 3)}, {1, 1});
        add<4>(D, beam(E * section.momentHorizontal, mass, h, omega),
               {p(0, 1), p(0, 5), p(1, 1), p(1, 5)}, {1, 1, 1, 1});
        add<4>(D, beam(E * section.momentVertical, mass, h, omega),
               {p(0, 2), p(0, 4), p(1, 2), p(1, 4)}, {1, -1, 1, -1});  // w′ = −ry
    }
    if (material.rootStiffness)
        for (Index r = 3; r < 6; ++r) {
            Eigen::Matrix2cd spring;
            spring << 1, -1, -1, 1;
            add<2>(D, *material.rootStiffness * spring, {r, places.of(0, r)}, {1, 1});
        }
    std::array<Index, 6> at{};
    for (Index motion = 0; motion < 6; ++motion)
        at[static_cast<std::size_t>(motion)] = places.of(elements, motion);
    addTip(D, at, tip, momentum, omega);
    return D;
}

}  // namespace stillbay::test
