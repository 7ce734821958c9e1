// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"
#include "core/calibrate/pluck_model.h"

#include <functional>
#include <limits>
#include <optional>
#include <stop_token>

/// The way down to what the rubber most likely is. Internal to the calibrate room.
namespace stillbay {

/// A minimum over ln ρ_d, ln η and ln κ, with the second derivatives there.
struct LowestRubber {
    Vector3d at = Vector3d::Zero();
    double value = std::numeric_limits<double>::infinity();
    Matrix3d hessian = Matrix3d::Identity();

    RubberFigures rubber() const;
    /// Of what the squares leave open, over twice their variance; none where that has no bounds.
    std::optional<Matrix3d> covariance() const;
};

/// Newton's method, lifted where the surface is not a bowl; steps that do not descend are
/// shortened.
///
/// @param f     over ln ρ_d, ln η and ln κ; may be infinite
/// @param free  2: the tension stays; 3
LowestRubber descend(const std::function<double(const Vector3d&)>& f, const Vector3d& start,
                     Eigen::Index free, const std::stop_token& stop);

RubberFigures rubberAt(const Vector3d& logarithms);
Vector3d logarithmsOf(const RubberFigures& rubber);

}  // namespace stillbay
