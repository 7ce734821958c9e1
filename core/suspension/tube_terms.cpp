// SPDX-License-Identifier: MIT
#include "core/suspension/tube_terms.h"

#include "core/base/rotation.h"

namespace stillbay {
namespace {

// Second derivative of g·exp[θ]× v by θ at θ = 0.
Matrix3d rotationCurvature(const Vector3d& g, const Vector3d& v)
{
    return 0.5 * (g * v.transpose() + v * g.transpose()) - g.dot(v) * Matrix3d::Identity();
}

}  // namespace

Matrix8d TubeTerms::hessianByMeasures() const
{
    const double squares = 0.5 * (alpha_f.squaredNorm() + alpha_b.squaredNorm());
    const double product = alpha_f.dot(alpha_b);
    const Vector3d slope_f = laws.a.d1 * alpha_f + laws.b.d1 * alpha_b;
    const Vector3d slope_b = laws.a.d1 * alpha_b + laws.b.d1 * alpha_f;

    Matrix8d C = Matrix8d::Zero();
    C(0, 0) = laws.energy.d2 + laws.a.d2 * squares + laws.b.d2 * product +
              0.5 * laws.torsion.d2 * twist * twist;
    C.block<1, 3>(0, 1) = slope_f.transpose();
    C.block<1, 3>(0, 4) = slope_b.transpose();
    C(0, 7) = laws.torsion.d1 * twist;
    C.col(0) = C.row(0).transpose();
    C.block<3, 3>(1, 1).diagonal().setConstant(laws.a.value);
    C.block<3, 3>(4, 4).diagonal().setConstant(laws.a.value);
    C.block<3, 3>(1, 4).diagonal().setConstant(laws.b.value);
    C.block<3, 3>(4, 1).diagonal().setConstant(laws.b.value);
    C(7, 7) = laws.torsion.value;
    return C;
}

Matrix6d TubeTerms::byMotion(const Matrix8d& C) const
{
    // Written out by lazyProduct(): these are too small for the packing of a large product.
    const Matrix86d CB = C.lazyProduct(B);
    return B.transpose().lazyProduct(CB);
}

TubeTerms tubeTerms(const Tube& tube, const Attachment& attachment, const Vector3d& centre,
                    const Pose& pose)
{
    // Geometry at the pose: chord e, drawn end normals e⁰ (airframe) and n (bay), arm r.
    const Vector3d e0 = (attachment.p_OB - attachment.p_OA).normalized();
    const Vector3d r = pose.R * (attachment.p_OB - centre);
    const Vector3d d = centre + pose.shift + r - attachment.p_OA;
    const Vector3d n = pose.R * e0;
    TubeTerms t;
    t.length = d.norm();
    const Vector3d e = d / t.length;
    t.alpha_f = e.cross(e0);
    t.alpha_b = e.cross(n);
    t.twist = pose.theta.dot(e);
    t.laws = tubeLaws(tube, t.length);

    // Energy and its first derivatives by the measures.
    const double squares = 0.5 * (t.alpha_f.squaredNorm() + t.alpha_b.squaredNorm());
    const double product = t.alpha_f.dot(t.alpha_b);
    const double twistSquare = 0.5 * t.twist * t.twist;
    t.energy = t.laws.energy.value + t.laws.a.value * squares + t.laws.b.value * product +
               t.laws.torsion.value * twistSquare;
    const double f_l = t.laws.energy.d1 + t.laws.a.d1 * squares + t.laws.b.d1 * product +
                       t.laws.torsion.d1 * twistSquare;
    const Vector3d f_f = t.laws.a.value * t.alpha_f + t.laws.b.value * t.alpha_b;
    const Vector3d f_b = t.laws.a.value * t.alpha_b + t.laws.b.value * t.alpha_f;
    const double f_t = t.laws.torsion.value * t.twist;
    t.f << f_l, f_f, f_b, f_t;

    // First derivatives of the measures by the motion (u, θ): of e by u is E, by θ is E_θ.
    const Matrix3d A = inverseLeftJacobian(pose.theta), rCross = skew(r), e0Cross = skew(e0),
                   nCross = skew(n);
    const Matrix3d Q = Matrix3d::Identity() - e * e.transpose();
    const Matrix3d E = Q / t.length, E_theta = -E * rCross;
    t.B << e.transpose(), r.cross(e).transpose(),           //
        -e0Cross * E, -e0Cross * E_theta,                   //
        -nCross * E, -nCross * E_theta - skew(e) * nCross,  //
        (E * pose.theta).transpose(), pose.theta.transpose() * E_theta + e.transpose() * A;

    // Second derivatives of the measures, weighted by f. All that is linear in e shares one w.
    const Vector3d w = e0.cross(f_f) + n.cross(f_b) + f_t * pose.theta;
    const Vector3d Qw = Q * w;
    const Matrix3d H_d =
        f_l / t.length * Q -
        (e * Qw.transpose() + Qw * e.transpose() + e.dot(w) * Q) / (t.length * t.length);
    const Vector3d g_b = f_l * e + Qw / t.length;
    const Matrix3d G = f_t * A + skew(f_b) * nCross;  // what a turn of n and of the pose adds
    const Matrix3d turned = E_theta.transpose() * G;
    const Matrix3d H_ut = E * G - H_d * rCross;
    t.geometric << H_d, H_ut, H_ut.transpose(),
        turned + turned.transpose() - rCross * H_d * rCross + rotationCurvature(g_b, r) +
            rotationCurvature(f_b.cross(e), n) + f_t * logCurvature(pose.theta, e);
    return t;
}

}  // namespace stillbay
