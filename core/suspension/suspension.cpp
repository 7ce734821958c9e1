// SPDX-License-Identifier: MIT
#include "core/suspension/suspension.h"

#include "core/suspension/tube_terms.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace stillbay {
namespace {

// The a, b blocks of C* take the loss of the rubber but not of the tension.
Matrix8cd dynamicHessian(const TubeTerms& t, const DynamicEnds& ends, Complex g)
{
    Matrix8cd C = g * t.hessianByMeasures().cast<Complex>();
    C.block<3, 3>(1, 1).diagonal().setConstant(ends.a);
    C.block<3, 3>(4, 4).diagonal().setConstant(ends.a);
    C.block<3, 3>(1, 4).diagonal().setConstant(ends.b);
    C.block<3, 3>(4, 1).diagonal().setConstant(ends.b);
    return C;
}

}  // namespace

Elasticity elasticity(const Suspension& suspension, const Pose& pose)
{
    Elasticity sum;
    for (const Attachment& attachment : suspension.attachments) {
        const Tube& tube = suspension.tubeOf(attachment);
        const TubeTerms t = tubeTerms(tube, attachment, suspension.bay.centre, pose);
        if (!(effectiveStretch(tube, t.length) > kSmallestStretch)) {
            sum.energy = std::numeric_limits<double>::quiet_NaN();
            return sum;
        }
        sum.energy += t.energy;
        sum.gradient += t.B.transpose() * t.f;
        sum.hessian += t.byMotion(t.hessianByMeasures()) + t.geometric;
    }
    return sum;
}

std::vector<double> tubeLengths(const Suspension& suspension, const Pose& pose)
{
    const Vector3d& c = suspension.bay.centre;
    std::vector<double> lengths;
    for (const Attachment& attachment : suspension.attachments) {
        const Vector3d p_OB = c + pose.shift + pose.R * (attachment.p_OB - c);
        lengths.push_back((p_OB - attachment.p_OA).norm());
    }
    return lengths;
}

std::vector<double> tubeBends(const Suspension& suspension, const Pose& pose)
{
    const Vector3d& c = suspension.bay.centre;
    std::vector<double> bends;
    for (const Attachment& attachment : suspension.attachments) {
        const Vector3d e0 = (attachment.p_OB - attachment.p_OA).normalized();
        const Vector3d e =
            (c + pose.shift + pose.R * (attachment.p_OB - c) - attachment.p_OA).normalized();
        const double least = std::min(e.dot(e0), e.dot(pose.R * e0));
        bends.push_back(std::acos(std::clamp(least, -1.0, 1.0)));
    }
    return bends;
}

Matrix6cd dynamicStiffness(const Suspension& suspension, const Pose& pose, Complex g)
{
    Matrix6cd K = Matrix6cd::Zero();
    for (const Attachment& attachment : suspension.attachments) {
        const Tube& tube = suspension.tubeOf(attachment);
        const TubeTerms t = tubeTerms(tube, attachment, suspension.bay.centre, pose);
        const Matrix8cd C = dynamicHessian(t, dynamicEnds(tube, t.length, g), g);
        K.real() += t.byMotion(C.real()) + t.geometric;
        K.imag() += t.byMotion(C.imag());
    }
    return K;
}

}  // namespace stillbay
