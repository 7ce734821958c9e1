// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "ui/document/file_stamp.h"

#include <QByteArray>
#include <QDateTime>
#include <QString>

namespace stillbay::ui {

/// Unsaved work as it is kept for the case that the program ends before it is saved.
struct Snapshot {
    QString path;   ///< of the file it belongs to; empty: never saved
    QString title;  ///< what the window called a craft without a file
    QDateTime written;
    FileStamp original;  ///< the file's version that the work began from
    QByteArray craft;    ///< text of a setup file
};

QByteArray snapshotText(const Snapshot& snapshot);

/// @error BadInput  the text is cut or is no snapshot, or its craft cannot be read.
Result<Snapshot> readSnapshot(const QByteArray& text);

}  // namespace stillbay::ui
