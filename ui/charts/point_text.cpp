// SPDX-License-Identifier: MIT
#include "ui/charts/point_text.h"

#include "core/response/at_throttle.h"

#include <QObject>

namespace stillbay::ui {

QString gradeWord(const Limits& limits, double wobble_px)
{
    switch (gradeOf(wobble_px, limits.faint_px, limits.bad_px)) {
        case Grade::Clean:
            return QObject::tr("clean");
        case Grade::Faint:
            return QObject::tr("faint");
        case Grade::Bad:
            break;
    }
    return QObject::tr("bad");
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
