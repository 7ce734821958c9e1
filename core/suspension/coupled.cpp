// SPDX-License-Identifier: MIT
#include "core/suspension/coupled.h"

#include "core/base/check.h"
#include "core/base/solve.h"

#include <algorithm>

namespace stillbay {
namespace {

using Cx = ComplexLanes;
using Square = std::array<MotionLanes, 6>;  // a matrix by rows

inline Cx operator+(const Cx& a, const Cx& b)
{
    return {a.re + b.re, a.im + b.im};
}
inline Cx operator-(const Cx& a, const Cx& b)
{
    return {a.re - b.re, a.im - b.im};
}
inline Cx operator-(const Cx& a)
{
    return {-a.re, -a.im};
}
inline Cx operator*(const Cx& a, const Cx& b)
{
    return {a.re * b.re - a.im * b.im, a.re * b.im + a.im * b.re};
}
inline Cx operator*(double a, const Cx& b)
{
    return {a * b.re, a * b.im};
}
inline Cx inverse(const Cx& a)
{
    const Lanes n = 1 / (a.re * a.re + a.im * a.im);
    return {a.re * n, -a.im * n};
}

// p × c
inline RotationLanes cross(const Vector3d& p, const Cx& x, const Cx& y, const Cx& z)
{
    return {p[1] * z - p[2] * y, p[2] * x - p[0] * z, p[0] * y - p[1] * x};
}

// M v
inline RotationLanes product(const Matrix3d& M, const Cx& x, const Cx& y, const Cx& z)
{
    return {M(0, 0) * x + M(0, 1) * y + M(0, 2) * z, M(1, 0) * x + M(1, 1) * y + M(1, 2) * z,
            M(2, 0) * x + M(2, 1) * y + M(2, 2) * z};
}

// The loops below are short. Unrolled, their numbers stay in registers, which saves a third of the
// time; the compiler does so only when told.

// P R Pᵀ for P = [1, −[p]×; 0, 1] and R = [A, E; B, C]: it is [A′ + E′[p]×, E′; B + C [p]×, C] with
// A′ = A − [p]× B and E′ = E − [p]× C; a row r times [p]× is −p × r.
inline void carryReceptance(const Square& R, const Vector3d& p, Square& S)
{
#pragma GCC unroll 3
    for (std::size_t i = 3; i < 6; ++i)
        S[i] = R[i];
#pragma GCC unroll 6
    for (std::size_t j = 0; j < 6; ++j) {
        const RotationLanes left = cross(p, R[3][j], R[4][j], R[5][j]);
#pragma GCC unroll 3
        for (std::size_t i = 0; i < 3; ++i)
            S[i][j] = R[i][j] - left[i];
    }
#pragma GCC unroll 6
    for (std::size_t i = 0; i < 6; ++i) {
        const RotationLanes right = cross(p, S[i][3], S[i][4], S[i][5]);
#pragma GCC unroll 3
        for (std::size_t j = 0; j < 3; ++j)
            S[i][j] = S[i][j] - right[j];
    }
}

// S = L U in place: L below the diagonal, which is one there, U above, 1/U on it.
inline void factor(Square& S)
{
#pragma GCC unroll 6
    for (std::size_t k = 0; k < 6; ++k) {
        S[k][k] = inverse(S[k][k]);
#pragma GCC unroll 6
        for (std::size_t i = k + 1; i < 6; ++i) {
            S[i][k] = S[i][k] * S[k][k];
#pragma GCC unroll 6
            for (std::size_t j = k + 1; j < 6; ++j)
                S[i][j] = S[i][j] - S[i][k] * S[k][j];
        }
    }
}

// The last three of U⁻¹ L⁻¹ f.
inline void solve(const Square& S, MotionLanes& f)
{
#pragma GCC unroll 6
    for (std::size_t i = 1; i < 6; ++i)
#pragma GCC unroll 6
        for (std::size_t k = 0; k < i; ++k)
            f[i] = f[i] - S[i][k] * f[k];
    f[5] = f[5] * S[5][5];
    f[4] = (f[4] - S[4][5] * f[5]) * S[4][4];
    f[3] = (f[3] - S[3][4] * f[4] - S[3][5] * f[5]) * S[3][3];
}

inline void put(const Complex& z, std::size_t lane, Cx& to)
{
    to.re[lane] = z.real();
    to.im[lane] = z.imag();
}

}  // namespace

AirframeLanes::AirframeLanes(std::span<const AirframeAt* const> at)
{
    check(!at.empty() && at.size() <= kLanes, "AirframeLanes: 1 to kLanes frequencies");
    for (std::size_t lane = 0; lane < kLanes; ++lane) {
        const AirframeAt& one = *at[std::min(lane, at.size() - 1)];
        inverseSquare[lane] = 1 / (one.omega * one.omega);
        for (std::size_t i = 0; i < 6; ++i)
            for (std::size_t j = 0; j < 6; ++j)
                put(one.R(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j)), lane,
                    R[i][j]);
        scaledMotion.resize(std::max(scaledMotion.size(), one.freeMotion.size()));
        for (std::size_t load = 0; load < one.freeMotion.size(); ++load)
            for (std::size_t i = 0; i < 6; ++i)
                put(inverseSquare[lane] * one.freeMotion[load][static_cast<Eigen::Index>(i)], lane,
                    scaledMotion[load][i]);
    }
}

CoupledBay::CoupledBay(const Matrix6cd& K, double bay, const Matrix3d& J, const Vector3d& p_FB,
                       const Matrix3d& axes)
    : m_flexibility(inverse(K)), m_inverseMass(Matrix6d::Zero()), m_p_FB(p_FB), m_axes(axes)
{
    m_inverseMass.topLeftCorner<3, 3>().diagonal().setConstant(1 / bay);
    m_inverseMass.bottomRightCorner<3, 3>() = J.inverse();
}

void CoupledBay::rotations(const AirframeLanes& at, std::span<RotationLanes> rotations) const
{
    check(rotations.size() == at.scaledMotion.size(), "rotations: one per load case");
    Square S;
    carryReceptance(at.R, m_p_FB, S);
#pragma GCC unroll 6
    for (std::size_t i = 0; i < 6; ++i)
#pragma GCC unroll 6
        for (std::size_t j = 0; j < 6; ++j) {
            const auto row = static_cast<Eigen::Index>(i), col = static_cast<Eigen::Index>(j);
            S[i][j].re += m_flexibility(row, col).real();
            S[i][j].im += m_flexibility(row, col).imag();
            if (i == j || (i >= 3 && j >= 3))
                S[i][j].re -= m_inverseMass(row, col) * at.inverseSquare;
        }
    factor(S);

    const Matrix3d turn = m_axes * m_inverseMass.bottomRightCorner<3, 3>();
    for (std::size_t load = 0; load < rotations.size(); ++load) {
        const MotionLanes& x = at.scaledMotion[load];  // f = −P x
        const RotationLanes shift = cross(m_p_FB, x[3], x[4], x[5]);
        MotionLanes f{shift[0] - x[0], shift[1] - x[1], shift[2] - x[2], -x[3], -x[4], -x[5]};
        solve(S, f);
        rotations[load] = product(turn, f[3], f[4], f[5]);
    }
}

std::vector<std::vector<Vector3cd>> CoupledBay::rotations(
    const std::vector<const AirframeAt*>& at) const
{
    std::vector<std::vector<Vector3cd>> result;
    std::vector<RotationLanes> several;
    for (std::size_t first = 0; first < at.size(); first += kLanes) {
        const auto some = std::span(at).subspan(first, std::min(kLanes, at.size() - first));
        const AirframeLanes airframe(some);
        several.resize(airframe.scaledMotion.size());
        rotations(airframe, several);
        for (std::size_t lane = 0; lane < some.size(); ++lane) {
            std::vector<Vector3cd>& one = result.emplace_back(some[lane]->freeMotion.size());
            for (std::size_t load = 0; load < one.size(); ++load)
                for (std::size_t i = 0; i < 3; ++i)
                    one[load][static_cast<Eigen::Index>(i)] = {several[load][i].re[lane],
                                                               several[load][i].im[lane]};
        }
    }
    return result;
}

void rigidRotations(const AirframeAt& at, const Matrix6d& M_b, std::span<Vector3cd> rotations)
{
    check(rotations.size() == at.freeMotion.size(), "rigidRotations: one per load case");
    const Matrix6cd A = Matrix6cd::Identity() - at.omega * at.omega * (at.R * M_b.cast<Complex>());
    const std::vector<Vector6cd> motions = solve(A, at.freeMotion);
    for (std::size_t load = 0; load < rotations.size(); ++load)
        rotations[load] = motions[load].tail<3>();
}

}  // namespace stillbay
