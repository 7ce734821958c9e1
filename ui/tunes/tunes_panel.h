// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/tune_figures.h"
#include "ui/charts/compared_curves.h"
#include "ui/document/background.h"
#include "ui/document/document.h"

#include <QWidget>

#include <functional>
#include <vector>

class QAction;
class QTableView;
class QToolButton;

namespace stillbay::ui {

class ElidedLabel;
class ProblemLabel;
class TunesModel;

/// The kept tunes across the bottom of the window: keep the present one, tick some to compare,
/// take one back, delete, rename, note. Their figures come from a background job once the craft has
/// been left alone for a moment.
class TunesPanel final : public QWidget {
    Q_OBJECT
public:
    explicit TunesPanel(Document& document, QWidget* parent = nullptr);

    QAction* keepAction() const { return m_keep; }
    QTableView& table() { return *m_table; }

    /// Of the ticked tunes, as far as their figures are known.
    std::vector<ComparedCurve> wobbleCurves() const;  ///< throttle [%], wobble [px]
    /// Frequency [Hz]; the largest of x, y, z, or of the turns roll, pitch, yaw.
    std::vector<ComparedCurve> tubeCurves(bool turns) const;

signals:
    void comparedChanged();

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
    bool hasFocusInside() const;
    std::vector<ComparedCurve> compared(
        const std::function<void(const TuneFigures&, ComparedCurve&)>& fill) const;
    int chosen() const;  // row; -1: none

    Document& m_document;
    TunesModel* m_model;
    QTableView* m_table;
    QToolButton* m_fold;
    QToolButton* m_keepButton = nullptr;
    ElidedLabel* m_hint;
    ProblemLabel* m_refusal;
    QAction* m_keep = nullptr;
    QAction* m_restore = nullptr;
    QAction* m_delete = nullptr;
    Background<Setup, std::vector<Result<TuneFigures>>> m_job;  // last: it is dropped first
};

}  // namespace stillbay::ui
