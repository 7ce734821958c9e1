// SPDX-License-Identifier: MIT
#include "core/suspension/coupled.h"

#include "core/base/check.h"
#include "core/base/solve.h"

#include <algorithm>
#include <cstring>

namespace stillbay {
namespace {

namespace everywhere {  // two doubles are what every 64-bit processor has
using Wide = double __attribute__((vector_size(2 * sizeof(double))));
#include "core/suspension/coupled_lanes.h"
}  // namespace everywhere

#if defined(__x86_64__) && !defined(__clang__)
#pragma GCC push_options
#pragma GCC target("avx2,fma")
namespace avx2 {
using Wide = double __attribute__((vector_size(4 * sizeof(double))));
#include "core/suspension/coupled_lanes.h"
}  // namespace avx2
#pragma GCC pop_options

const auto wideRotations = __builtin_cpu_supports("avx2") && __builtin_cpu_supports("fma")
                               ? avx2::rotations
                               : everywhere::rotations;
#else
const auto wideRotations = everywhere::rotations;
#endif

inline void put(const Complex& z, std::size_t lane, ComplexLanes& to)
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
{
    const Matrix6cd flexibility = inverse(K);
    Matrix6d inverseMass = Matrix6d::Zero();
    inverseMass.topLeftCorner<3, 3>().diagonal().setConstant(1 / bay);
    inverseMass.bottomRightCorner<3, 3>() = J.inverse();
    const Matrix3d turn = axes * inverseMass.bottomRightCorner<3, 3>();
    for (std::size_t i = 0; i < 6; ++i)
        for (std::size_t j = 0; j < 6; ++j) {
            const auto row = static_cast<Eigen::Index>(i), col = static_cast<Eigen::Index>(j);
            m_side.flexibility[i][j] = flexibility(row, col);
            m_side.inverseMass[i][j] = inverseMass(row, col);
            if (i < 3 && j < 3)
                m_side.turn[i][j] = turn(row, col);
        }
    std::copy_n(p_FB.data(), 3, m_side.p_FB.begin());
}

void CoupledBay::rotations(const AirframeLanes& at, std::span<RotationLanes> rotations) const
{
    check(rotations.size() == at.scaledMotion.size(), "rotations: one per load case");
    wideRotations(m_side, at, rotations);
}

void CoupledBay::rotationsOfAnyProcessor(const AirframeLanes& at,
                                         std::span<RotationLanes> rotations) const
{
    check(rotations.size() == at.scaledMotion.size(), "rotations: one per load case");
    everywhere::rotations(m_side, at, rotations);
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
