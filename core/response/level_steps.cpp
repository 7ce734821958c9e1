// SPDX-License-Identifier: MIT
#include "core/response/level_steps.h"

#include "core/base/solve.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

namespace stillbay {
namespace {

using Eigen::Index;

// In the unknowns' units.
constexpr double kLargestElevationStep = 10.0;
constexpr double kLargestStretchStep = 5.0;  // likewise of free length
constexpr double kAtBound = 1e-9;

// Unknowns that stand at an end of their range.
using Held = std::array<bool, kMostSought>;

// Takes what a step of stretch does to the mean of all free ones out of each slope, so that no step
// changes their sum.
void keepMean(SoughtSlopes& slopes, const SoughtHanging& hanging, const Held& held)
{
    Vector6d sum = Vector6d::Zero();
    int free = 0;
    const auto forFree = [&](const auto& act) {
        for (Index k = hanging.stretches; k < hanging.count(); ++k)
            if (!held[static_cast<std::size_t>(k)])
                act(k);
    };
    forFree([&](Index k) {
        sum += slopes.col(k);
        ++free;
    });
    forFree([&](Index k) { slopes.col(k) -= sum / free; });
}

// The damped step, shortest in the unknowns' units: y = −Jᵀ(JJᵀ + μ)⁻¹r, J without what is held at
// a bound that the step would cross. Slopes come per unit.
SoughtValues dampedStep(const SoughtHanging& hanging, const SoughtValues& x,
                        const SoughtSlopes& perUnit, const Vector6d& residual, double damping)
{
    Held held{};
    SoughtValues step = SoughtValues::Zero(hanging.count());
    for (bool again = true; again;) {
        again = false;
        SoughtSlopes J = perUnit;
        for (Index k = 0; k < hanging.count(); ++k)
            if (held[static_cast<std::size_t>(k)])
                J.col(k).setZero();
        keepMean(J, hanging, held);
        Matrix6d S = J.lazyProduct(J.transpose());
        const double trace = S.trace();
        if (!(trace > 0))
            return SoughtValues::Zero(hanging.count());
        S.diagonal().array() += damping * trace / 6;
        const auto L = choleskyFactor(S);
        if (!L)
            return SoughtValues::Zero(hanging.count());
        step = -(J.transpose() * solveCholesky(*L, residual));
        for (Index k = 0; k < hanging.count(); ++k) {
            const double room =
                (step[k] > 0 ? hanging.high[k] - x[k] : x[k] - hanging.low[k]) / hanging.units[k];
            if (step[k] != 0.0 && room < kAtBound)
                held[static_cast<std::size_t>(k)] = again = true;
        }
    }
    return step;
}

// How much of a step is taken: none too long, none across a bound.
double shareOf(const SoughtHanging& hanging, const SoughtValues& x, const SoughtValues& step)
{
    double share = 1.0;
    for (Index k = 0; k < hanging.count(); ++k) {
        const double size = std::abs(step[k]);
        const bool isElevation = !hanging.drilled && k < hanging.stretches;
        const double room =
            (step[k] > 0 ? hanging.high[k] - x[k] : x[k] - hanging.low[k]) / hanging.units[k];
        if (size > 0.0)
            share =
                std::min({share, (isElevation ? kLargestElevationStep : kLargestStretchStep) / size,
                          room / size});
    }
    return share;
}

}  // namespace

bool lowerResidual(const SoughtHanging& hanging, const LevelResidual& residualAt,
                   const StepEffort& effort, double enough, SoughtValues& x)
{
    constexpr double kLeastDamping = 1e-12, kMostDamping = 1e6;
    Vector6d residual, next;
    SoughtSlopes slopes;
    if (!residualAt(x, residual, &slopes))
        return false;
    double damping = 1e-9;
    int stagnant = 0;
    for (int k = 0; k < effort.steps && residual.norm() > enough; ++k) {
        for (Index j = 0; j < hanging.count(); ++j)
            slopes.col(j) *= hanging.units[j];
        for (;;) {
            const SoughtValues step = dampedStep(hanging, x, slopes, residual, damping);
            const double share = shareOf(hanging, x, step);
            const SoughtValues there = (x + share * step.cwiseProduct(hanging.units))
                                           .cwiseMax(hanging.low)
                                           .cwiseMin(hanging.high);
            if (residualAt(there, next, nullptr) && next.norm() < residual.norm()) {
                stagnant = next.norm() > (1 - effort.stagnant) * residual.norm() ? stagnant + 1 : 0;
                x = there;
                damping = std::max(kLeastDamping, 0.1 * damping);
                break;
            }
            damping = std::max(1e-6, 10 * damping);
            if (damping > kMostDamping)
                return false;
        }
        if (stagnant >= 3 || !residualAt(x, residual, &slopes))
            break;
    }
    return residual.norm() <= enough;
}

}  // namespace stillbay
