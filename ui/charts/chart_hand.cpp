// SPDX-License-Identifier: MIT
#include "ui/charts/chart_hand.h"

#include "ui/charts/chart.h"

#include <QContextMenuEvent>
#include <QMouseEvent>
#include <QRubberBand>
#include <QWheelEvent>

#include <cmath>

namespace stillbay::ui {
namespace {

constexpr double kLeastFrame = 12.0;  // smaller is a slip of the hand, and zooms one way only
constexpr double kNotch = 120.0;      // of a wheel, in Qt's eighths of a degree

}  // namespace

ChartHand::ChartHand(Chart& chart)
    : QObject(&chart),
      m_chart(chart),
      m_frame(new QRubberBand(QRubberBand::Rectangle, chart.canvas()))
{
    chart.canvas()->installEventFilter(this);
}

bool ChartHand::eventFilter(QObject*, QEvent* event)
{
    switch (event->type()) {
        case QEvent::MouseButtonPress:
        case QEvent::MouseButtonDblClick:  // the second of two quick presses
            return press(*static_cast<QMouseEvent*>(event));
        case QEvent::MouseMove:
            return move(*static_cast<QMouseEvent*>(event));
        case QEvent::MouseButtonRelease:
            return release(*static_cast<QMouseEvent*>(event));
        case QEvent::Wheel:
            return wheel(*static_cast<QWheelEvent*>(event));
        case QEvent::KeyPress:
            return key(*static_cast<QKeyEvent*>(event));
        case QEvent::ContextMenu:
            m_chart.popupMenu(static_cast<QContextMenuEvent*>(event)->globalPos());
            return true;
        default:
            return false;
    }
}

bool ChartHand::press(const QMouseEvent& event)
{
    if (m_gesture != Gesture::None)
        return true;
    m_button = event.button();
    m_start = event.position();
    if (m_button == Qt::MiddleButton ||
        (m_button == Qt::LeftButton && event.modifiers() == Qt::ShiftModifier)) {
        m_gesture = Gesture::Pan;
    } else if (m_button == Qt::LeftButton) {
        const bool wantsFrame = event.modifiers() == Qt::ControlModifier;
        m_gesture = !wantsFrame && m_chart.dragCursorTo(m_start) ? Gesture::Cursor : Gesture::Frame;
    }
    return m_gesture != Gesture::None;
}

bool ChartHand::move(const QMouseEvent& event)
{
    switch (m_gesture) {
        case Gesture::None:
            return false;
        case Gesture::Cursor:
            m_chart.dragCursorTo(event.position());
            break;
        case Gesture::Frame:
            m_frame->setGeometry(QRectF(m_start, event.position()).normalized().toRect() &
                                 m_chart.canvas()->rect());
            m_frame->show();
            break;
        case Gesture::Pan:
            m_chart.panBy(event.position() - m_start);
            m_start = event.position();
            break;
    }
    return true;
}

bool ChartHand::release(const QMouseEvent& event)
{
    if (m_gesture == Gesture::None || event.button() != m_button)
        return m_gesture != Gesture::None;
    if (m_gesture == Gesture::Frame)
        zoomIntoFrame(event.position());
    m_gesture = Gesture::None;
    m_frame->hide();
    return true;
}

// A flat frame zooms across only, a narrow one up and down only.
void ChartHand::zoomIntoFrame(const QPointF& corner)
{
    const QRectF canvas(m_chart.canvas()->rect());
    QRectF area = QRectF(m_start, corner).normalized().intersected(canvas);
    if (area.width() < kLeastFrame && area.height() < kLeastFrame)
        return;
    if (area.width() < kLeastFrame) {
        area.setLeft(canvas.left());
        area.setRight(canvas.right());
    }
    if (area.height() < kLeastFrame) {
        area.setTop(canvas.top());
        area.setBottom(canvas.bottom());
    }
    m_chart.zoomTo(area);
}

bool ChartHand::wheel(const QWheelEvent& event)
{
    const QPoint turn = event.angleDelta();
    const double notches = (turn.y() != 0 ? turn.y() : turn.x()) / kNotch;
    const double factor = std::pow(Chart::kZoomStep, -notches);
    const bool upAndDown = event.modifiers() == Qt::ShiftModifier;
    m_chart.zoomBy(upAndDown ? 1.0 : factor, upAndDown ? factor : 1.0, event.position());
    return true;
}

bool ChartHand::key(const QKeyEvent& event)
{
    const bool far = event.modifiers() == Qt::ShiftModifier;
    if (event.modifiers() != Qt::NoModifier && !far)
        return false;
    switch (event.key()) {
        case Qt::Key_Left:
        case Qt::Key_Down:
            m_chart.stepCursor(far ? Chart::Step::FarBack : Chart::Step::Back);
            return true;
        case Qt::Key_Right:
        case Qt::Key_Up:
            m_chart.stepCursor(far ? Chart::Step::FarOn : Chart::Step::On);
            return true;
        case Qt::Key_PageDown:
            m_chart.stepCursor(Chart::Step::FarBack);
            return true;
        case Qt::Key_PageUp:
            m_chart.stepCursor(Chart::Step::FarOn);
            return true;
        case Qt::Key_Home:
            m_chart.stepCursor(Chart::Step::First);
            return true;
        case Qt::Key_End:
            m_chart.stepCursor(Chart::Step::Last);
            return true;
        case Qt::Key_Escape:
            m_gesture = Gesture::None;
            m_frame->hide();
            m_chart.hideCursor();
            return true;
        case Qt::Key_F10:
            if (!far)
                return false;
            m_chart.popupMenu(m_chart.canvas()->mapToGlobal(m_chart.canvas()->rect().center()));
            return true;
        default:
            return false;
    }
}

}  // namespace stillbay::ui
