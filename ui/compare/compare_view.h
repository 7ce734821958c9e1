// SPDX-License-Identifier: MIT
#pragma once

#include "ui/charts/compared_curves.h"
#include "ui/compare/compared_craft.h"
#include "ui/document/background.h"
#include "ui/document/document.h"
#include "ui/widgets/result_view.h"

#include <QWidget>

#include <optional>
#include <utility>
#include <vector>

class QTableView;

namespace stillbay::ui {

class CompareChoices;
class CompareModel;
class ThrottleChart;
class ThrottleCursor;
class TransmissibilityChart;

/// Kept tunes and the craft of other files beside the present one: their curves over each other in
/// two charts, their numbers in a table with what differs marked.
class CompareView final : public QWidget, public ResultView {
    Q_OBJECT
public:
    CompareView(Document& document, ThrottleCursor& cursor, QWidget* parent = nullptr);

    void setResult(const Setup& setup, const Result<Assessment>& assessment) override;
    void setStale(bool stale) override;
    /// Of the craft's kept tunes, in their order; empty while they are worked out.
    void setTunes(std::vector<Result<TuneFigures>> figures, bool late);
    /// Adds the craft of a file, which is read at once and never written; a failure is told.
    bool addFile(const QString& path);

    CompareChoices& choices() { return *m_choices; }
    QTableView& table() { return *m_table; }
    TransmissibilityChart& transmissibilityChart() { return *m_through; }
    ThrottleChart& acrossThrottle() { return *m_wobble; }
    bool isComputing() const { return m_job.isDue(); }

protected:
    void showEvent(QShowEvent* event) override;

private:
    struct File {
        QString path;
        Setup craft;
        std::optional<Result<TuneFigures>> figures = {};
    };

    QWidget* makeRight();
    void makeTable();
    void askForFile();
    void removeFile(const QString& key);
    void assessFiles();
    std::vector<ComparedCraft> crafts() const;
    void refresh();
    void draw();
    void drawCharts(const std::vector<ComparedCraft>& compared);
    void fitColumns();
    void fade();

    Document& m_document;
    CompareChoices* m_choices;
    TransmissibilityChart* m_through;
    ThrottleChart* m_wobble;
    CompareModel* m_model;
    QTableView* m_table;
    std::optional<std::pair<Setup, Result<Assessment>>> m_latest;
    std::optional<Result<TuneFigures>> m_present;  // of m_latest
    std::vector<Result<TuneFigures>> m_tunes;
    std::vector<File> m_files;
    bool m_isLate = false;   // the kept tunes' figures
    bool m_isStale = false;  // the present craft's
    bool m_isDrawn = false;
    std::vector<ComparedCurve> m_wobbleCurves, m_throughCurves;              // as drawn
    Background<std::vector<Setup>, std::vector<Result<TuneFigures>>> m_job;  // last: dropped first
};

}  // namespace stillbay::ui
