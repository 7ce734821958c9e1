// SPDX-License-Identifier: MIT
#include "ui/widgets/quantity.h"

#include "core/base/units.h"
#include "ui/widgets/plain_number.h"

#include <QLocale>
#include <QObject>

#include <cmath>

namespace stillbay::ui {

QString tubeText(const StockTube& tube)
{
    return QObject::tr("%1 × %2 mm, Shore %3")
        .arg(plainNumber(tube.outer_diameter_mm, 4), plainNumber(tube.bore_mm, 4),
             plainNumber(tube.hardness_shore_a, 3));
}

QString lengthText(double length_mm)
{
    return QObject::tr("%1 mm").arg(plainNumber(length_mm, 4));
}

QString measureText(double length_mm)
{
    return QObject::tr("%1 mm").arg(QLocale().toString(length_mm, 'f', 1));
}

QString stretchText(double stretch)
{
    const double points = kPercent * (stretch - 1.0);
    const QString number = plainNumber(std::abs(points), 3);
    return points < 0 ? QObject::tr("−%1 %").arg(number) : QObject::tr("+%1 %").arg(number);
}

QString degreesText(double angle_deg, int digits)
{
    return QObject::tr("%1°").arg(plainNumber(angle_deg, digits));
}

QString wobbleText(double wobble_px, int digits)
{
    return QObject::tr("%1 px").arg(plainNumber(wobble_px, digits));
}

QString percentNumber(double share)
{
    return QLocale().toString(kPercent * share, 'f', 0);
}

}  // namespace stillbay::ui
