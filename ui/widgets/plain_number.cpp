// SPDX-License-Identifier: MIT
#include "ui/widgets/plain_number.h"

#include <QLocale>

namespace stillbay::ui {
namespace {

QLocale plainLocale()
{
    QLocale locale;
    locale.setNumberOptions(QLocale::OmitGroupSeparator);
    return locale;
}

}  // namespace

QString plainNumber(double value, int digits)
{
    return plainLocale().toString(value, 'g', digits);
}

QString plainDecimals(double value, int decimals)
{
    return plainLocale().toString(value, 'f', decimals);
}

}  // namespace stillbay::ui
