// SPDX-License-Identifier: MIT
#include "ui/bay/elastic_marks.h"

#include "core/base/rotation.h"
#include "core/base/units.h"

#include <algorithm>

namespace stillbay::ui {
namespace {

constexpr double kLeastHalf_mm = 10.0;  // of an axis

// How far the points that hold the bay reach from its centre of mass along each axis at rest.
Vector3d reachOfPoints_mm(const Setup& setup, const Vector3d& centre_mm, const Matrix3d& R)
{
    Vector3d reach = Vector3d::Constant(kLeastHalf_mm);
    for (const MountPoint& point : setup.mounts.points) {
        const Vector3d p(point.bay_mm[0], point.bay_mm[1], point.bay_mm[2]);
        reach = reach.cwiseMax(Vector3d((R * (p - centre_mm)).cwiseAbs()));
    }
    return reach;
}

}  // namespace

ElasticMarks elasticMarks(const Setup& setup, const Assessment& assessment)
{
    const Vector3d centre_mm = assessment.bay.centre / unit::mm;
    const Matrix3d R = rotationFromVector(assessment.rest.rotation);
    const auto onBay = [&](const Vector3d& fromCentre_mm) {
        return Vector3d(centre_mm + R.transpose() * fromCentre_mm);
    };
    const ElasticCentre& elastic = assessment.elastic_centre;
    const Vector3d p = elastic.p_BE / unit::mm;
    const Vector3d half = reachOfPoints_mm(setup, centre_mm, R);
    const double roll = elastic.rollHeight / unit::mm, pitch = elastic.pitchHeight / unit::mm;
    return {.centre_mm = onBay(p),
            .rollAxis_mm = {onBay({p.x() + half.x(), p.y(), roll}),
                            onBay({p.x() - half.x(), p.y(), roll})},
            .pitchAxis_mm = {onBay({p.x(), p.y() + half.y(), pitch}),
                             onBay({p.x(), p.y() - half.y(), pitch})}};
}

}  // namespace stillbay::ui
