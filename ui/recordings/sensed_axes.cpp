// SPDX-License-Identifier: MIT
#include "ui/recordings/sensed_axes.h"

#include "core/base/units.h"
#include "core/calibrate/pluck.h"
#include "ui/recordings/sensor_name.h"

#include <QObject>

#include <algorithm>
#include <filesystem>
#include <optional>

namespace stillbay::ui {

QString axisName(std::size_t axis)
{
    return axis == 0   ? QObject::tr("fore and aft (x)")
           : axis == 1 ? QObject::tr("sideways (y)")
                       : QObject::tr("up and down (z)");
}

QString axisKey(std::size_t axis)
{
    return QString(QStringLiteral("xyz")[static_cast<qsizetype>(axis)]);
}

std::string fileNameOf(const NamedRecording& named)
{
    return std::filesystem::path(named.file).filename().string();
}

SensorSeat seatOf(const NamedRecording& named)
{
    return sensorNameOf(fileNameOf(named)).place == SensorName::Place::Bay ? SensorSeat::Bay
                                                                           : SensorSeat::Airframe;
}

std::vector<SensedAxis> sensedAxes(const Recording& recording, const NamedRecording& named,
                                   SensorSeat seat, const Setup& setup)
{
    const bool isThisSensor = seat == seatOf(named);
    const std::optional<Triple> said = isThisSensor ? named.sensor_mm : std::nullopt;
    const Triple place_mm =
        said.value_or(seat == SensorSeat::Bay ? setup.camera.centre_mm : Triple{});
    const Matrix3d turn = (isThisSensor ? axesFromText(named.sensor_axes) : std::nullopt)
                              .value_or(Matrix3d::Identity());
    std::vector<SensedAxis> axes;
    for (const Channel& channel : recording.channels) {
        const SensorName name = sensorNameOf(channel.name);
        const SensorSeat own = name.place == SensorName::Place::Unknown ? seatOf(named)
                               : name.place == SensorName::Place::Bay   ? SensorSeat::Bay
                                                                        : SensorSeat::Airframe;
        const bool isTaken = std::any_of(axes.begin(), axes.end(), [&](const SensedAxis& other) {
            return other.axis == name.axis;
        });
        if (channel.quantity != Quantity::Acceleration || !name.axis || own != seat || isTaken)
            continue;
        axes.push_back({&channel,
                        *name.axis,
                        seat,
                        {unit::mm * Vector3d(place_mm[0], place_mm[1], place_mm[2]),
                         turn.col(static_cast<Eigen::Index>(*name.axis))}});
    }
    return axes;
}

}  // namespace stillbay::ui
