// SPDX-License-Identifier: MIT
#include "ui/widgets/distinct_numbers.h"

#include "ui/widgets/plain_number.h"

#include <QSet>

#include <algorithm>
#include <cmath>

namespace stillbay::ui {
namespace {

QStringList withDecimals(std::span<const double> values, int decimals)
{
    const double half = 0.5 * std::pow(10.0, -decimals);
    QStringList texts;
    for (const double value : values) {
        if (!std::isfinite(value))
            texts << QStringLiteral("—");
        else  // a zero has no sign: "-0.0" would read unlike "0.0"
            texts << plainDecimals(std::abs(value) < half ? 0.0 : value, decimals);
    }
    return texts;
}

qsizetype readings(const QStringList& texts)
{
    return QSet<QString>(texts.begin(), texts.end()).size();
}

}  // namespace

QStringList distinctNumbers(std::span<const double> values, int least, int most)
{
    const qsizetype all = readings(withDecimals(values, most));
    for (int decimals = least; decimals < most; ++decimals)
        if (const QStringList texts = withDecimals(values, decimals); readings(texts) == all)
            return texts;
    return withDecimals(values, std::max(least, most));
}

}  // namespace stillbay::ui
