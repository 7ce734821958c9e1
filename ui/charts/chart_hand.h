// SPDX-License-Identifier: MIT
#pragma once

#include <QObject>
#include <QPointF>

class QKeyEvent;
class QMouseEvent;
class QRubberBand;
class QWheelEvent;

namespace stillbay::ui {

class Chart;

/// What mouse and keyboard do in a chart's drawing area. Left button: the chart's own cursor, or a
/// frame to zoom into (Ctrl: always the frame); middle button, or left with Shift: move what is
/// shown; wheel: zoom across, with Shift up and down. Arrow keys move the cursor.
class ChartHand final : public QObject {
    Q_OBJECT
public:
    explicit ChartHand(Chart& chart);

    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    enum class Gesture { None, Cursor, Frame, Pan };

    bool press(const QMouseEvent& event);
    bool move(const QMouseEvent& event);
    bool release(const QMouseEvent& event);
    bool wheel(const QWheelEvent& event);
    bool key(const QKeyEvent& event);
    void zoomIntoFrame(const QPointF& corner);

    Chart& m_chart;
    Gesture m_gesture = Gesture::None;
    Qt::MouseButton m_button = Qt::NoButton;
    QPointF m_start;       // of the gesture, or the last place while panning
    QRubberBand* m_frame;  // owned by the canvas
};

}  // namespace stillbay::ui
