// SPDX-License-Identifier: MIT
#include "core/response/level.h"

#include "core/base/rotation.h"
#include "core/base/solve.h"
#include "core/base/units.h"
#include "core/craft/craft.h"
#include "core/response/level_steps.h"
#include "core/response/sought_hanging.h"
#include "core/suspension/motion_text.h"
#include "core/suspension/suspension.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <optional>
#include <utility>
#include <vector>

namespace stillbay {
namespace {

using Eigen::Index;

constexpr double kSolved = 1e-10;            // unbalanced force over weight
constexpr double kNearlyBalanced = 0.1;      // likewise; beyond, nothing can be level
constexpr double kUntouchedShift_mm = 0.02;  // what is level to within this stays as it is
constexpr double kUntouchedTurn_deg = 0.02;
constexpr double kWorthwhile = 0.01 * unit::mm;  // gain below which mounts stay as they are
constexpr StepEffort kEquations{60, 1e-4}, kFirstRest{15, 1e-3}, kTrueRest{60, 1e-7};
constexpr int kRounds = 5;  // of level(), each from what the last one found

// Turns count at kMotionRadius, as everywhere.
Vector6d turnsAtRadius(Vector6d motion)
{
    motion.tail<3>() *= kMotionRadius;
    return motion;
}

Vector6d momentsAtRadius(Vector6d force)
{
    force.tail<3>() /= kMotionRadius;
    return force;
}

// Stage one: the six equations, force over weight.
bool solveEquations(const SoughtHanging& hanging, SoughtValues& x)
{
    const auto evaluate = [&](const SoughtValues& at, Vector6d& residual, SoughtSlopes* slopes) {
        residual = momentsAtRadius(unbalancedForce(hanging, at, slopes)) / hanging.weight;
        if (slopes)
            for (Index k = 0; k < slopes->cols(); ++k)
                slopes->col(k) = momentsAtRadius(slopes->col(k)) / hanging.weight;
        return residual.allFinite();
    };
    return lowerResidual(hanging, evaluate, kEquations, kSolved, x);
}

// How far the bay goes from the drawing by the stiffness there, turns at kMotionRadius [m], and the
// slopes of that with the stiffness held. None: it is not stable as drawn.
bool firstRest(const SoughtHanging& hanging, Suspension& suspension, const SoughtValues& x,
               Vector6d& motion, SoughtSlopes* slopes)
{
    hangAt(suspension, hanging, x);
    Matrix6d K = elasticity(suspension, {}).hessian;
    if (!K.allFinite())
        return false;
    K.bottomRows<3>() /= kMotionRadius;
    K.rightCols<3>() /= kMotionRadius;
    const auto L = choleskyFactor(K);
    if (!L)
        return false;
    motion = solveCholesky(*L, momentsAtRadius(unbalancedForce(hanging, x, slopes)));
    if (slopes)
        for (Index k = 0; k < slopes->cols(); ++k)
            slopes->col(k) = solveCholesky(*L, momentsAtRadius(slopes->col(k)));
    return motion.allFinite();
}

bool isLevelTo(const Vector3d& shift, const Vector3d& rotation, double shift_mm, double turn_deg)
{
    return shift.norm() <= shift_mm * unit::mm && rotation.norm() <= turn_deg * unit::deg;
}

// Slopes of the rest by the unknowns: what each adds to the tubes' force there, by differences, and
// what the stiffness there makes of it.
bool restSlopes(const SoughtHanging& hanging, const Suspension& suspension, const SoughtValues& x,
                const Pose& pose, SoughtSlopes& slopes)
{
    constexpr double kDifference = 1e-4;  // of a unit: below, rounding; above, curvature
    const auto K = elasticity(suspension, pose).hessian;
    const Matrix6d K_inverse = inverse(Matrix6d(K));
    const Matrix3d A = inverseLeftJacobian(pose.theta);
    Suspension one{suspension.bay, suspension.tube, {}};
    Suspension all = suspension;
    slopes.resize(6, hanging.count());
    for (Index k = 0; k < hanging.count(); ++k) {
        const auto i = static_cast<std::size_t>(k % hanging.stretches);
        Vector6d difference = Vector6d::Zero();
        for (const double side : {1.0, -1.0}) {
            SoughtValues there = x;
            there[k] += side * kDifference * hanging.units[k];
            hangAt(all, hanging, there);
            one.attachments = {all.attachments[i]};
            difference += side * elasticity(one, pose).gradient;
        }
        Vector6d motion = -(K_inverse * difference) / (2 * kDifference * hanging.units[k]);
        motion.tail<3>() = A * motion.tail<3>();
        slopes.col(k) = turnsAtRadius(motion);
    }
    return slopes.allFinite();
}

// Stage two, of level() only: the least true rest, by the rest pose itself.
void lessenRest(const SoughtHanging& hanging, Suspension suspension, SoughtValues& x)
{
    constexpr double kEnough = 1e-7;  // [m], below what rounding the mounts leaves
    const auto evaluate = [&](const SoughtValues& at, Vector6d& motion, SoughtSlopes* slopes) {
        hangAt(suspension, hanging, at);
        const auto pose = restPose(suspension, 1.0);
        if (!pose)
            return false;
        motion << pose->shift, kMotionRadius * pose->theta;
        return !slopes || restSlopes(hanging, suspension, at, *pose, *slopes);
    };
    lowerResidual(hanging, evaluate, kTrueRest, kEnough, x);
}

// Mounts with their rest.
struct Rested {
    Mounts mounts;
    Pose pose;

    double size() const { return std::hypot(pose.shift.norm(), kMotionRadius * pose.theta.norm()); }
};

Result<Rested> rested(const MassFigures& bay, const TubeKind& tube, const Mounts& mounts)
{
    const auto mounted = makeMountedBay(bay, tube, mounts);
    if (!mounted)
        return tl::unexpected(mounted.error());
    const auto pose = restPose(mounted->suspension, 1.0);
    if (!pose)
        return tl::unexpected(pose.error());
    return Rested{mounts, *pose};
}

// Whether the centre of mass is among the bay points, seen from above: no half plane without any.
bool isAmongTubes(const SoughtHanging& hanging)
{
    std::vector<double> angles;
    for (const HungTube& hung : hanging.tubes)
        angles.push_back(std::atan2(hung.p_CB.y(), hung.p_CB.x()));
    std::sort(angles.begin(), angles.end());
    double widest = angles.front() + 2 * std::numbers::pi - angles.back();
    for (std::size_t i = 1; i < angles.size(); ++i)
        widest = std::max(widest, angles[i] - angles[i - 1]);
    return widest < std::numbers::pi;
}

// The most that the tubes can pull upwards [N]: planned, all upright at the mean stretch; drilled,
// each as short as it may be. (A pull grows ever slower with stretch, so among tubes alike none of
// the same mean pull more than equal ones.)
double strongestPull(const SoughtHanging& hanging)
{
    SoughtValues x = hanging.low;
    if (!hanging.drilled) {
        x.head(hanging.stretches).setConstant(std::numbers::pi / 2);
        x.tail(hanging.stretches).setConstant(hanging.start.tail(hanging.stretches).mean());
    }
    double sum = 0.0;
    for (std::size_t i = 0; i < hanging.tubes.size(); ++i) {
        const TubePull pull = tubePull(hanging, x, i);
        sum += std::max(0.0, pull.tension * pull.d.z());
    }
    return sum;
}

LevelFailure remains(const Vector3d& shift, const Vector3d& rotation)
{
    constexpr double kMostlyUpright = 0.9;
    const Number turn = fixed(rotation.norm() / unit::deg, 2);
    const Number size = fixed(shift.norm() / unit::mm, 2);
    if (std::abs(shift.z()) < kMostlyUpright * shift.norm())
        return {LevelFault::Remains,
                phrase("The bay still moves %1\u00a0mm and turns %2°.", size, turn)};
    if (shift.z() < 0)
        return {LevelFault::Remains,
                phrase("The bay still sinks %1\u00a0mm and turns %2°.", size, turn)};
    return {LevelFault::Remains,
            phrase("The bay still rises %1\u00a0mm and turns %2°.", size, turn)};
}

// What stands in the way before anything is computed.
std::optional<LevelFailure> hopeless(const SoughtHanging& hanging)
{
    if (const double pull = strongestPull(hanging); pull < hanging.weight)
        return LevelFailure{LevelFault::TooHeavy,
                            phrase("The bay weighs %1\u00a0N, more than the %2\u00a0N that its "
                                   "tubes can pull upwards at most.",
                                   fixed(hanging.weight, 1), fixed(pull, 1))};
    if (!isAmongTubes(hanging))
        return LevelFailure{LevelFault::OutsideTubes,
                            phrase("Seen from above, the bay's centre of mass lies outside of its "
                                   "tubes.")};
    return {};
}

}  // namespace

bool restsAsDrawn(const Vector3d& shift, const Vector3d& rotation)
{
    return isLevelTo(shift, rotation, kLevelShift_mm, kLevelTurn_deg);
}

Result<Mounts> levelledMounts(const MassFigures& bay, const TubeKind& tube, const Mounts& mounts)
{
    auto mounted = makeMountedBay(bay, tube, mounts);
    if (!mounted)
        return tl::unexpected(mounted.error());
    Suspension& suspension = mounted->suspension;
    const SoughtHanging hanging = soughtHangingOf(bay, suspension, tube, mounts);
    const Vector6d now = momentsAtRadius(unbalancedForce(hanging, hanging.start, nullptr));
    Vector6d motion;
    const auto firstRestAt = [&](const SoughtValues& at, Vector6d& there, SoughtSlopes* slopes) {
        return firstRest(hanging, suspension, at, there, slopes);
    };
    if (now.norm() < kNearlyBalanced * hanging.weight &&
        firstRestAt(hanging.start, motion, nullptr) &&
        isLevelTo(motion.head<3>(), motion.tail<3>() / kMotionRadius, kUntouchedShift_mm,
                  kUntouchedTurn_deg))
        return mounts;

    SoughtValues x = hanging.start;
    if (solveEquations(hanging, x))
        return mountsAt(hanging, x, mounts);

    // No solution: the least rest by the stiffness as drawn, from wherever that is smaller.
    Vector6d balanced;
    const bool isStable = firstRestAt(hanging.start, motion, nullptr);
    if (!firstRestAt(x, balanced, nullptr))
        return isStable ? mounts : mountsAt(hanging, x, mounts);
    if (isStable && motion.norm() < balanced.norm())
        x = hanging.start;
    lowerResidual(hanging, firstRestAt, kFirstRest, 0.0, x);
    firstRestAt(x, balanced, nullptr);
    return isStable && balanced.norm() > motion.norm() - kWorthwhile ? mounts
                                                                     : mountsAt(hanging, x, mounts);
}

namespace {

// One round of level(), from the given mounts.
Result<Levelled> levelOnce(const MassFigures& bay, const TubeKind& tube, const Mounts& mounts)
{
    const auto sought = levelledMounts(bay, tube, mounts);
    if (!sought)
        return tl::unexpected(sought.error());
    auto best = rested(bay, tube, *sought);
    if (best && restsAsDrawn(best->pose.shift, best->pose.theta))
        return Levelled{*sought, best->pose.shift, best->pose.theta};

    const auto mounted = makeMountedBay(bay, tube, mounts);
    const SoughtHanging hanging = soughtHangingOf(bay, mounted->suspension, tube, mounts);
    const auto why = hopeless(hanging);
    const auto present = rested(bay, tube, mounts);
    if (present && (!best || present->size() < best->size()))
        best = present;
    if (!best)
        return why ? tl::unexpected(Error{Errc::NoAnswer, why->text, "mounts"})
                   : tl::unexpected(best.error());
    const auto from = makeMountedBay(bay, tube, best->mounts);
    const SoughtHanging nearest = soughtHangingOf(bay, from->suspension, tube, best->mounts);
    SoughtValues x = nearest.start.cwiseMax(hanging.low).cwiseMin(hanging.high);
    lessenRest(hanging, from->suspension, x);
    if (auto lessened = rested(bay, tube, mountsAt(hanging, x, mounts));
        lessened && lessened->size() < best->size())
        best = std::move(lessened);
    if (present && present->size() < best->size() + kWorthwhile)
        best = present;
    Levelled result{best->mounts, best->pose.shift, best->pose.theta};
    if (!restsAsDrawn(result.shift, result.rotation))
        result.why = why ? *why : remains(result.shift, result.rotation);
    return result;
}

}  // namespace

Result<Levelled> level(const MassFigures& bay, const TubeKind& tube, const Mounts& mounts)
{
    auto result = levelOnce(bay, tube, mounts);
    // From the least rest the equations may have a solution that they had not from further off.
    for (int round = 1; round < kRounds && result && result->why; ++round) {
        auto next = levelOnce(bay, tube, result->mounts);
        if (!next || next->mounts == result->mounts)
            break;
        result = std::move(next);
    }
    return result;
}

Result<Levelled> level(const Setup& setup)
{
    return level(makeBody(setup.bay.parts), setup.tube, setup.mounts);
}

}  // namespace stillbay
