// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"

#include <QByteArray>
#include <QString>

#include <memory>

class QMimeData;

namespace stillbay::ui {

class Chart;

/// What the chart shows now, dark on white whatever the desktop's colours, with its title.
QByteArray chartPng(Chart& chart);
QByteArray chartSvg(Chart& chart);
QByteArray chartPdf(Chart& chart);

/// The picture as PNG and SVG, and the numbers as tab-separated text.
std::unique_ptr<QMimeData> chartMimeData(Chart& chart);

/// Writes picture or numbers in the format that the suffix names: png, svg, pdf, csv.
///
/// @error BadInput  another suffix, or the file cannot be written; then it is as it was.
Result<void> exportChart(Chart& chart, const QString& path);

}  // namespace stillbay::ui
