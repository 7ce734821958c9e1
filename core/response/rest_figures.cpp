// SPDX-License-Identifier: MIT
#include "core/response/rest_figures.h"

#include "core/base/rotation.h"
#include "core/base/units.h"

#include <algorithm>
#include <cmath>

namespace stillbay {
namespace {

Vector3d corner(const Part& part, int index)
{
    Vector3d p;
    for (Eigen::Index axis = 0; axis < 3; ++axis) {
        const auto k = static_cast<std::size_t>(axis);
        const double half = 0.5 * part.size_mm[k];
        p[axis] = part.centre_mm[k] + ((index >> axis) & 1 ? half : -half);
    }
    return p * unit::mm;
}

}  // namespace

RestFigures restFigures(const Suspension& suspension, const Pose& pose, double loadFactor)
{
    RestFigures figures{loadFactor, pose.shift, pose.theta, {}};
    const std::vector<double> lengths = tubeLengths(suspension, pose);
    const std::vector<double> bends = tubeBends(suspension, pose);
    for (std::size_t i = 0; i < lengths.size(); ++i) {
        const Tube& tube = suspension.tubeOf(suspension.attachments[i]);
        const double length = lengths[i];
        const double tension = tubeLaws(tube, length).energy.d1;
        TubeState state = TubeState::Taut;
        if (tension < 0)
            state = tube.clamped && -tension >= bucklingLoad(tube, length) ? TubeState::Buckled
                                                                           : TubeState::Slack;
        const Attachment& ends = suspension.attachments[i];
        const Vector3d centre = suspension.bay.centre;
        const Vector3d up = ends.p_OA - (centre + pose.shift + pose.R * (ends.p_OB - centre));
        figures.tubes.push_back({length / tube.freeLength, tension, state,
                                 tube.clamped ? bends[i] : 0.0,
                                 std::atan2(up.z(), std::hypot(up.x(), up.y()))});
    }
    return figures;
}

double travelBetween(const std::vector<Part>& parts, const Vector3d& centre,
                     const RestFigures& from, const RestFigures& to)
{
    const Matrix3d R_from = rotationFromVector(from.rotation),
                   R_to = rotationFromVector(to.rotation);
    double farthest = 0.0;
    for (const Part& part : parts)
        for (int index = 0; index < 8; ++index) {
            const Vector3d p = corner(part, index) - centre;
            farthest = std::max(farthest, (to.shift - from.shift + (R_to - R_from) * p).norm());
        }
    return farthest;
}

}  // namespace stillbay
