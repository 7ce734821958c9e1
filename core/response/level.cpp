// SPDX-License-Identifier: MIT
#include "core/response/level.h"

#include "core/base/check.h"
#include "core/base/rotation.h"
#include "core/base/solve.h"
#include "core/base/units.h"
#include "core/craft/craft.h"
#include "core/setup/fields.h"
#include "core/setup/mount_layout.h"
#include "core/suspension/motion_text.h"
#include "core/suspension/suspension.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <string_view>
#include <utility>
#include <vector>

namespace stillbay {
namespace {

using Eigen::Index;

constexpr int kMostTubes = static_cast<int>(kMountPointCount.max);
using Unknowns = Eigen::Matrix<double, Eigen::Dynamic, 1, Eigen::ColMajor, 2 * kMostTubes, 1>;
using Slopes = Eigen::Matrix<double, 6, Eigen::Dynamic, Eigen::ColMajor, 6, 2 * kMostTubes>;

// What counts as one step of an unknown. A degree of elevation is as easily set as a hundredth of
// stretch, 0.2 mm on a usual tube; of steps that do the same, the shortest in these is taken, and
// so tubes that are alike stay alike.
constexpr double kElevationUnit = unit::deg;
constexpr double kStretchUnit = 0.01;
constexpr double kLargestElevationStep = 10.0;  // in these units
constexpr double kLargestStretchStep = 5.0;

constexpr double kAtBound = 1e-9;            // in these units
constexpr double kSolved = 1e-10;            // unbalanced force over weight
constexpr double kNearlyBalanced = 0.1;      // likewise; beyond, nothing can be level
constexpr double kUntouchedShift_mm = 0.02;  // what is level to within this stays as it is
constexpr double kUntouchedTurn_deg = 0.02;
constexpr double kWorthwhile = 0.01 * unit::mm;  // gain below which mounts stay as they are
constexpr double kCommonTrim = 0.5e-4;           // own stretches below are the common one
constexpr double kModelMargin = 1.001;           // a free length stays this far above 4δ
// Effort: most steps, and the share of the residual below which three steps in a row are no gain.
struct Effort {
    int steps;
    double stagnant;
};
constexpr Effort kEquations{60, 1e-4}, kFirstRest{15, 1e-3}, kTrueRest{60, 1e-7};
constexpr int kRounds = 5;  // of level(), each from what the last one found

double toGrain(double value, double perUnit)
{
    return std::round(perUnit * value) / perUnit;
}

double toHundredth(double value)
{
    return toGrain(value, 100.0);
}

double toTenThousandth(double value)
{
    return toGrain(value, 1e4);
}

template <class Owner>
const Field<Owner>& fieldNamed(std::string_view key)
{
    for (const Field<Owner>& field : fieldsOf<Owner>())
        if (field.key == key)
            return field;
    check(false, "level: a key of the field table");
    return fieldsOf<Owner>().front();
}

// One tube with what is not sought.
struct Hung {
    Tube tube;
    Vector3d p_CB = Vector3d::Zero();  // [m] centre of mass to bay point
    double azimuth = 0.0;              // [rad]
    Vector3d d = Vector3d::Zero();     // bay to anchor, drilled
    double distance = 0.0;             // [m] likewise
};

// The unknowns of a craft: planned, all elevations [rad] and then all stretches; drilled, all free
// lengths [m].
struct Hanging {
    bool drilled = false;
    double weight = 0.0;  // [N]
    std::vector<Hung> tubes;
    Unknowns start, low, high, units;
    Index stretches = 0;  // where they begin; their sum is kept. None: at the end

    Index count() const { return start.size(); }
};

// A tube's pull with its direction, and what a step of stretch (drilled: of free length) adds.
struct Pull {
    Vector3d d = Vector3d::Zero();
    double tension = 0.0;  // [N]
    double slope = 0.0;    // [N] by stretch, [N/m] by free length
};

Pull pullOf(const Hanging& hanging, const Unknowns& x, std::size_t i)
{
    const Hung& hung = hanging.tubes[i];
    const auto k = static_cast<Index>(i);
    Tube tube = hung.tube;
    Pull pull;
    double length = hung.distance, byUnknown = 0.0;  // of the effective stretch
    if (hanging.drilled) {
        tube.freeLength = x[k];
        tube.effectiveLength = x[k] - 2 * tube.endLength;
        pull.d = hung.d;
        byUnknown = -(length - 2 * tube.endLength) / (tube.effectiveLength * tube.effectiveLength);
    } else {
        const double c = std::cos(x[k]), s = std::sin(x[k]);
        pull.d = {c * std::cos(hung.azimuth), c * std::sin(hung.azimuth), s};
        length = tube.freeLength * x[hanging.stretches + k];
        byUnknown = tube.freeLength / tube.effectiveLength;
    }
    const double lambda = effectiveStretch(tube, length);
    pull.tension = tube.GA0 * (lambda - 1 / (lambda * lambda));
    pull.slope = tube.GA0 * (1 + 2 / (lambda * lambda * lambda)) * byUnknown;
    return pull;
}

Vector6d wrench(const Vector3d& p, const Vector3d& force)
{
    Vector6d w;
    w << force, p.cross(force);
    return w;
}

// Force and moment about the centre of mass that the drawn bay is left with [N, N·m], and their
// slopes by the unknowns.
Vector6d unbalanced(const Hanging& hanging, const Unknowns& x, Slopes* slopes)
{
    Vector6d sum = -hanging.weight * Vector6d::Unit(2);
    if (slopes)
        slopes->resize(6, hanging.count());
    for (std::size_t i = 0; i < hanging.tubes.size(); ++i) {
        const Hung& hung = hanging.tubes[i];
        const Pull pull = pullOf(hanging, x, i);
        sum += wrench(hung.p_CB, pull.tension * pull.d);
        if (!slopes)
            continue;
        const auto k = static_cast<Index>(i);
        slopes->col(hanging.stretches % hanging.count() + k) =
            wrench(hung.p_CB, pull.slope * pull.d);
        if (hanging.drilled)
            continue;
        const double c = std::cos(x[k]), s = std::sin(x[k]);
        const Vector3d rise(-s * std::cos(hung.azimuth), -s * std::sin(hung.azimuth), c);
        slopes->col(k) = wrench(hung.p_CB, pull.tension * rise);
    }
    return sum;
}

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

Hanging hangingOf(const MassFigures& bay, const Suspension& suspension, const TubeKind& stock,
                  const Mounts& mounts)
{
    const Field<Mounts>& stretchField = fieldNamed<Mounts>("stretch");
    const Field<Mounts>& lengthField = fieldNamed<Mounts>("free_length_mm");
    const Field<MountPoint>& elevationField = fieldNamed<MountPoint>("elevation_deg");
    const auto n = static_cast<Index>(mounts.points.size());
    check(n > 0 && n <= kMostTubes, "level: as many tubes as a setup may have");

    Hanging hanging;
    hanging.drilled = mounts.drilled();
    hanging.weight = bay.mass * kGravity;
    hanging.stretches = n;
    const Index count = hanging.drilled ? n : 2 * n;
    for (Unknowns* const values : {&hanging.start, &hanging.low, &hanging.high, &hanging.units})
        values->resize(count);
    for (Index k = 0; k < n; ++k) {
        const auto i = static_cast<std::size_t>(k);
        const MountPoint& point = mounts.points[i];
        const Attachment& attachment = suspension.attachments[i];
        const Vector3d p_BA = attachment.p_OA - attachment.p_OB;
        const Tube& tube = suspension.tubeOf(attachment);
        const double distance = p_BA.norm(), present = distance / tube.freeLength;
        hanging.tubes.push_back({tube, attachment.p_OB - bay.centre, point.azimuth_deg * unit::deg,
                                 p_BA / distance, distance});
        // Slack or overstretched as it may be, the present value is allowed.
        const double least = std::min(std::max(kLeastLevelStretch, stretchField.min), present);
        const double most = std::max(std::min(stock.max_stretch, stretchField.max), present);
        if (hanging.drilled) {
            const double shortest =
                std::max(lengthField.min * unit::mm, kModelMargin * 4 * tube.endLength);
            hanging.start[k] = tube.freeLength;
            hanging.low[k] = std::min(std::max(shortest, distance / most), tube.freeLength);
            hanging.high[k] =
                std::max(std::min(lengthField.max * unit::mm, distance / least), tube.freeLength);
            hanging.units[k] = kStretchUnit * tube.freeLength;
            continue;
        }
        hanging.start[k] = point.elevation_deg * unit::deg;
        hanging.low[k] = elevationField.min * unit::deg;
        hanging.high[k] = elevationField.max * unit::deg;
        hanging.units[k] = kElevationUnit;
        hanging.start[n + k] = present;
        hanging.low[n + k] = least;
        hanging.high[n + k] = most;
        hanging.units[n + k] = kStretchUnit;
    }
    return hanging;
}

// Makes what the unknowns are into mounts, rounded to what a protractor, a ruler or a knife can
// follow. Stretches that are all alike are the common one, and so are lengths.
Mounts mountsAt(const Hanging& hanging, const Unknowns& x, Mounts mounts)
{
    const auto n = static_cast<Index>(mounts.points.size());
    const auto own = x.tail(n);
    if (hanging.drilled) {
        mounts.free_length_mm = toHundredth(own.mean() / unit::mm);
        for (Index k = 0; k < n; ++k) {
            const double length_mm = toHundredth(own[k] / unit::mm);
            std::optional<double>& to = mounts.points[static_cast<std::size_t>(k)].free_length_mm;
            to = length_mm == mounts.free_length_mm ? std::nullopt : std::optional(length_mm);
        }
        return mounts;
    }
    const double mean = own.mean();
    if (std::abs(mean - mounts.stretch.value_or(0.0)) > kCommonTrim)
        mounts.stretch = toTenThousandth(mean);
    const bool alike = (own.array() - *mounts.stretch).abs().maxCoeff() < kCommonTrim;
    for (Index k = 0; k < n; ++k) {
        MountPoint& point = mounts.points[static_cast<std::size_t>(k)];
        const double stretch = toTenThousandth(own[k]);
        point.elevation_deg = toHundredth(x[k] / unit::deg);
        point.stretch = alike || stretch == *mounts.stretch ? std::nullopt : std::optional(stretch);
    }
    return mounts;
}

// The craft's suspension with other unknowns.
void hang(Suspension& suspension, const Hanging& hanging, const Unknowns& x)
{
    for (std::size_t i = 0; i < hanging.tubes.size(); ++i) {
        const Hung& hung = hanging.tubes[i];
        const auto k = static_cast<Index>(i);
        Attachment& attachment = suspension.attachments[i];
        if (hanging.drilled) {
            Tube& tube = attachment.ownTube.emplace(hung.tube);
            tube.mass *= x[k] / tube.freeLength;
            tube.freeLength = x[k];
            tube.effectiveLength = x[k] - 2 * tube.endLength;
        } else {
            attachment.p_OA = attachment.p_OB + hung.tube.freeLength * x[hanging.stretches + k] *
                                                    pullOf(hanging, x, i).d;
        }
    }
}

// Unknowns that stand at an end of their range.
using Held = std::array<bool, std::size_t{2} * kMostTubes>;

// Takes what a step of stretch does to the mean of all free ones out of each slope, so that no step
// changes their sum.
void keepMean(Slopes& slopes, const Hanging& hanging, const Held& held)
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
Unknowns dampedStep(const Hanging& hanging, const Unknowns& x, const Slopes& perUnit,
                    const Vector6d& residual, double damping)
{
    Held held{};
    Unknowns step = Unknowns::Zero(hanging.count());
    for (bool again = true; again;) {
        again = false;
        Slopes J = perUnit;
        for (Index k = 0; k < hanging.count(); ++k)
            if (held[static_cast<std::size_t>(k)])
                J.col(k).setZero();
        keepMean(J, hanging, held);
        Matrix6d S = J.lazyProduct(J.transpose());
        const double trace = S.trace();
        if (!(trace > 0))
            return Unknowns::Zero(hanging.count());
        S.diagonal().array() += damping * trace / 6;
        const auto L = choleskyFactor(S);
        if (!L)
            return Unknowns::Zero(hanging.count());
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
double shareOf(const Hanging& hanging, const Unknowns& x, const Unknowns& step)
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

// Lowers |residual| by Levenberg's and Marquardt's damped steps.
//
// @param evaluate fills residual and, where asked, slopes at x; false where there is none.
// @return whether a residual below `enough` was reached. x is the best that was found.
template <class Evaluate>
bool minimise(const Hanging& hanging, const Evaluate& evaluate, const Effort& effort, double enough,
              Unknowns& x)
{
    constexpr double kLeastDamping = 1e-12, kMostDamping = 1e6;
    Vector6d residual, next;
    Slopes slopes;
    if (!evaluate(x, residual, &slopes))
        return false;
    double damping = 1e-9;
    int stagnant = 0;
    for (int k = 0; k < effort.steps && residual.norm() > enough; ++k) {
        for (Index j = 0; j < hanging.count(); ++j)
            slopes.col(j) *= hanging.units[j];
        for (;;) {
            const Unknowns step = dampedStep(hanging, x, slopes, residual, damping);
            const double share = shareOf(hanging, x, step);
            const Unknowns there = (x + share * step.cwiseProduct(hanging.units))
                                       .cwiseMax(hanging.low)
                                       .cwiseMin(hanging.high);
            if (evaluate(there, next, nullptr) && next.norm() < residual.norm()) {
                stagnant = next.norm() > (1 - effort.stagnant) * residual.norm() ? stagnant + 1 : 0;
                x = there;
                damping = std::max(kLeastDamping, 0.1 * damping);
                break;
            }
            damping = std::max(1e-6, 10 * damping);
            if (damping > kMostDamping)
                return false;
        }
        if (stagnant >= 3 || !evaluate(x, residual, &slopes))
            break;
    }
    return residual.norm() <= enough;
}

// Stage one: the six equations, force over weight.
bool solveEquations(const Hanging& hanging, Unknowns& x)
{
    const auto evaluate = [&](const Unknowns& at, Vector6d& residual, Slopes* slopes) {
        residual = momentsAtRadius(unbalanced(hanging, at, slopes)) / hanging.weight;
        if (slopes)
            for (Index k = 0; k < slopes->cols(); ++k)
                slopes->col(k) = momentsAtRadius(slopes->col(k)) / hanging.weight;
        return residual.allFinite();
    };
    return minimise(hanging, evaluate, kEquations, kSolved, x);
}

// How far the bay goes from the drawing by the stiffness there, turns at kMotionRadius [m], and the
// slopes of that with the stiffness held. None: it is not stable as drawn.
bool firstRest(const Hanging& hanging, Suspension& suspension, const Unknowns& x, Vector6d& motion,
               Slopes* slopes)
{
    hang(suspension, hanging, x);
    Matrix6d K = elasticity(suspension, {}).hessian;
    if (!K.allFinite())
        return false;
    K.bottomRows<3>() /= kMotionRadius;
    K.rightCols<3>() /= kMotionRadius;
    const auto L = choleskyFactor(K);
    if (!L)
        return false;
    motion = solveCholesky(*L, momentsAtRadius(unbalanced(hanging, x, slopes)));
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
bool restSlopes(const Hanging& hanging, const Suspension& suspension, const Unknowns& x,
                const Pose& pose, Slopes& slopes)
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
            Unknowns there = x;
            there[k] += side * kDifference * hanging.units[k];
            hang(all, hanging, there);
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
void lessenRest(const Hanging& hanging, Suspension suspension, Unknowns& x)
{
    constexpr double kEnough = 1e-7;  // [m], below what rounding the mounts leaves
    const auto evaluate = [&](const Unknowns& at, Vector6d& motion, Slopes* slopes) {
        hang(suspension, hanging, at);
        const auto pose = restPose(suspension, 1.0);
        if (!pose)
            return false;
        motion << pose->shift, kMotionRadius * pose->theta;
        return !slopes || restSlopes(hanging, suspension, at, *pose, *slopes);
    };
    minimise(hanging, evaluate, kTrueRest, kEnough, x);
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
bool isAmongTubes(const Hanging& hanging)
{
    std::vector<double> angles;
    for (const Hung& hung : hanging.tubes)
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
double strongestPull(const Hanging& hanging)
{
    Unknowns x = hanging.low;
    if (!hanging.drilled) {
        x.head(hanging.stretches).setConstant(std::numbers::pi / 2);
        x.tail(hanging.stretches).setConstant(hanging.start.tail(hanging.stretches).mean());
    }
    double sum = 0.0;
    for (std::size_t i = 0; i < hanging.tubes.size(); ++i) {
        const Pull pull = pullOf(hanging, x, i);
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
std::optional<LevelFailure> hopeless(const Hanging& hanging)
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
    const Hanging hanging = hangingOf(bay, suspension, tube, mounts);
    const Vector6d now = momentsAtRadius(unbalanced(hanging, hanging.start, nullptr));
    Vector6d motion;
    const auto firstRestAt = [&](const Unknowns& at, Vector6d& there, Slopes* slopes) {
        return firstRest(hanging, suspension, at, there, slopes);
    };
    if (now.norm() < kNearlyBalanced * hanging.weight &&
        firstRestAt(hanging.start, motion, nullptr) &&
        isLevelTo(motion.head<3>(), motion.tail<3>() / kMotionRadius, kUntouchedShift_mm,
                  kUntouchedTurn_deg))
        return mounts;

    Unknowns x = hanging.start;
    if (solveEquations(hanging, x))
        return mountsAt(hanging, x, mounts);

    // No solution: the least rest by the stiffness as drawn, from wherever that is smaller.
    Vector6d balanced;
    const bool isStable = firstRestAt(hanging.start, motion, nullptr);
    if (!firstRestAt(x, balanced, nullptr))
        return isStable ? mounts : mountsAt(hanging, x, mounts);
    if (isStable && motion.norm() < balanced.norm())
        x = hanging.start;
    minimise(hanging, firstRestAt, kFirstRest, 0.0, x);
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
    const Hanging hanging = hangingOf(bay, mounted->suspension, tube, mounts);
    const auto why = hopeless(hanging);
    const auto present = rested(bay, tube, mounts);
    if (present && (!best || present->size() < best->size()))
        best = present;
    if (!best)
        return why ? tl::unexpected(Error{Errc::NoAnswer, why->text, "mounts"})
                   : tl::unexpected(best.error());
    const auto from = makeMountedBay(bay, tube, best->mounts);
    const Hanging nearest = hangingOf(bay, from->suspension, tube, best->mounts);
    Unknowns x = nearest.start.cwiseMax(hanging.low).cwiseMin(hanging.high);
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
