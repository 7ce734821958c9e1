// SPDX-License-Identifier: MIT
#include "ui/findings/cruise_window_text.h"

#include <QLocale>
#include <QObject>

namespace stillbay::ui {

QString cruiseWindowText(const Setup& setup)
{
    const QLocale locale;
    return QObject::tr("Cruise is %1 to %2 % throttle; faint from %3 px, bad from %4 px.")
        .arg(locale.toString(100.0 * setup.flight.cruise_throttle[0], 'g', 3),
             locale.toString(100.0 * setup.flight.cruise_throttle[1], 'g', 3),
             locale.toString(setup.limits.faint_px, 'g', 3),
             locale.toString(setup.limits.bad_px, 'g', 3));
}

}  // namespace stillbay::ui
