// SPDX-License-Identifier: MIT
#include "core/setup/mount_layout.h"

#include "core/base/units.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace stillbay {
namespace {

Triple toAnchor(const Mounts& mounts, const MountPoint& point)
{
    Triple d = anchorOf(mounts, point);
    for (std::size_t k = 0; k < d.size(); ++k)
        d[k] -= point.bay_mm[k];
    return d;
}

double distance_mm(const Mounts& mounts, const MountPoint& point)
{
    const Triple d = toAnchor(mounts, point);
    return std::hypot(d[0], d[1], d[2]);
}

double meanFreeLength_mm(const Mounts& mounts)
{
    double sum = 0.0;
    bool isOwn = false;
    for (const MountPoint& point : mounts.points) {
        sum += freeLength_mm(mounts, point);
        isOwn = isOwn || point.free_length_mm;
    }
    return isOwn ? sum / static_cast<double>(mounts.points.size()) : mounts.free_length_mm;
}

// To a hundredth of a millimetre or degree: finer than a drill or a protractor.
double toHundredth(double value)
{
    return std::round(100.0 * value) / 100.0;
}

double toTenThousandth(double value)
{
    return std::round(1e4 * value) / 1e4;
}

constexpr double kHoleRounding_mm = 0.01;    // what two rounded holes may be off together
constexpr double kStretchRounding = 0.5e-4;  // of toTenThousandth()

}  // namespace

double freeLength_mm(const Mounts& mounts, const MountPoint& point)
{
    return point.free_length_mm.value_or(mounts.free_length_mm);
}

Triple anchorOf(const Mounts& mounts, const MountPoint& point)
{
    if (point.anchor_mm)
        return *point.anchor_mm;
    const double stretch = point.stretch.value_or(mounts.stretch.value_or(1.0));
    const double length = freeLength_mm(mounts, point) * stretch;
    const double azimuth = point.azimuth_deg * unit::deg;
    const double elevation = point.elevation_deg * unit::deg;
    return {point.bay_mm[0] + length * std::cos(elevation) * std::cos(azimuth),
            point.bay_mm[1] + length * std::cos(elevation) * std::sin(azimuth),
            point.bay_mm[2] + length * std::sin(elevation)};
}

double meanDistance_mm(const Mounts& mounts)
{
    if (mounts.points.empty())
        return 0.0;
    double sum = 0.0;
    for (const MountPoint& point : mounts.points)
        sum += distance_mm(mounts, point);
    return sum / static_cast<double>(mounts.points.size());
}

double drawnStretch(const Mounts& mounts)
{
    return mounts.drilled() ? meanDistance_mm(mounts) / meanFreeLength_mm(mounts)
                            : mounts.stretch.value_or(1.0);
}

void setDrawnStretch(Mounts& mounts, double stretch)
{
    if (mounts.drilled()) {
        // Own lengths keep their ratio, so the common one keeps its ratio to their mean.
        const double share = mounts.free_length_mm / meanFreeLength_mm(mounts);
        setFreeLength(mounts, meanDistance_mm(mounts) / stretch * share);
        mounts.free_length_mm = toHundredth(mounts.free_length_mm);
    } else {
        setStretch(mounts, stretch);
    }
    for (MountPoint& point : mounts.points) {
        if (point.free_length_mm && mounts.drilled())
            point.free_length_mm = toHundredth(*point.free_length_mm);
        if (point.stretch)
            point.stretch = toTenThousandth(*point.stretch);
    }
}

void setFreeLength(Mounts& mounts, double length_mm)
{
    for (MountPoint& point : mounts.points)
        if (point.free_length_mm)
            *point.free_length_mm *= length_mm / mounts.free_length_mm;
    mounts.free_length_mm = length_mm;
}

void setStretch(Mounts& mounts, double stretch)
{
    for (MountPoint& point : mounts.points)
        if (point.stretch)
            *point.stretch += stretch - mounts.stretch.value_or(stretch);
    mounts.stretch = stretch;
}

Mounts drilled(const Mounts& planned)
{
    Mounts result = planned;
    for (MountPoint& point : result.points) {
        Triple hole = anchorOf(planned, point);
        for (double& coordinate : hole)
            coordinate = toHundredth(coordinate);
        point.anchor_mm = hole;
        point.azimuth_deg = point.elevation_deg = 0.0;
        point.stretch.reset();
    }
    result.stretch.reset();
    return result;
}

Mounts planned(const Mounts& drilled)
{
    Mounts result = drilled;
    result.stretch = toTenThousandth(drawnStretch(drilled));
    const bool isOwn =
        std::any_of(drilled.points.begin(), drilled.points.end(),
                    [](const MountPoint& p) { return p.free_length_mm.has_value(); });
    for (MountPoint& point : result.points) {
        const Triple d = toAnchor(drilled, point);
        const double length_mm = freeLength_mm(drilled, point);
        const double own = distance_mm(drilled, point) / length_mm;
        if (isOwn &&
            std::abs(own - *result.stretch) > kHoleRounding_mm / length_mm + kStretchRounding)
            point.stretch = toTenThousandth(own);
        point.azimuth_deg = toHundredth(std::atan2(d[1], d[0]) / unit::deg);
        point.elevation_deg = toHundredth(std::atan2(d[2], std::hypot(d[0], d[1])) / unit::deg);
        point.anchor_mm.reset();
    }
    return result;
}

}  // namespace stillbay
