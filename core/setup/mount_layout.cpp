// SPDX-License-Identifier: MIT
#include "core/setup/mount_layout.h"

#include "core/base/units.h"

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

// To a hundredth of a millimetre or degree: finer than a drill or a protractor.
double toHundredth(double value)
{
    return std::round(100.0 * value) / 100.0;
}

}  // namespace

Triple anchorOf(const Mounts& mounts, const MountPoint& point)
{
    if (point.anchor_mm)
        return *point.anchor_mm;
    const double length = mounts.free_length_mm * mounts.stretch.value_or(1.0);
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
    for (const MountPoint& point : mounts.points) {
        const Triple d = toAnchor(mounts, point);
        sum += std::hypot(d[0], d[1], d[2]);
    }
    return sum / static_cast<double>(mounts.points.size());
}

double drawnStretch(const Mounts& mounts)
{
    return mounts.drilled() ? meanDistance_mm(mounts) / mounts.free_length_mm
                            : mounts.stretch.value_or(1.0);
}

void setDrawnStretch(Mounts& mounts, double stretch)
{
    if (mounts.drilled())
        mounts.free_length_mm = toHundredth(meanDistance_mm(mounts) / stretch);
    else
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
    }
    result.stretch.reset();
    return result;
}

Mounts planned(const Mounts& drilled)
{
    Mounts result = drilled;
    result.stretch = std::round(1e4 * drawnStretch(drilled)) / 1e4;
    for (MountPoint& point : result.points) {
        const Triple d = toAnchor(drilled, point);
        point.azimuth_deg = toHundredth(std::atan2(d[1], d[0]) / unit::deg);
        point.elevation_deg = toHundredth(std::atan2(d[2], std::hypot(d[0], d[1])) / unit::deg);
        point.anchor_mm.reset();
    }
    return result;
}

}  // namespace stillbay
