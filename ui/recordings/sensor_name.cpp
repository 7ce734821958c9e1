// SPDX-License-Identifier: MIT
#include "ui/recordings/sensor_name.h"

#include "core/calibrate/axis_of_name.h"

#include <QString>

#include <algorithm>
#include <array>

namespace stillbay::ui {

SensorName sensorNameOf(const std::string& channel)
{
    constexpr std::array kAirframeWords{"frame", "hub", "arm", "rahmen"};
    const QString name = QString::fromStdString(channel).toLower();
    SensorName sensor{.axis = axisOfName(channel)};
    if (isOnBayByName(channel))
        sensor.place = SensorName::Place::Bay;
    else if (std::any_of(kAirframeWords.begin(), kAirframeWords.end(),
                         [&](const char* word) { return name.contains(QString::fromUtf8(word)); }))
        sensor.place = SensorName::Place::Airframe;
    return sensor;
}

}  // namespace stillbay::ui
