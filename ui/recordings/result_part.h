// SPDX-License-Identifier: MIT
#pragma once

#include "ui/charts/measured_chart.h"
#include "ui/recordings/of_what.h"

#include <QString>
#include <QWidget>

#include <vector>

class QComboBox;
class QLabel;

namespace stillbay::ui {

/// What a recording shows: one of its charts at a time, or that they are being worked out.
class ResultPart final : public QWidget {
    Q_OBJECT
public:
    explicit ResultPart(OfWhat what, QWidget* parent = nullptr);

    void setCharts(const std::vector<MeasuredShown>& charts);
    void setStale(bool stale);             ///< being worked out anew
    void setWorking(const QString& text);  ///< how far that is; empty: nothing to say
    MeasuredChart& chart() { return *m_chart; }

private:
    void showChart();
    void showWorking();

    std::vector<MeasuredShown> m_charts;
    QString m_wanted, m_howFar;
    bool m_isStale = false;
    QComboBox* m_which;
    MeasuredChart* m_chart;
    QLabel* m_working;
};

}  // namespace stillbay::ui
