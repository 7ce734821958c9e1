// SPDX-License-Identifier: MIT
#include "core/base/rotation.h"
#include "core/base/solve.h"
#include "core/base/units.h"
#include "core/suspension/motion_text.h"
#include "core/suspension/suspension.h"
#include "core/suspension/tube_terms.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

constexpr int kMaxSteps = 200;
constexpr double kForceTolerance = 1e-11;  // of weight plus tube forces
constexpr double kFirstTrust = 5e-3;       // [m]
constexpr double kSmallestTrust = 1e-12;   // [m]
constexpr double kFineGain = 1e-9;         // of the energy; below, rounding may hide a gain
constexpr double kFreeMotion_hz = 0.05;    // below this nothing holds the bay

// Steps are measured in metres: a rotation counts at kMotionRadius.
Vector6d stepScale()
{
    Vector6d scale = Vector6d::Ones();
    scale.tail<3>().setConstant(1 / kMotionRadius);
    return scale;
}

Pose moved(const Pose& pose, const Vector6d& step)
{
    Pose next;
    next.shift = pose.shift + step.head<3>();
    next.R = rotationFromVector(step.tail<3>()) * pose.R;
    next.theta = vectorFromRotation(next.R);
    return next;
}

// Newton's step on the scaled energy, at most `trust` long; a Hessian that is not positive definite
// is lifted until it is.
Vector6d trustStep(const Matrix6d& H, const Vector6d& gradient, double trust)
{
    if (const auto L = choleskyFactor(H)) {
        const Vector6d step = -solveCholesky(*L, gradient);
        if (step.allFinite() && step.norm() <= trust)
            return step;
    }
    const SymmetricEigen eigen = symmetricEigen(H);
    const Vector6d& lambda = eigen.values;
    const Vector6d c = eigen.vectors.transpose() * gradient;
    const auto stepAt = [&](double lift) -> Vector6d {
        return -(eigen.vectors * (c.array() / (lambda.array() + lift)).matrix());
    };
    // |step| falls as the lift grows: bracket, then bisect in the logarithm.
    const double floor = std::max(0.0, -lambda[0]) + 1e-12 * lambda.cwiseAbs().maxCoeff() + 1e-300;
    if (const Vector6d step = stepAt(floor); step.norm() <= trust)
        return step;
    double low = floor, high = floor + c.norm() / trust;
    for (int k = 0; k < 60 && high > low * (1 + 1e-3); ++k) {
        const double middle = std::sqrt(low * high);
        (stepAt(middle).norm() > trust ? low : high) = middle;
    }
    return stepAt(high);
}

// A rest pose must hold the bay in all six motions: no ω² of H φ = ω² M φ at or below that of a
// free one, so H − ω² M is positive definite.
Result<Pose> checkedStable(const Suspension& suspension, const Pose& pose, const Matrix6d& H)
{
    const Matrix6d M = massMatrix(suspension.bay, pose.R);
    const double omegaFree = 2 * std::numbers::pi * kFreeMotion_hz;
    if (choleskyFactor(H - omegaFree * omegaFree * M))
        return pose;
    const Matrix6d L_inverse = inverse(choleskyFactor(M).value());
    const SymmetricEigen eigen = symmetricEigen(L_inverse * H * L_inverse.transpose());
    Vector6d motion = L_inverse.transpose() * eigen.vectors.col(0);
    motion.tail<3>() *= kMotionRadius;
    return fail(Errc::NoAnswer,
                phrase("nothing holds the bay in one motion (%1): add tubes or spread them",
                       motionText(motion)),
                "mounts.points");
}

std::string pointName(std::size_t tube)
{
    return "mounts.points[" + std::to_string(tube) + "]";
}

// The tube that is pushed together most, and to which share of its free length.
struct Crushed {
    std::size_t tube = 0;
    double share = 0.0;
};

Crushed mostCrushed(const Suspension& suspension, const Pose& pose)
{
    const std::vector<double> lengths = tubeLengths(suspension, pose);
    const auto tubeAt = [&](std::size_t i) -> const Tube& {
        return suspension.tubeOf(suspension.attachments[i]);
    };
    std::size_t worst = 0;
    for (std::size_t i = 1; i < lengths.size(); ++i)
        if (effectiveStretch(tubeAt(i), lengths[i]) <
            effectiveStretch(tubeAt(worst), lengths[worst]))
            worst = i;
    return {worst, lengths[worst] / tubeAt(worst).freeLength};
}

Error crushedAsDrawn(const Suspension& suspension)
{
    const Crushed crushed = mostCrushed(suspension, {});
    return {Errc::NoAnswer,
            phrase("as drawn the tube is crushed to %1 of its free length, beyond what the model "
                   "covers",
                   fixed(crushed.share, 2)),
            pointName(crushed.tube)};
}

Error crushedByLoad(const Suspension& suspension, const Pose& pose, double loadFactor)
{
    const Crushed crushed = mostCrushed(suspension, pose);
    return {Errc::NoAnswer,
            phrase("no stable rest at %1 g: the tube is crushed to %2 of its free length, beyond "
                   "what the model covers",
                   exact(loadFactor), fixed(crushed.share, 2)),
            pointName(crushed.tube)};
}

Error buckled(std::size_t tube, double loadFactor)
{
    return {Errc::NoAnswer,
            phrase("no stable rest at %1 g: the tube gives way sideways and the bay buckles",
                   exact(loadFactor)),
            pointName(tube)};
}

Error notConverged(double loadFactor)
{
    return {Errc::NoAnswer,
            phrase("no rest pose found at %1 g: the iteration did not converge", exact(loadFactor)),
            "mounts"};
}

// Why no step goes on from `pose`. A clamped tube under pressure bends out and takes energy with
// it, without a bottom: the way down then ends at a place that is not stable, with a tube below the
// energy of a straight one, which is never negative.
Error stuck(const Suspension& suspension, const Pose& pose, const Matrix6d& H, double loadFactor)
{
    std::vector<double> energies;
    for (const Attachment& attachment : suspension.attachments)
        energies.push_back(
            tubeTerms(suspension.tubeOf(attachment), attachment, suspension.bay.centre, pose)
                .energy);
    const auto lowest = std::min_element(energies.begin(), energies.end());
    const bool isStable = choleskyFactor(H).has_value();
    return !isStable && *lowest < 0
               ? buckled(static_cast<std::size_t>(lowest - energies.begin()), loadFactor)
               : notConverged(loadFactor);
}

}  // namespace

Result<Pose> restPose(const Suspension& suspension, double loadFactor)
{
    const Vector6d scale = stepScale();
    const double weight = suspension.bay.mass * kGravity * loadFactor;
    const auto gravityEnergy = [weight](const Pose& pose) {
        return weight * pose.shift.z();
    };
    const auto forces = [&](const Elasticity& at) -> Vector6d {
        return (at.gradient + weight * Vector6d::Unit(2)).cwiseProduct(scale);
    };

    Pose pose;
    Elasticity now = elasticity(suspension, pose);
    if (!std::isfinite(now.energy))
        return tl::unexpected(crushedAsDrawn(suspension));
    double trust = kFirstTrust;
    for (int step = 0; step < kMaxSteps; ++step) {
        const Vector6d scaledGradient = forces(now);
        const double allForces =
            weight + now.gradient.head<3>().norm() +
            static_cast<double>(suspension.attachments.size()) * suspension.tube.GA0 * 0.1;
        if (scaledGradient.norm() <= kForceTolerance * allForces)
            return checkedStable(suspension, pose, now.hessian);

        const Matrix6d H = scale.asDiagonal() * now.hessian * scale.asDiagonal();
        const Vector6d scaledStep = trustStep(H, scaledGradient, trust);
        const Pose next = moved(pose, scaledStep.cwiseProduct(scale));
        const Elasticity there = elasticity(suspension, next);
        const double predicted =
            -(scaledGradient.dot(scaledStep) + 0.5 * scaledStep.dot(H * scaledStep));
        const double gained = now.energy + gravityEnergy(pose) - there.energy - gravityEnergy(next);
        // Near the end both are rounding noise of the energy: trust Newton there, and the forces
        // where they shrink at once.
        const double size = std::abs(now.energy) + std::abs(gravityEnergy(pose));
        const bool isFine =
            predicted <= kFineGain * size && forces(there).norm() < 0.5 * scaledGradient.norm();
        if (std::isfinite(there.energy) && (isFine || gained >= 0.1 * predicted - 1e-13 * size)) {
            if (gained > 0.7 * predicted)
                trust = std::max(trust, 2 * scaledStep.norm());
            pose = next;
            now = there;
        } else {
            trust = 0.3 * scaledStep.norm();
            if (trust < kSmallestTrust)
                return tl::unexpected(std::isfinite(there.energy)
                                          ? stuck(suspension, pose, now.hessian, loadFactor)
                                          : crushedByLoad(suspension, pose, loadFactor));
        }
    }
    return tl::unexpected(notConverged(loadFactor));
}

}  // namespace stillbay
