// SPDX-License-Identifier: MIT
#pragma once

#include <QMenu>

namespace stillbay::ui {

class Chart;
class MessageBar;

/// What can be done with a chart: copy, export, read as a table, zoom. The keys work while the
/// drawing area has the focus.
class ChartMenu final : public QMenu {
    Q_OBJECT
public:
    explicit ChartMenu(Chart& chart);

    void copyPicture();
    void copyData();
    /// Asks for a name; what is there already is not overwritten without a question.
    void askAndExport();
    QString suggestedPath() const;  ///< craft and chart, without a suffix
    /// Writes the chart in the format that the suffix names, and tells the window how it went.
    bool exportTo(const QString& path);
    void showTable();

private:
    void addWithKeys(const QString& text, const QList<QKeySequence>& keys,
                     void (ChartMenu::*act)());
    MessageBar* problemBar() const;
    void zoomIn();
    void zoomOut();
    void resetZoom();

    Chart& m_chart;
};

}  // namespace stillbay::ui
