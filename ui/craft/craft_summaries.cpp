// SPDX-License-Identifier: MIT
#include "ui/craft/craft_summaries.h"

#include "core/setup/mount_layout.h"
#include "core/setup/unbalance.h"
#include "ui/widgets/quantity.h"

#include <QLocale>
#include <QObject>

#include <algorithm>
#include <numeric>

namespace stillbay::ui {
namespace {

QString number(double value)
{
    return QLocale().toString(value, 'g', 5);
}

QString summaryOf(const std::vector<Part>& parts)
{
    const double mass_g =
        std::accumulate(parts.begin(), parts.end(), 0.0,
                        [](double sum, const Part& part) { return sum + part.mass_g; });
    return parts.size() == 1 ? QObject::tr("1 part, %1 g").arg(number(mass_g))
                             : QObject::tr("%1 parts, %2 g").arg(parts.size()).arg(number(mass_g));
}

QString summaryOf(const Airframe& airframe)
{
    return QObject::tr("%1 arms, %2 × %3 mm")
        .arg(airframe.arms.size())
        .arg(number(airframe.arm.width_mm), number(airframe.arm.height_mm));
}

QString summaryOf(const Motor& motor)
{
    return QObject::tr("%1 rpm/V, %2 g").arg(number(motor.kv_rpm_per_v), number(motor.mass_g));
}

QString summaryOf(const Propeller& propeller)
{
    return QObject::tr("%1 × %2 in, %3 blades")
        .arg(number(propeller.diameter_in), number(propeller.pitch_in))
        .arg(propeller.blades);
}

QString summaryOf(const Battery& battery)
{
    const QString full_v = number(battery.cells * battery.full_v_per_cell);
    return battery.cells == 1 ? QObject::tr("1 cell, %1 V full").arg(full_v)
                              : QObject::tr("%1 cells, %2 V full").arg(battery.cells).arg(full_v);
}

QString summaryOf(const Camera& camera)
{
    return QObject::tr("%1 × %2 px, %3 Hz")
        .arg(camera.width_px)
        .arg(camera.height_px)
        .arg(number(camera.frame_rate_hz));
}

QString summaryOf(const TubeKind& tube)
{
    return QObject::tr("%1 / %2 mm, %3 Shore A")
        .arg(number(tube.outer_diameter_mm), number(tube.bore_mm), number(tube.hardness_shore_a));
}

QString summaryOf(const Mounts& mounts)
{
    const QString length = number(mounts.free_length_mm),
                  stretch = percentNumber(drawnStretch(mounts) - 1.0);
    return mounts.points.size() == 1
               ? QObject::tr("1 tube, %1 mm, %2 % stretch").arg(length, stretch)
               : QObject::tr("%1 tubes, %2 mm, %3 % stretch")
                     .arg(mounts.points.size())
                     .arg(length, stretch);
}

QString summaryOf(const Flight& flight)
{
    return QObject::tr("cruise %1 to %2 %")
        .arg(percentNumber(flight.cruise_throttle[0]), percentNumber(flight.cruise_throttle[1]));
}

QString excitationSummary(const Setup& setup)
{
    std::vector<double> unbalances_g_mm;
    for (const Arm& arm : setup.airframe.arms)
        unbalances_g_mm.push_back(unbalanceOf_g_mm(setup, arm));
    if (unbalances_g_mm.empty())
        return {};
    const auto [least, most] = std::minmax_element(unbalances_g_mm.begin(), unbalances_g_mm.end());
    return *least == *most
               ? QObject::tr("unbalance %1 g·mm").arg(number(*most))
               : QObject::tr("unbalance %1 to %2 g·mm").arg(number(*least), number(*most));
}

}  // namespace

std::vector<std::pair<QString, QString>> craftSummaries(const Setup& setup)
{
    const Drive& drive = setup.drive;
    const Limits& limits = setup.limits;
    return {{QStringLiteral("name"), QString::fromStdString(setup.name)},
            {QStringLiteral("airframe.parts"), summaryOf(setup.airframe.parts)},
            {QStringLiteral("airframe.arm"), summaryOf(setup.airframe)},
            {QStringLiteral("drive.motor"), summaryOf(drive.motor)},
            {QStringLiteral("drive.propeller"), summaryOf(drive.propeller)},
            {QStringLiteral("drive.battery"), summaryOf(drive.battery)},
            {QStringLiteral("drive"), excitationSummary(setup)},
            {QStringLiteral("bay"), summaryOf(setup.bay.parts)},
            {QStringLiteral("camera"), summaryOf(setup.camera)},
            {QStringLiteral("tube"), summaryOf(setup.tube)},
            {QStringLiteral("mounts"), summaryOf(setup.mounts)},
            {QStringLiteral("flight"), summaryOf(setup.flight)},
            {QStringLiteral("limits"),
             QObject::tr("%1 and %2 px").arg(number(limits.faint_px), number(limits.bad_px))}};
}

}  // namespace stillbay::ui
