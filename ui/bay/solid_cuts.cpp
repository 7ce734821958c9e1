// SPDX-License-Identifier: MIT
#include "ui/bay/craft_shape.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <limits>
#include <optional>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr double kLeastSine = 1e-6;  // between two planes that cut
constexpr double kShortest_mm = 1e-3;

using Box = Eigen::AlignedBox3d;

// From where to where a line runs inside a convex face in whose plane it lies.
std::optional<std::pair<double, double>> inside(const Face& face, const Vector3d& normal,
                                                const Vector3d& start, const Vector3d& along)
{
    double from = -std::numeric_limits<double>::max(), to = -from;
    for (std::size_t k = 0; k < face.corners.size(); ++k) {
        const Vector3d& corner = face.corners[k];
        const Vector3d inwards = normal.cross(face.corners[(k + 1) % face.corners.size()] - corner);
        const double height = inwards.dot(start - corner), slope = inwards.dot(along);
        if (slope == 0.0) {
            if (height < 0.0)
                return std::nullopt;
        } else if (slope > 0.0) {
            from = std::max(from, -height / slope);
        } else {
            to = std::min(to, -height / slope);
        }
    }
    return from < to ? std::optional(std::pair(from, to)) : std::nullopt;
}

void addCut(std::vector<Edge>& cuts, const Face& a, const Face& b)
{
    const Vector3d n = a.normal(), m = b.normal();
    Vector3d along = n.cross(m);
    if (!(along.norm() > kLeastSine))
        return;
    along.normalize();
    // The point of both planes nearest to a corner of a.
    const Vector3d& corner = a.corners.front();
    const Vector3d downhill = m - m.dot(n) * n;
    const Vector3d start =
        corner + m.dot(b.corners.front() - corner) / downhill.squaredNorm() * downhill;
    const auto inA = inside(a, n, start, along), inB = inside(b, m, start, along);
    if (!inA || !inB)
        return;
    const double from = std::max(inA->first, inB->first);
    const double to = std::min(inA->second, inB->second);
    if (to - from > kShortest_mm)
        cuts.push_back(
            {a.piece, a.index, start + from * along, start + to * along, {n, m}, false, true});
}

}  // namespace

std::vector<Edge> cutsOf(const std::vector<Face>& faces)
{
    std::vector<Box> boxes;
    for (const Face& face : faces) {
        Box box;
        for (const Vector3d& corner : face.corners)
            box.extend(corner);
        boxes.push_back(box);
    }
    std::vector<Edge> cuts;
    for (std::size_t i = 0; i < faces.size(); ++i)
        for (std::size_t j = 0; j < i; ++j) {
            const Face &a = faces[i], &b = faces[j];
            if (isGlass(a.piece) || isGlass(b.piece) || !boxes[i].intersects(boxes[j]) ||
                (a.piece == b.piece && a.index == b.index))
                continue;
            addCut(cuts, a, b);
        }
    return cuts;
}

}  // namespace stillbay::ui
