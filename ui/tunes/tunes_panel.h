// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/tune_figures.h"
#include "ui/document/background.h"
#include "ui/document/document.h"

#include <QWidget>

#include <functional>
#include <vector>

class QAction;
class QTableView;
class QToolButton;

namespace stillbay::ui {

class ProblemLabel;
class TunesModel;
class TunesStrip;

/// The kept tunes across the bottom of the window: a line of chips, which opens into a list; take
/// one back, delete, rename, note. Nothing while no tune is kept. Their figures come from a
/// background job once the craft has been left alone for a moment.
class TunesPanel final : public QWidget {
    Q_OBJECT
public:
    explicit TunesPanel(Document& document, QWidget* parent = nullptr);

    QAction* keepAction() const { return m_keep; }
    QTableView& table() { return *m_table; }

    TunesStrip& strip() { return *m_strip; }

    /// In the order of the craft's kept tunes; empty while they are worked out for another list.
    const std::vector<Result<TuneFigures>>& figures() const;
    bool isLate() const;  ///< they belong to an older craft

signals:
    void figuresChanged();  ///< or whether they are late

private:
    void makeActions();
    void makeTable();
    void layOut();
    void keep();
    void restore();
    void remove();
    bool edit(const QString& text, const std::function<void(Setup&)>& change);
    void setupChanged();
    void showState();
    void openAt(int row);
    bool hasFocusInside() const;
    int chosen() const;  // row; -1: none

    Document& m_document;
    TunesModel* m_model;
    QTableView* m_table;
    QToolButton* m_fold;
    TunesStrip* m_strip;
    std::vector<QWidget*> m_ofChosen;  // buttons that need a chosen tune
    ProblemLabel* m_refusal;
    QAction* m_keep = nullptr;
    QAction* m_restore = nullptr;
    QAction* m_delete = nullptr;
    Background<Setup, std::vector<Result<TuneFigures>>> m_job;  // last: it is dropped first
};

}  // namespace stillbay::ui
