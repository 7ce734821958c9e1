// SPDX-License-Identifier: MIT
#include "core/calibrate/airframe_columns.h"

#include "core/base/units.h"
#include "core/calibrate/axis_of_name.h"

namespace stillbay {

Result<AirframeColumns> airframeColumns(const Recording& recording, const AirframeSensor& sensor)
{
    std::vector<const Channel*> used;
    for (const std::size_t channel : sensor.channels)
        used.push_back(&recording.channels.at(channel));
    if (used.empty())
        for (const Channel& channel : recording.channels)
            if (channel.quantity == Quantity::Acceleration && !isOnBayByName(channel.name))
                used.push_back(&channel);
    if (used.empty())
        return fail(Errc::BadInput, phrase("has no column of acceleration"));
    if (sensor.axes && used.size() != 3)
        return fail(Errc::BadInput,
                    phrase("has %1 columns of acceleration, and a sensor whose axes "
                           "are stated has three",
                           whole(used.size())));
    const Triple& mm = sensor.centre_mm;
    const Vector3d place = Vector3d(mm[0], mm[1], mm[2]) * unit::mm;
    AirframeColumns columns;
    for (std::size_t k = 0; k < used.size(); ++k) {
        std::optional<Vector3d> direction;
        if (sensor.axes)
            direction = sensor.axes->col(static_cast<Eigen::Index>(k));
        else if (const auto axis = axisOfName(used[k]->name))
            direction = Vector3d::Unit(static_cast<Eigen::Index>(*axis));
        if (!direction)
            continue;
        columns.axes.push_back({place, *direction});
        columns.channels.push_back(used[k]);
    }
    if (columns.axes.empty())
        return fail(Errc::BadInput, phrase("nothing says which way its columns measure: name them "
                                           "forward, left and up, or state the sensor's axes"));
    return columns;
}

}  // namespace stillbay
