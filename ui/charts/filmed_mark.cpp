// SPDX-License-Identifier: MIT
#include "ui/charts/filmed_mark.h"

#include "core/base/units.h"
#include "ui/widgets/plain_number.h"

#include <QObject>

namespace stillbay::ui {

QString filmedText(const FilmedMark& mark)
{
    const QString film = QObject::tr("%1: filmed %2 px, turning as at %3 % throttle")
                             .arg(mark.name, plainNumber(mark.filmed_px, 2),
                                  plainNumber(kPercent * mark.throttle, 3));
    return mark.flown ? QObject::tr("%1 (flown at %2 %)", "what a film showed")
                            .arg(film, plainNumber(kPercent * *mark.flown, 3))
                      : film;
}

}  // namespace stillbay::ui
