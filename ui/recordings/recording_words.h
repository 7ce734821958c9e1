// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/recording/recording.h"
#include "core/setup/setup.h"

#include <QString>

/// What the window calls the things of a recording.
namespace stillbay::ui {

QString kindName(RecordingKind kind);  ///< "Pluck"
/// "12 to 20 s"; empty: all of it.
QString partName(const NamedRecording& named);
/// "flight.mp4, 12 to 20 s": the file, and the part where it is one.
QString recordingName(const NamedRecording& named);
/// "Film, 12 to 20 s, 40 %": what it is taken for, and what of a film tells it from another.
QString recordingUse(const NamedRecording& named);
QString kindMeaning(RecordingKind kind);  ///< what it is taken for, a sentence
QString roleName(ColumnRole role);
QString quantityName(Quantity quantity);   ///< "Acceleration"
QString quantityTitle(Quantity quantity);  ///< "Acceleration (m/s²)"
QString quantityUnit(Quantity quantity);   ///< of the numbers in a Recording
QString reasonText(const Error& error);    ///< with its place, without a full stop

/// Files that are taken for recordings, by the ending of their name.
bool isRecordingName(const QString& path);
/// For a file dialog.
QString recordingFilter();
/// What a file of this name is most likely taken for.
RecordingKind likelyKind(const QString& path);

}  // namespace stillbay::ui
