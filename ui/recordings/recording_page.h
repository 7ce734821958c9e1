// SPDX-License-Identifier: MIT
#pragma once

#include "ui/charts/chart.h"
#include "ui/charts/measured_chart.h"
#include "ui/recordings/reading.h"

#include <QWidget>

#include <optional>
#include <vector>

class QComboBox;
class QLabel;
class QPushButton;

namespace stillbay::ui {

class ColumnPane;
class NumberBox;
class Section;
class SensorPane;
class ThinProgress;
class TraceChart;

/// One recording: how it is read, its trace with the chosen part, and what it shows.
class RecordingPage final : public QWidget {
    Q_OBJECT
public:
    explicit RecordingPage(QWidget* parent = nullptr);

    void showNothing();
    void showReading();                 ///< being read: what is known so far is kept
    void showStopped();                 ///< the builder has stopped it
    void advance(int step, int steps);  ///< of the reading
    void showAnswer(const ReadAnswer& answer);
    /// What of it is the builder's: where the sensor sat, or which of the arms was tapped.
    void setNamed(const NamedRecording& named, const std::vector<Arm>& arms);
    void setPart(std::optional<double> from_s, std::optional<double> to_s);
    void setCharts(const std::vector<MeasuredShown>& charts);
    void setStale(bool stale);  ///< what it shows is being worked out anew

    TraceChart& trace() { return *m_trace; }
    MeasuredChart& result() { return *m_result; }
    ColumnPane& columns() { return *m_columns; }
    Section& reading() { return *m_reading; }
    SensorPane& sensor() { return *m_sensor; }
    QPushButton& stopButton() { return *m_stop; }

signals:
    void stopWanted();
    void readWanted();  ///< once more
    /// [s] since the beginning; none: from there, or up to there
    void partWanted(std::optional<double> from_s, std::optional<double> to_s);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void showTrace();
    void showChart();
    void showWorking();
    void typedPart();
    void tellPart(double from, double to);
    void fold();

    ReadAnswer m_answer;
    std::vector<MeasuredShown> m_charts;
    QString m_wantedChart;
    bool m_isStopped = false;
    bool m_isStale = false;
    Section* m_reading;
    ColumnPane* m_columns;
    SensorPane* m_sensor;
    QLabel* m_state;
    ThinProgress* m_progress;
    QPushButton* m_stop;
    QComboBox* m_quantity;
    TraceChart* m_trace;
    NumberBox* m_from;
    NumberBox* m_to;
    QPushButton* m_whole;
    QLabel* m_working;
    QComboBox* m_which;
    MeasuredChart* m_result;
    QWidget* m_resultPart;
};

}  // namespace stillbay::ui
