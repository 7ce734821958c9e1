// SPDX-License-Identifier: MIT
#include "ui/recordings/sensor_name.h"

#include <QString>

#include <algorithm>
#include <initializer_list>

namespace stillbay::ui {

SensorName sensorNameOf(const std::string& channel)
{
    const QString name = QString::fromStdString(channel).toLower();
    SensorName sensor;
    const auto has = [&](std::initializer_list<const char*> words) {
        return std::any_of(words.begin(), words.end(), [&](const char* word) {
            return name.contains(QString::fromUtf8(word));
        });
    };
    if (has({"bay", "camera", "gondel", "kamera"}))
        sensor.place = SensorName::Place::Bay;
    else if (has({"airframe", "frame", "hub", "arm", "rahmen"}))
        sensor.place = SensorName::Place::Airframe;
    if (has({"forward", "vorn", "vorwärts"}))
        sensor.axis = 0;
    if (has({"left", "links", "side"}))
        sensor.axis = 1;
    if (has({"up", "oben", "auf"}))
        sensor.axis = 2;
    for (qsizetype k = name.size() - 1; k >= 0 && !sensor.axis; --k)
        if (name[k] == u'x' || name[k] == u'y' || name[k] == u'z') {
            const bool alone =
                (k == 0 || !name[k - 1].isLetter() || name[k - 1] == u'a' || name[k - 1] == u'g') &&
                (k + 1 == name.size() || !name[k + 1].isLetter());
            if (alone)
                sensor.axis = static_cast<std::size_t>(name[k].unicode() - u'x');
        }
    return sensor;
}

}  // namespace stillbay::ui
