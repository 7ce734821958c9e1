// SPDX-License-Identifier: MIT
#pragma once

#include "ui/sheet/build_sheet.h"

#include <QString>

namespace stillbay::ui {

/// The sheet's words and tables as rich text, before and after the chart.
struct SheetText {
    QString workshop;    ///< what to cut, drill and fit
    QString tunedFor;    ///< a page of its own, up to the chart
    QString afterChart;  ///< warnings
};

/// @param templateSheets  of the drilling template that follows; 0: the holes are too far apart
SheetText sheetText(const BuildSheet& sheet, int templateSheets);

}  // namespace stillbay::ui
