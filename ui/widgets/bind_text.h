// SPDX-License-Identifier: MIT
#pragma once

#include "ui/document/document.h"

#include <QString>

#include <functional>
#include <string>

class QLineEdit;
class QPlainTextEdit;

namespace stillbay::ui {

/// One piece of text of a setup.
struct TextAccess {
    QString path;    ///< as in the file; steps of one typing merge
    QString spoken;  ///< accessible name, and what the undo menu says was changed
    std::function<const std::string*(const Setup&)> find;  ///< null: that row is gone
};

/// A line bound to the document in both directions.
QLineEdit* bindLine(Document& document, const TextAccess& access);

/// The same for text of several lines.
QPlainTextEdit* bindNotes(Document& document, const TextAccess& access);

}  // namespace stillbay::ui
