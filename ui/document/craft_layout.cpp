// SPDX-License-Identifier: MIT
#include "ui/document/craft_layout.h"

#include "core/setup/mount_layout.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>
#include <vector>

namespace stillbay::ui {
namespace {

constexpr double kTurn_deg = 360.0;
constexpr double kSame_mm = 0.005;  // half of the finest step that a hole is rounded to

constexpr std::size_t kForward = 0, kLeft = 1;  // the coordinate that a mirror reverses

double mirroredAzimuth_deg(double azimuth_deg, std::size_t axis)
{
    const double reversed = axis == kLeft ? -azimuth_deg : kTurn_deg / 2 - azimuth_deg;
    return std::fmod(reversed + 2 * kTurn_deg, kTurn_deg);  // the field reaches one turn each way
}

MountPoint mirrored(MountPoint point, std::size_t axis)
{
    point.bay_mm[axis] = 0.0 - point.bay_mm[axis];  // keeps a plain zero
    if (point.anchor_mm)
        (*point.anchor_mm)[axis] = 0.0 - (*point.anchor_mm)[axis];
    else
        point.azimuth_deg = mirroredAzimuth_deg(point.azimuth_deg, axis);
    point.extras.clear();
    return point;
}

bool isSamePlace(const Triple& a, const Triple& b)
{
    return std::hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]) < kSame_mm;
}

// Which side of the middle a tube lies on: 1, −1, or 0 for a tube in the middle plane.
int sideOf(const Mounts& mounts, const MountPoint& point, std::size_t axis)
{
    for (const double reach : {point.bay_mm[axis], anchorOf(mounts, point)[axis]})
        if (std::abs(reach) > kSame_mm)
            return reach > 0 ? 1 : -1;
    return 0;
}

void mirrorAcross(Mounts& mounts, std::size_t axis)
{
    int pattern = 0;
    for (const MountPoint& point : mounts.points)
        if (pattern == 0)
            pattern = sideOf(mounts, point, axis);
    std::vector<MountPoint> points, images;
    for (const MountPoint& point : mounts.points) {
        const int side = sideOf(mounts, point, axis);
        if (side == 0 || side == pattern)
            points.push_back(point);
        if (side != 0 && side == pattern)
            images.push_back(mirrored(point, axis));
    }
    points.insert(points.end(), images.begin(), images.end());
    mounts.points = std::move(points);
}

bool haveSameTubes(const Mounts& a, const Mounts& b)
{
    return std::is_permutation(a.points.begin(), a.points.end(), b.points.begin(), b.points.end(),
                               [&](const MountPoint& p, const MountPoint& q) {
                                   return isSamePlace(p.bay_mm, q.bay_mm) &&
                                          isSamePlace(anchorOf(a, p), anchorOf(b, q));
                               });
}

}  // namespace

void spreadArms(Airframe& airframe, int count, Forward forward)
{
    const double offset = forward == Forward::Gap ? 0.5 : 0.0;
    const Arm pattern = airframe.arms.empty() ? Arm{} : airframe.arms.front();
    airframe.arms.resize(static_cast<std::size_t>(count));
    for (int k = 0; k < count; ++k) {
        Arm& arm = airframe.arms[static_cast<std::size_t>(k)];
        Arm next = pattern;
        next.azimuth_deg = (k + offset) * kTurn_deg / count;
        next.extras = std::move(arm.extras);
        arm = std::move(next);
    }
}

void mirrorTubes(Mounts& mounts, Mirror mirror)
{
    Mounts result = mounts;
    if (mirror != Mirror::FrontBack)
        mirrorAcross(result, kLeft);
    if (mirror != Mirror::LeftRight)
        mirrorAcross(result, kForward);
    if (!haveSameTubes(mounts, result))
        mounts = std::move(result);
}

}  // namespace stillbay::ui
