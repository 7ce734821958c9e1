// SPDX-License-Identifier: MIT
#include "core/calibrate/lowest_rubber.h"

#include "core/base/solve.h"

#include <algorithm>
#include <cmath>

namespace stillbay {
namespace {

constexpr double kLeastLoss = 0.005, kMostLoss = 1.0;  // where a fit is looked for

struct Slopes {
    Vector3d gradient = Vector3d::Zero();
    Matrix3d hessian = Matrix3d::Identity();
};

// By central differences in the first `free` directions.
Slopes slopesAt(const std::function<double(const Vector3d&)>& f, const LowestRubber& there,
                Eigen::Index free)
{
    const Vector3d step(1e-3, 1e-2, 1e-3);
    Slopes slopes;
    const auto moved = [&](Eigen::Index i, double a, Eigen::Index j, double b) {
        Vector3d point = there.at;
        point[i] += a * step[i];
        point[j] += b * step[j];
        return f(point);
    };
    for (Eigen::Index i = 0; i < free; ++i) {
        const double more = moved(i, 1, i, 0), less = moved(i, -1, i, 0);
        slopes.gradient[i] = (more - less) / (2 * step[i]);
        slopes.hessian(i, i) = (more - 2 * there.value + less) / (step[i] * step[i]);
        for (Eigen::Index j = 0; j < i; ++j)
            slopes.hessian(i, j) = slopes.hessian(j, i) =
                (moved(i, 1, j, 1) - moved(i, 1, j, -1) - moved(i, -1, j, 1) +
                 moved(i, -1, j, -1)) /
                (4 * step[i] * step[j]);
    }
    return slopes;
}

}  // namespace

RubberFigures rubberAt(const Vector3d& logarithms)
{
    return {std::exp(logarithms[0]), std::exp(logarithms[1]), std::exp(logarithms[2])};
}

Vector3d logarithmsOf(const RubberFigures& rubber)
{
    return {std::log(rubber.ratio), std::log(std::clamp(rubber.loss, kLeastLoss, kMostLoss)),
            std::log(rubber.tension)};
}

RubberFigures LowestRubber::rubber() const
{
    return rubberAt(at);
}

std::optional<Matrix3d> LowestRubber::covariance() const
{
    constexpr double kMostOpen = 1e6;
    const auto bowl = denseCholesky(hessian);
    if (!bowl)
        return std::nullopt;
    const Matrix3d covariance = solveDenseCholesky(*bowl, Matrix3d::Identity());
    const bool isDetermined =
        (covariance.diagonal().array() * hessian.diagonal().array() < kMostOpen).all();
    return isDetermined ? std::optional(covariance) : std::nullopt;
}

LowestRubber descend(const std::function<double(const Vector3d&)>& f, const Vector3d& start,
                     Eigen::Index free, const std::stop_token& stop)
{
    constexpr double kLongest = 0.15, kDone = 1e-6;
    LowestRubber lowest{.at = start, .value = f(start)};
    for (int k = 0; k < 40 && !stop.stop_requested(); ++k) {
        const Slopes slopes = slopesAt(f, lowest, free);
        lowest.hessian = slopes.hessian;
        const auto bowl = denseCholesky(slopes.hessian);
        const Vector3d step = bowl ? Vector3d(-solveDenseCholesky(*bowl, slopes.gradient))
                                   : Vector3d(-slopes.gradient.array() /
                                              (slopes.hessian.diagonal().array().abs() + 1e-300));
        const double length =
            std::max({std::abs(step[0]), 0.3 * std::abs(step[1]), std::abs(step[2])});
        double shorter = std::min(1.0, kLongest / std::max(length, 1e-300));
        bool isLower = false;
        for (int cut = 0; cut < 12 && !isLower; ++cut, shorter *= 0.4) {
            const Vector3d next = lowest.at + shorter * step;
            const double value = f(next);
            if (value < lowest.value) {
                isLower = true;
                lowest.at = next;
                lowest.value = value;
            }
        }
        if (!isLower || length * shorter < kDone)
            break;
    }
    return lowest;
}

}  // namespace stillbay
