// SPDX-License-Identifier: MIT
#pragma once

#include "ui/document/document.h"

#include <QString>
#include <QWidget>

#include <functional>
#include <string>

class QLineEdit;
class QPlainTextEdit;

namespace stillbay::ui {

class ProblemLabel;

/// One piece of text of a setup.
struct TextAccess {
    QString path;    ///< as in the file; steps of one typing merge
    QString spoken;  ///< accessible name, and what the undo menu says was changed
    std::function<const std::string*(const Setup&)> find;  ///< null: that row is gone
};

/// An editor bound to a piece of text in both directions. Text that the document refuses stays in
/// the editor, with the reason below, until it is mended or the piece is changed elsewhere.
class TextRow final : public QWidget {
    Q_OBJECT
public:
    TextRow(Document& document, TextAccess access, QLineEdit* editor);
    TextRow(Document& document, TextAccess access, QPlainTextEdit* editor);

    QWidget* editor() const { return m_editor; }

protected:
    void focusInEvent(QFocusEvent* event) override;  ///< goes on to the editor

private:
    TextRow(Document& document, TextAccess access, QWidget* editor);
    void write();
    void refresh();

    Document& m_document;
    TextAccess m_access;
    QWidget* m_editor;
    ProblemLabel* m_refusal;
    std::function<QString()> m_typed;
    std::function<void(const QString&)> m_show;
    QString m_known;  // the document's text when it was looked at last
    bool m_isRefused = false;
};

}  // namespace stillbay::ui
