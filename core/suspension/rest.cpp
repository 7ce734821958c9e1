// SPDX-License-Identifier: MIT
#include "core/base/rotation.h"
#include "core/base/units.h"
#include "core/suspension/motion_words.h"
#include "core/suspension/suspension.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

constexpr int kMaxSteps = 200;
constexpr double kForceTolerance = 1e-11;  // of weight plus tube forces
constexpr double kFirstTrust = 5e-3;       // [m]
constexpr double kSmallestTrust = 1e-12;   // [m]
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
    const Eigen::LLT<Matrix6d> factor(H);
    if (factor.info() == Eigen::Success) {
        const Vector6d step = -factor.solve(gradient);
        if (step.allFinite() && step.norm() <= trust)
            return step;
    }
    const Eigen::SelfAdjointEigenSolver<Matrix6d> eigen(H);
    const Vector6d& lambda = eigen.eigenvalues();
    const Vector6d c = eigen.eigenvectors().transpose() * gradient;
    const auto stepAt = [&](double lift) -> Vector6d {
        return -(eigen.eigenvectors() * (c.array() / (lambda.array() + lift)).matrix());
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
    if (Eigen::LLT<Matrix6d>(H - omegaFree * omegaFree * M).info() == Eigen::Success)
        return pose;
    const Matrix6d L_inverse = Eigen::LLT<Matrix6d>(M).matrixL().solve(Matrix6d::Identity());
    const Eigen::SelfAdjointEigenSolver<Matrix6d> eigen(
        Matrix6d(L_inverse * H * L_inverse.transpose()));
    Vector6d motion = L_inverse.transpose() * eigen.eigenvectors().col(0);
    motion.tail<3>() *= kMotionRadius;
    return fail(Errc::NoAnswer,
                phrase("nothing holds the bay in one motion: the %1 freely; add tubes or spread "
                       "them",
                       motionInWords(motion)),
                "mounts.points");
}

Error crushed(const Suspension& suspension, const Pose& pose, double loadFactor)
{
    const std::vector<double> lengths = tubeLengths(suspension, pose);
    const auto shortest = std::min_element(lengths.begin(), lengths.end());
    return {Errc::NoAnswer,
            phrase("no stable rest at %1 g: the tube is crushed to %2 of its free length and the "
                   "bay buckles",
                   exact(loadFactor), fixed(*shortest / suspension.tube.freeLength, 2)),
            "mounts.points[" + std::to_string(shortest - lengths.begin()) + "]"};
}

}  // namespace

Result<Pose> restPose(const Suspension& suspension, double loadFactor)
{
    const Vector6d scale = stepScale();
    const double weight = suspension.bay.mass * kGravity * loadFactor;
    const auto gravityEnergy = [weight](const Pose& pose) {
        return weight * pose.shift.z();
    };

    Pose pose;
    Elasticity now = elasticity(suspension, pose);
    if (!std::isfinite(now.energy))
        return tl::unexpected(crushed(suspension, pose, loadFactor));
    double trust = kFirstTrust;
    for (int step = 0; step < kMaxSteps; ++step) {
        Vector6d gradient = now.gradient;
        gradient.z() += weight;
        const Vector6d scaledGradient = gradient.cwiseProduct(scale);
        const double forces =
            weight + now.gradient.head<3>().norm() +
            static_cast<double>(suspension.attachments.size()) * suspension.tube.GA0 * 0.1;
        if (scaledGradient.norm() <= kForceTolerance * forces)
            return checkedStable(suspension, pose, now.hessian);

        const Matrix6d H = scale.asDiagonal() * now.hessian * scale.asDiagonal();
        const Vector6d scaledStep = trustStep(H, scaledGradient, trust);
        const Pose next = moved(pose, scaledStep.cwiseProduct(scale));
        const Elasticity there = elasticity(suspension, next);
        const double predicted =
            -(scaledGradient.dot(scaledStep) + 0.5 * scaledStep.dot(H * scaledStep));
        const double gained = now.energy + gravityEnergy(pose) - there.energy - gravityEnergy(next);
        // Near the end both are rounding noise of the energy: trust Newton there.
        const double noise = 1e-13 * (std::abs(now.energy) + std::abs(gravityEnergy(pose)));
        if (std::isfinite(there.energy) && gained >= 0.1 * predicted - noise) {
            if (gained > 0.7 * predicted)
                trust = std::max(trust, 2 * scaledStep.norm());
            pose = next;
            now = there;
        } else {
            trust = 0.3 * scaledStep.norm();
            if (trust < kSmallestTrust)
                return tl::unexpected(crushed(suspension, pose, loadFactor));
        }
    }
    return fail(
        Errc::NoAnswer,
        phrase("no rest pose found at %1 g: the iteration did not converge", exact(loadFactor)),
        "mounts");
}

}  // namespace stillbay
