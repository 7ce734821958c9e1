// SPDX-License-Identifier: MIT
#include "ui/charts/point_words.h"

#include <QObject>

namespace stillbay::ui {

QString gradeWord(const Limits& limits, double wobble_px)
{
    return wobble_px < limits.faint_px ? QObject::tr("clean")
           : wobble_px < limits.bad_px ? QObject::tr("faint")
                                       : QObject::tr("bad");
}

QString orderSign(int order, int blades)
{
    if (order == 1 || blades < 1 || order % blades != 0)
        return QString::number(order);
    const int multiple = order / blades;
    return multiple == 1 ? QObject::tr("B", "blade pass")
                         : QObject::tr("%1B", "multiple of the blade pass").arg(multiple);
}

}  // namespace stillbay::ui
