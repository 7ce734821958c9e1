// SPDX-License-Identifier: MIT
#include "ui/charts/filmed_mark.h"

#include "core/base/units.h"
#include "ui/widgets/plain_number.h"

#include <QObject>

namespace stillbay::ui {

QString filmedText(const FilmedMark& mark)
{
    return QObject::tr("%1 at %2 %: filmed %3 px")
        .arg(mark.name, plainNumber(kPercent * mark.throttle, 3), plainNumber(mark.filmed_px, 2));
}

}  // namespace stillbay::ui
