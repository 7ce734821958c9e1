// SPDX-License-Identifier: MIT
#pragma once

#include "ui/charts/chart.h"
#include "ui/recordings/reading.h"

#include <QWidget>

#include <optional>
#include <vector>

class QComboBox;

namespace stillbay::ui {

class ColumnPane;
class PartRow;
class ReadingStrip;
class ResultPart;
class Section;
class SensorPane;
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

    TraceChart& trace() { return *m_trace; }
    ResultPart& result() { return *m_result; }
    ColumnPane& columns() { return *m_columns; }
    Section& reading() { return *m_reading; }
    SensorPane& sensor() { return *m_sensor; }
    ReadingStrip& strip() { return *m_strip; }

signals:
    void stopWanted();
    void readWanted();  ///< once more
    /// [s] since the beginning; none: from there, or up to there
    void partWanted(std::optional<double> from_s, std::optional<double> to_s);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void showState(const Recording& recording);
    void showTrace();
    void fold();

    ReadAnswer m_answer;
    Section* m_reading;
    ColumnPane* m_columns;
    SensorPane* m_sensor;
    ReadingStrip* m_strip;
    QComboBox* m_quantity;
    TraceChart* m_trace;
    PartRow* m_part;
    ResultPart* m_result;
};

}  // namespace stillbay::ui
