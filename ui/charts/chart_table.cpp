// SPDX-License-Identifier: MIT
#include "ui/charts/chart_table.h"

#include <QLocale>
#include <QStringList>

#include <cmath>

namespace stillbay::ui {
namespace {

enum class For { Files, People };

QString text(const ChartTable& table, const QLocale& locale, QChar separator, For whom)
{
    QStringList lines, fields;
    for (const ChartColumn& column : table.columns)
        fields << (whom == For::Files ? column.key : column.heading);
    lines << fields.join(separator);
    for (std::size_t row = 0; row < table.rows(); ++row) {
        fields.clear();
        for (const ChartColumn& column : table.columns) {
            const double value = column.values[row] * (whom == For::Files ? 1.0 : column.perValue);
            fields << (std::isfinite(value)
                           ? locale.toString(value, 'g', QLocale::FloatingPointShortest)
                           : QString());
        }
        lines << fields.join(separator);
    }
    return lines.join(u'\n') + u'\n';
}

}  // namespace

QByteArray toCsv(const ChartTable& table)
{
    return text(table, QLocale::c(), u',', For::Files).toUtf8();
}

QString toTabbedText(const ChartTable& table)
{
    QLocale locale;
    locale.setNumberOptions(QLocale::OmitGroupSeparator);
    return text(table, locale, u'\t', For::People);
}

}  // namespace stillbay::ui
