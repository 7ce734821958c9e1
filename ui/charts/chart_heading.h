// SPDX-License-Identifier: MIT
#pragma once

#include <QWidget>

class QHBoxLayout;

namespace stillbay::ui {

class Chart;

/// The line above a chart: its name, what it tells, a way out of the zoom, and its menu.
class ChartHeading final : public QWidget {
    Q_OBJECT
public:
    ChartHeading(Chart& chart, const QString& explanation, QWidget* parent = nullptr);

    void add(QWidget* control);  ///< before the menu

private:
    QHBoxLayout* m_controls;
};

}  // namespace stillbay::ui
