// SPDX-License-Identifier: MIT
#include "ui/widgets/plain_number.h"

#include "core/base/format.h"

#include <QLocale>

#include <string>

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

QString exactNumber(double value)
{
    const bool isPlain = toText(value).find('e') == std::string::npos;
    return plainLocale().toString(value, isPlain ? 'f' : 'e', QLocale::FloatingPointShortest);
}

}  // namespace stillbay::ui
