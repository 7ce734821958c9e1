// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/setup/cut_length.h"
#include "core/setup/setup.h"
#include "ui/sheet/paper.h"

#include <QByteArray>
#include <QDate>

class QPagedPaintDevice;

namespace stillbay::ui {

/// What goes to the workbench on paper: how to cut, drill and fit, what it was tuned for, what to
/// look after.
struct BuildSheet {
    Setup setup;
    Assessment assessment;  ///< of exactly this setup
    double grip_mm = kUsualGrip_mm;
    QDate date;
};

/// A name for the file beside the craft's other files, without a folder.
QString sheetFileName(const Setup& setup);

/// Draws all pages onto a printer or a PDF whose page layout is set already; the paper may be any
/// from A5 up. False: the device cannot be painted on.
bool drawSheet(const BuildSheet& sheet, QPagedPaintDevice& device);

QByteArray sheetPdf(const BuildSheet& sheet, Paper paper);

}  // namespace stillbay::ui
