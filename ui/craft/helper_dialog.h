// SPDX-License-Identifier: MIT
#pragma once

#include "ui/document/document.h"

#include <QDialog>

class QFormLayout;
class QLabel;
class QVBoxLayout;

namespace stillbay::ui {

class NumberBox;
class ProblemLabel;

/// A small calculation for one number of the craft: boxes above, what comes out below, and a button
/// that takes it over in one undo step.
class HelperDialog : public QDialog {
    Q_OBJECT
protected:
    HelperDialog(Document& document, const QString& title, const QString& purpose, QWidget* parent);

    struct NumberSpec {
        QString label, unit, meaning;
        double min = 0.0, max = 0.0, step = 1.0;
    };
    /// A box with a label, which is its name as well.
    NumberBox* addNumber(const NumberSpec& spec);
    void addRow(const QString& label, QWidget* editor);
    void addWidget(QWidget* widget);  ///< below the rows, above the outcome
    void addChoice(QWidget* choice);  ///< below the outcome
    void addNote(const QString& text);

    Document& document() { return m_document; }
    const Setup& setup() const { return m_document.setup(); }
    void setOutcome(const QStringList& lines);
    void setProblem(const QString& problem);  ///< empty: none

    virtual Result<void> apply() = 0;

private:
    void use();
    void makeRoom();

    Document& m_document;
    bool m_hasRefused = false;  // an entry, and nothing was entered since
    QVBoxLayout* m_layout;
    QFormLayout* m_form;
    QLabel* m_outcome;
    ProblemLabel* m_problem;
    QLabel* m_note;
};

}  // namespace stillbay::ui
