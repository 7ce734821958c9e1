// SPDX-License-Identifier: MIT
#pragma once

#include <QByteArray>
#include <QString>

#include <cstddef>
#include <vector>

namespace stillbay::ui {

struct ChartColumn {
    QString key;      ///< for files: the report's own name, unit in it, never translated
    QString heading;  ///< for people, with the unit, as on the chart
    std::vector<double> values;
    double perValue =
        1.0;  ///< of the heading's unit: 100 where it is percent and the key's a share
};

/// The numbers that a chart draws, as the assessment gave them. Columns are equally long; what has
/// no value is not a number.
struct ChartTable {
    QString title;
    std::vector<ChartColumn> columns;

    std::size_t rows() const { return columns.empty() ? 0 : columns.front().values.size(); }
};

/// Comma-separated, with a row of keys; a decimal point whatever the locale, and so many digits
/// that every number comes back the same. No value: an empty field.
QByteArray toCsv(const ChartTable& table);

/// Tab-separated for pasting into a spreadsheet: headings, and numbers in their units and the
/// user's locale.
QString toTabbedText(const ChartTable& table);

}  // namespace stillbay::ui
