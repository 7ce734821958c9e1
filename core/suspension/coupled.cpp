// SPDX-License-Identifier: MIT
#include "core/suspension/coupled.h"

#include "core/base/check.h"

#include <array>
#include <cmath>

namespace stillbay {
namespace {

// std::complex without its care for infinities, which costs a branch a product.
struct Cx {
    double re = 0.0, im = 0.0;
};
inline Cx operator+(Cx a, Cx b)
{
    return {a.re + b.re, a.im + b.im};
}
inline Cx operator-(Cx a, Cx b)
{
    return {a.re - b.re, a.im - b.im};
}
inline Cx operator*(Cx a, Cx b)
{
    return {a.re * b.re - a.im * b.im, a.re * b.im + a.im * b.re};
}
inline Cx operator*(double a, Cx b)
{
    return {a * b.re, a * b.im};
}
inline double norm(Cx a)
{
    return a.re * a.re + a.im * a.im;
}
inline Cx inverse(Cx a)
{
    const double n = 1 / norm(a);
    return {a.re * n, -a.im * n};
}
inline Cx from(const Complex& z)
{
    return {z.real(), z.imag()};
}

using Column = std::array<Cx, 3>;

// p × c
inline Column cross(const Vector3d& p, const Column& c)
{
    return {p[1] * c[2] - p[2] * c[1], p[2] * c[0] - p[0] * c[2], p[0] * c[1] - p[1] * c[0]};
}

// Lower triangle of P R Pᵀ for P = [1, −[p]×; 0, 1] and R = [A, B; Bᵀ, C].
void carryReceptance(const Matrix6cd& R, const Vector3d& p, std::array<std::array<Cx, 6>, 6>& S)
{
    // u = x_F's shift − p × θ, column by column: U = top rows of P R.
    std::array<std::array<Cx, 6>, 3> U;
    for (Eigen::Index j = 0; j < 6; ++j) {
        const Column turn = cross(p, {from(R(3, j)), from(R(4, j)), from(R(5, j))});
        for (std::size_t i = 0; i < 3; ++i)
            U[i][static_cast<std::size_t>(j)] = from(R(static_cast<Eigen::Index>(i), j)) - turn[i];
    }
    for (std::size_t i = 0; i < 3; ++i) {
        const Column turn = cross(p, {U[i][3], U[i][4], U[i][5]});
        for (std::size_t j = 0; j <= i; ++j)
            S[i][j] = U[i][j] - turn[j];
        for (std::size_t j = 0; j < 3; ++j)
            S[j + 3][i] = U[i][j + 3];
    }
    for (std::size_t i = 3; i < 6; ++i)
        for (std::size_t j = 3; j <= i; ++j)
            S[i][j] = from(R(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j)));
}

}  // namespace

CoupledBay::CoupledBay(const Matrix6cd& K, double bay, const Matrix3d& J, const Vector3d& p_FB)
    : m_flexibility(K.inverse()), m_mass(bay), m_inverseInertia(J.inverse()), m_p_FB(p_FB)
{
}

bool CoupledBay::rotations(const AirframeAt& at, std::span<Vector3cd> rotations) const
{
    check(rotations.size() == at.freeMotion.size(), "rotations: one per load case");
    const double w = 1 / (at.omega * at.omega);
    std::array<std::array<Cx, 6>, 6> S;  // lower triangle only
    carryReceptance(at.R, m_p_FB, S);
    for (Eigen::Index i = 0; i < 6; ++i)
        for (Eigen::Index j = 0; j <= i; ++j) {
            Cx& s = S[static_cast<std::size_t>(i)][static_cast<std::size_t>(j)];
            s = s + from(m_flexibility(i, j));
            if (i < 3 && i == j)
                s.re -= w / m_mass;
            else if (j >= 3)
                s.re -= w * m_inverseInertia(i - 3, j - 3);
        }

    // L D Lᵀ in place: L below the diagonal, 1/D on it.
    for (std::size_t k = 0; k < 6; ++k) {
        if (!(norm(S[k][k]) > 0))
            return false;
        S[k][k] = inverse(S[k][k]);
        for (std::size_t i = k + 1; i < 6; ++i) {
            const Cx l = S[i][k] * S[k][k];
            for (std::size_t j = k + 1; j <= i; ++j)
                S[i][j] = S[i][j] - l * S[j][k];
        }
        for (std::size_t i = k + 1; i < 6; ++i)
            S[i][k] = S[i][k] * S[k][k];
    }

    for (std::size_t load = 0; load < rotations.size(); ++load) {
        const Vector6cd& x = at.freeMotion[load];
        const Column turn = cross(m_p_FB, {from(x[3]), from(x[4]), from(x[5])});
        std::array<Cx, 6> f;  // −P R F, then the solution's last three
        for (std::size_t i = 0; i < 3; ++i) {
            f[i] = turn[i] - from(x[static_cast<Eigen::Index>(i)]);
            f[i + 3] = -1.0 * from(x[static_cast<Eigen::Index>(i + 3)]);
        }
        for (std::size_t i = 1; i < 6; ++i)
            for (std::size_t k = 0; k < i; ++k)
                f[i] = f[i] - S[i][k] * f[k];
        f[5] = f[5] * S[5][5];
        f[4] = f[4] * S[4][4] - S[5][4] * f[5];
        f[3] = f[3] * S[3][3] - S[4][3] * f[4] - S[5][3] * f[5];
        const Vector3cd moment(Complex(f[3].re, f[3].im), Complex(f[4].re, f[4].im),
                               Complex(f[5].re, f[5].im));
        rotations[load] = w * (m_inverseInertia * moment);
        if (!rotations[load].allFinite())
            return false;
    }
    return true;
}

void boltedRotations(const AirframeAt& at, const Matrix6d& M_b, std::span<Vector3cd> rotations)
{
    check(rotations.size() == at.freeMotion.size(), "boltedRotations: one per load case");
    const Matrix6cd A = Matrix6cd::Identity() - at.omega * at.omega * (at.R * M_b.cast<Complex>());
    const Eigen::PartialPivLU<Matrix6cd> factor(A);
    for (std::size_t load = 0; load < rotations.size(); ++load)
        rotations[load] = Vector6cd(factor.solve(at.freeMotion[load])).tail<3>();
}

}  // namespace stillbay
