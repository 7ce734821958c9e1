// SPDX-License-Identifier: MIT
#pragma once

#include "ui/sheet/build_sheet.h"

#include <QSizeF>

class QTextDocument;

namespace stillbay::ui {

/// Sets the sheet's text on pages of a size so that it fills them: in the largest type between that
/// of a book and one that is read at arm's length on a bench that takes no more paper than the
/// smallest, and with a chart as high as the last page has room for. What is cut and drilled stands
/// on pages of its own where that takes no more paper either. A heading stays with what it heads,
/// and a table that fits on a page is not torn.
///
/// @param document  empty; its paint device is set
void setOnPages(QTextDocument& document, const BuildSheet& sheet, const QSizeF& size_mm,
                double dotsPerMm, int templateSheets);

}  // namespace stillbay::ui
