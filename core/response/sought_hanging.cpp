// SPDX-License-Identifier: MIT
#include "core/response/sought_hanging.h"

#include "core/base/check.h"
#include "core/base/units.h"
#include "core/response/level.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string_view>

namespace stillbay {
namespace {

using Eigen::Index;

// What counts as one step of an unknown. A degree of elevation is as easily set as a hundredth of
// stretch, 0.2 mm on a usual tube; of steps that do the same, the shortest in these is taken, and
// so tubes that are alike stay alike.
constexpr double kElevationUnit = unit::deg;
constexpr double kStretchUnit = 0.01;

constexpr double kCommonTrim = 0.5e-4;  // own stretches below are the common one
constexpr double kModelMargin = 1.001;  // a free length stays this far above 4δ

double toGrain(double value, double perUnit)
{
    return std::round(perUnit * value) / perUnit;
}

double toHundredth(double value)
{
    return toGrain(value, 100.0);
}

double toTenThousandth(double value)
{
    return toGrain(value, 1e4);
}

template <class Owner>
const Field<Owner>& fieldNamed(std::string_view key)
{
    for (const Field<Owner>& field : fieldsOf<Owner>())
        if (field.key == key)
            return field;
    check(false, "level: a key of the field table");
    return fieldsOf<Owner>().front();
}

Vector6d wrench(const Vector3d& p, const Vector3d& force)
{
    Vector6d w;
    w << force, p.cross(force);
    return w;
}

}  // namespace

SoughtHanging soughtHangingOf(const MassFigures& bay, const Suspension& suspension,
                              const TubeKind& stock, const Mounts& mounts)
{
    const Field<Mounts>& stretchField = fieldNamed<Mounts>("stretch");
    const Field<Mounts>& lengthField = fieldNamed<Mounts>("free_length_mm");
    const Field<MountPoint>& elevationField = fieldNamed<MountPoint>("elevation_deg");
    const auto n = static_cast<Index>(mounts.points.size());
    check(n > 0 && 2 * n <= kMostSought, "level: as many tubes as a setup may have");

    SoughtHanging hanging;
    hanging.drilled = mounts.drilled();
    hanging.weight = bay.mass * kGravity;
    hanging.stretches = n;
    const Index count = hanging.drilled ? n : 2 * n;
    for (SoughtValues* const values : {&hanging.start, &hanging.low, &hanging.high, &hanging.units})
        values->resize(count);
    for (Index k = 0; k < n; ++k) {
        const auto i = static_cast<std::size_t>(k);
        const MountPoint& point = mounts.points[i];
        const Attachment& attachment = suspension.attachments[i];
        const Vector3d p_BA = attachment.p_OA - attachment.p_OB;
        const Tube& tube = suspension.tubeOf(attachment);
        const double distance = p_BA.norm(), present = distance / tube.freeLength;
        hanging.tubes.push_back({tube, attachment.p_OB - bay.centre, point.azimuth_deg * unit::deg,
                                 p_BA / distance, distance});
        // Slack or overstretched as it may be, the present value is allowed.
        const double least = std::min(std::max(kLeastLevelStretch, stretchField.min), present);
        const double most = std::max(std::min(stock.max_stretch, stretchField.max), present);
        if (hanging.drilled) {
            const double shortest =
                std::max(lengthField.min * unit::mm, kModelMargin * 4 * tube.endLength);
            hanging.start[k] = tube.freeLength;
            hanging.low[k] = std::min(std::max(shortest, distance / most), tube.freeLength);
            hanging.high[k] =
                std::max(std::min(lengthField.max * unit::mm, distance / least), tube.freeLength);
            hanging.units[k] = kStretchUnit * tube.freeLength;
            continue;
        }
        hanging.start[k] = point.elevation_deg * unit::deg;
        hanging.low[k] = elevationField.min * unit::deg;
        hanging.high[k] = elevationField.max * unit::deg;
        hanging.units[k] = kElevationUnit;
        hanging.start[n + k] = present;
        hanging.low[n + k] = least;
        hanging.high[n + k] = most;
        hanging.units[n + k] = kStretchUnit;
    }
    return hanging;
}

TubePull tubePull(const SoughtHanging& hanging, const SoughtValues& x, std::size_t i)
{
    const HungTube& hung = hanging.tubes[i];
    const auto k = static_cast<Index>(i);
    Tube tube = hung.tube;
    TubePull pull;
    double length = hung.distance, byUnknown = 0.0;  // of the effective stretch
    if (hanging.drilled) {
        tube.freeLength = x[k];
        tube.effectiveLength = x[k] - 2 * tube.endLength;
        pull.d = hung.d;
        byUnknown = -(length - 2 * tube.endLength) / (tube.effectiveLength * tube.effectiveLength);
    } else {
        const double c = std::cos(x[k]), s = std::sin(x[k]);
        pull.d = {c * std::cos(hung.azimuth), c * std::sin(hung.azimuth), s};
        length = tube.freeLength * x[hanging.stretches + k];
        byUnknown = tube.freeLength / tube.effectiveLength;
    }
    const double lambda = effectiveStretch(tube, length);
    pull.tension = tube.GA0 * (lambda - 1 / (lambda * lambda));
    pull.slope = tube.GA0 * (1 + 2 / (lambda * lambda * lambda)) * byUnknown;
    return pull;
}

Vector6d unbalancedForce(const SoughtHanging& hanging, const SoughtValues& x, SoughtSlopes* slopes)
{
    Vector6d sum = -hanging.weight * Vector6d::Unit(2);
    if (slopes)
        slopes->resize(6, hanging.count());
    for (std::size_t i = 0; i < hanging.tubes.size(); ++i) {
        const HungTube& hung = hanging.tubes[i];
        const TubePull pull = tubePull(hanging, x, i);
        sum += wrench(hung.p_CB, pull.tension * pull.d);
        if (!slopes)
            continue;
        const auto k = static_cast<Index>(i);
        slopes->col(hanging.stretches % hanging.count() + k) =
            wrench(hung.p_CB, pull.slope * pull.d);
        if (hanging.drilled)
            continue;
        const double c = std::cos(x[k]), s = std::sin(x[k]);
        const Vector3d rise(-s * std::cos(hung.azimuth), -s * std::sin(hung.azimuth), c);
        slopes->col(k) = wrench(hung.p_CB, pull.tension * rise);
    }
    return sum;
}

Mounts mountsAt(const SoughtHanging& hanging, const SoughtValues& x, Mounts mounts)
{
    const auto n = static_cast<Index>(mounts.points.size());
    const auto own = x.tail(n);
    if (hanging.drilled) {
        mounts.free_length_mm = toHundredth(own.mean() / unit::mm);
        for (Index k = 0; k < n; ++k) {
            const double length_mm = toHundredth(own[k] / unit::mm);
            std::optional<double>& to = mounts.points[static_cast<std::size_t>(k)].free_length_mm;
            to = length_mm == mounts.free_length_mm ? std::nullopt : std::optional(length_mm);
        }
        return mounts;
    }
    const double mean = own.mean();
    if (std::abs(mean - mounts.stretch.value_or(0.0)) > kCommonTrim)
        mounts.stretch = toTenThousandth(mean);
    const bool alike = (own.array() - *mounts.stretch).abs().maxCoeff() < kCommonTrim;
    for (Index k = 0; k < n; ++k) {
        MountPoint& point = mounts.points[static_cast<std::size_t>(k)];
        const double stretch = toTenThousandth(own[k]);
        point.elevation_deg = toHundredth(x[k] / unit::deg);
        point.stretch = alike || stretch == *mounts.stretch ? std::nullopt : std::optional(stretch);
    }
    return mounts;
}

void hangAt(Suspension& suspension, const SoughtHanging& hanging, const SoughtValues& x)
{
    for (std::size_t i = 0; i < hanging.tubes.size(); ++i) {
        const HungTube& hung = hanging.tubes[i];
        const auto k = static_cast<Index>(i);
        Attachment& attachment = suspension.attachments[i];
        if (hanging.drilled) {
            Tube& tube = attachment.ownTube.emplace(hung.tube);
            tube.mass *= x[k] / tube.freeLength;
            tube.freeLength = x[k];
            tube.effectiveLength = x[k] - 2 * tube.endLength;
        } else {
            attachment.p_OA = attachment.p_OB + hung.tube.freeLength * x[hanging.stretches + k] *
                                                    tubePull(hanging, x, i).d;
        }
    }
}

}  // namespace stillbay
