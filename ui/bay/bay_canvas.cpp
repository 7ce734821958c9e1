// SPDX-License-Identifier: MIT
#include "ui/bay/bay_canvas.h"

#include "ui/bay/bay_marks.h"
#include "ui/bay/craft_painter.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QWheelEvent>

#include <algorithm>
#include <cmath>

namespace stillbay::ui {
namespace {

constexpr double kTurn_deg = 5.0;          // of one key
constexpr double kTurnPerPixel_deg = 0.4;  // of a drag
constexpr double kZoomStep = 1.2;          // of one key or notch
constexpr double kLeastZoom = 0.3, kMostZoom = 12.0;
constexpr double kLeastMargin = 10.0, kMostMargin = 28.0, kMarginShare = 0.05;
constexpr double kMostAxis = 34.0, kAxisShare = 0.08;  // length of an axis' arrow

constexpr int kRoomForNames = 300;  // of the marks

// Labels; the tubes' numbers follow.
enum LabelKey { kMassLabel, kElasticLabel, kRollLabel, kPitchLabel, kCameraLabel, kFirstTubeLabel };

QRectF around(const QPointF& middle, double half)
{
    return {middle - QPointF(half, half), middle + QPointF(half, half)};
}

}  // namespace

BayCanvas::BayCanvas(QWidget* parent) : QWidget(parent)
{
    setFocusPolicy(Qt::StrongFocus);
    setCursor(Qt::OpenHandCursor);
    setAccessibleName(tr("Craft in space"));
    setToolTip(
        tr("Drag or use the arrow keys to turn the craft, the wheel or + and − to zoom, 0 to see "
           "all of it. Shift and a drag move it."));
}

void BayCanvas::setCraft(const Setup& setup)
{
    m_setup = setup;
    findOutline();
    changed();
}

void BayCanvas::setBay(const BayPlace& bay)
{
    m_bay = bay;
    update();
}

void BayCanvas::setStill(const BayPlace& bay)
{
    if (bay == m_still)
        return;
    m_still = bay;
    findOutline();
    changed();
}

// The bay where it is drawn and where it is still, so that a swing does not change the scale.
void BayCanvas::findOutline()
{
    m_outline_mm.clear();
    const auto take = [this](const CraftShape& shape, bool all) {
        for (const Face& face : shape.faces)
            if (all || face.piece == Piece::Bay || face.piece == Piece::Tube)
                m_outline_mm.insert(m_outline_mm.end(), face.corners.begin(), face.corners.end());
        for (const Stroke& stroke : shape.strokes)
            if (all)
                m_outline_mm.insert(m_outline_mm.end(), {stroke.from, stroke.to});
    };
    take(bayShape(m_setup, {}), true);
    take(craftShape(m_setup, m_still), m_subject == Subject::Craft);
}

void BayCanvas::setGhost(bool shows)
{
    m_ghost = shows;
    update();
}

void BayCanvas::setMassKnown(bool known)
{
    m_massKnown = known;
    update();
}

void BayCanvas::setElastic(const std::optional<ElasticMarks>& marks)
{
    m_elastic = marks;
    update();
}

// Another picture: labels are placed anew.
void BayCanvas::changed()
{
    m_labels.forgetSides();
    update();
}

void BayCanvas::setView(const ViewPoint& view)
{
    m_view = view;
    changed();
}

void BayCanvas::setSubject(Subject subject)
{
    m_subject = subject;
    m_zoom = 1.0;
    m_aside_mm = {};
    findOutline();
    changed();
    emit subjectChanged();
}

void BayCanvas::setZoom(double zoom)
{
    zoomAt(zoom, room().center());
    if (m_zoom == 1.0)
        m_aside_mm = {};
}

// What is drawn there stays there.
void BayCanvas::zoomAt(double zoom, const QPointF& fixed)
{
    const double before = frame().pixelsPerMillimetre;
    const QPointF fromMiddle = fixed - room().center();
    m_zoom = std::clamp(zoom, kLeastZoom, kMostZoom);
    const double after = frame().pixelsPerMillimetre;
    m_aside_mm += fromMiddle / after - fromMiddle / before;
    changed();
}

void BayCanvas::setLit(const std::vector<LitPieces>& lit)
{
    if (lit == m_lit)
        return;
    m_lit = lit;
    update();
}

void BayCanvas::setStale(bool stale)
{
    m_stale = stale;
    update();
}

QRectF BayCanvas::room() const
{
    const double margin =
        std::clamp(kMarginShare * std::min(width(), height()), kLeastMargin, kMostMargin);
    return QRectF(rect()).adjusted(margin, margin, -margin, -margin);
}

ViewFrame BayCanvas::frame() const
{
    const QRectF all = room();
    ViewFrame frame = fitted(m_view, m_outline_mm, all);
    const QPointF fromMiddle = frame.origin - all.center();
    frame.pixelsPerMillimetre *= m_zoom;
    frame.origin = all.center() + m_zoom * fromMiddle + frame.pixelsPerMillimetre * m_aside_mm;
    return frame;
}

void BayCanvas::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(rect(), palette().base());
    if (m_stale)
        painter.setOpacity(0.4);
    const ViewFrame now = frame();
    const CraftShape shape = craftShape(m_setup, m_bay);
    paintCraft(painter, m_picture, size(), now, shape,
               m_ghost ? bayShape(m_setup, {}) : CraftShape{}, m_lit, palette());
    drawMarks(painter, now, shape);
    painter.setOpacity(1.0);
    drawAxes(painter, now);
    if (hasFocus()) {
        painter.setPen(QPen(palette().color(QPalette::Highlight), 1.0));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5));
    }
}

// Text on a ground of its own beside its mark, with a line to it where it had to go farther off.
void BayCanvas::drawLabels(QPainter& painter, const std::vector<Label>& labels,
                           const std::vector<QRectF>& marks)
{
    m_labels.begin(rect(), marks);
    const QFontMetricsF metrics(font());
    std::vector<QPointF> starts;
    m_labelBoxes.clear();
    painter.setPen(QPen(palette().color(QPalette::Text), 0.7));
    for (const Label& label : labels) {
        const QRectF ink = metrics.boundingRect(label.text).adjusted(-2.0, -1.0, 2.0, 1.0);
        const auto& [box, apart] = m_labels.place(label.key, label.mark, label.gap, ink.size());
        if (apart)
            painter.drawLine(label.mark,
                             QPointF(std::clamp(label.mark.x(), box.left(), box.right()),
                                     std::clamp(label.mark.y(), box.top(), box.bottom())));
        m_labelBoxes.push_back(box);
        starts.push_back(box.topLeft() - ink.topLeft());
    }
    QColor ground = palette().color(QPalette::Base);
    ground.setAlpha(190);
    painter.setPen(Qt::NoPen);
    painter.setBrush(ground);
    for (const QRectF& box : m_labelBoxes)
        painter.drawRoundedRect(box, 3.0, 3.0);
    painter.setPen(palette().color(QPalette::Text));
    for (std::size_t k = 0; k < labels.size(); ++k)
        painter.drawText(starts[k], labels[k].text);
}

void BayCanvas::drawMarks(QPainter& painter, const ViewFrame& frame, const CraftShape& shape)
{
    const auto onBay = [&](const Vector3d& p_mm) {
        return frame.place(m_bay.moved(p_mm));
    };
    if (m_elastic)
        for (const auto& [from, to] : {m_elastic->rollAxis_mm, m_elastic->pitchAxis_mm})
            drawElasticAxis(painter, palette(), {onBay(from), onBay(to)});
    painter.setBrush(palette().base());
    for (std::size_t k = 0; k < shape.tubeEnds.size(); ++k) {
        const bool lit = isLit(m_lit, Piece::Tube, static_cast<int>(k));
        const double size = lit ? 5.0 : 2.5;
        painter.setPen(QPen(palette().color(QPalette::Text), lit ? 2.6 : 1.0));
        painter.drawEllipse(frame.place(shape.tubeEnds[k]), size, size);
    }
    std::vector<QRectF> taken{axesBox()};
    if (m_massKnown) {
        const QPointF mass = frame.place(shape.centreOfMass_mm);
        drawMassMark(painter, palette(), mass);
        taken.push_back(around(mass, kMassReach));
    }
    if (m_elastic) {
        const QPointF middle = onBay(m_elastic->centre_mm);
        drawElasticMark(painter, palette(), middle);
        taken.push_back(around(middle, kElasticReach));
    }
    drawLabels(painter, namesOf(frame, shape), taken);
}

// What stands in most need of its place comes first. Where there is little room the legend alone
// tells what the marks are.
std::vector<BayCanvas::Label> BayCanvas::namesOf(const ViewFrame& frame,
                                                 const CraftShape& shape) const
{
    std::vector<Label> named;
    int key = kFirstTubeLabel;
    for (const Vector3d& end : shape.tubeEnds) {
        named.push_back({key, frame.place(end), 5.0, QString::number(key - kFirstTubeLabel + 1)});
        ++key;
    }
    const bool roomy = height() >= kRoomForNames;
    if (m_massKnown && roomy)
        named.push_back({kMassLabel, frame.place(shape.centreOfMass_mm), kMassReach + 2.0,
                         tr("centre of mass")});
    named.push_back({kCameraLabel, frame.place(shape.camera_mm), 6.0, tr("camera")});
    if (!m_elastic || !roomy)
        return named;
    const auto place = [&](const Vector3d& p_mm) {
        return frame.place(m_bay.moved(p_mm));
    };
    named.push_back(
        {kElasticLabel, place(m_elastic->centre_mm), kElasticReach + 2.0, tr("elastic centre")});
    named.push_back({kRollLabel, place(m_elastic->rollAxis_mm[0]), 5.0, tr("roll axis")});
    named.push_back({kPitchLabel, place(m_elastic->pitchAxis_mm[0]), 5.0, tr("pitch axis")});
    return named;
}

// Forward, left and up, in the lower left corner.
QRectF BayCanvas::axesBox() const
{
    const double axis = std::min(kMostAxis, kAxisShare * std::min(width(), height()));
    const double wide = 2.0 * (axis + 6.0 + fontMetrics().horizontalAdvance(tr("x forward")));
    const double tall = 2.0 * (axis + fontMetrics().height());
    return {2.0, height() - tall - 2.0, wide, tall};
}

void BayCanvas::drawAxes(QPainter& painter, const ViewFrame& frame) const
{
    const double axis = std::min(kMostAxis, kAxisShare * std::min(width(), height()));
    const QPointF origin = axesBox().center();
    const std::array names{tr("x forward"), tr("y left"), tr("z up")};
    QColor ground = palette().color(QPalette::Base);
    ground.setAlpha(190);
    for (int k = 0; k < 3; ++k) {
        const Seen seen = frame.projection.see(Vector3d::Unit(k));
        const QPointF tip = origin + axis * QPointF(seen.right, -seen.up);
        painter.setPen(QPen(palette().color(QPalette::Base), 4.0));
        painter.drawLine(origin, tip);
        painter.setPen(QPen(palette().color(QPalette::Text), 1.4));
        painter.drawLine(origin, tip);
        painter.drawEllipse(tip, 1.5, 1.5);
        if (std::hypot(seen.right, seen.up) < 0.15)
            continue;  // it points at the viewer
        const QString& name = names[static_cast<std::size_t>(k)];
        QRectF box(QPointF(),
                   QSizeF(fontMetrics().horizontalAdvance(name) + 2.0, fontMetrics().height()));
        box.moveCenter(tip + QPointF(seen.right * (0.5 * box.width() + 5.0),
                                     -seen.up * (0.5 * box.height() + 3.0)));
        painter.setPen(Qt::NoPen);
        painter.setBrush(ground);
        painter.drawRoundedRect(box, 3.0, 3.0);
        painter.setPen(palette().color(QPalette::Text));
        painter.drawText(box, Qt::AlignCenter, name);
    }
}

void BayCanvas::turn(double azimuth_deg, double elevation_deg)
{
    m_view.azimuth_deg = std::remainder(m_view.azimuth_deg + azimuth_deg, 360.0);
    m_view.elevation_deg = std::clamp(m_view.elevation_deg + elevation_deg, -90.0, 90.0);
    changed();
}

void BayCanvas::mousePressEvent(QMouseEvent* event)
{
    m_dragged = event->pos();
}

void BayCanvas::mouseMoveEvent(QMouseEvent* event)
{
    const bool left = event->buttons() & Qt::LeftButton;
    if (!left && !(event->buttons() & Qt::MiddleButton))
        return;
    const QPoint way = event->pos() - m_dragged;
    m_dragged = event->pos();
    if (left && event->modifiers() != Qt::ShiftModifier)
        return turn(-kTurnPerPixel_deg * way.x(), kTurnPerPixel_deg * way.y());
    m_aside_mm += QPointF(way) / frame().pixelsPerMillimetre;
    changed();
}

void BayCanvas::wheelEvent(QWheelEvent* event)
{
    zoomAt(m_zoom * std::pow(kZoomStep, event->angleDelta().y() / 120.0), event->position());
    event->accept();
}

void BayCanvas::keyPressEvent(QKeyEvent* event)
{
    switch (event->key()) {
        case Qt::Key_Left:
            return turn(kTurn_deg, 0.0);
        case Qt::Key_Right:
            return turn(-kTurn_deg, 0.0);
        case Qt::Key_Up:
            return turn(0.0, kTurn_deg);
        case Qt::Key_Down:
            return turn(0.0, -kTurn_deg);
        case Qt::Key_Plus:
        case Qt::Key_Equal:
            return setZoom(m_zoom * kZoomStep);
        case Qt::Key_Minus:
            return setZoom(m_zoom / kZoomStep);
        case Qt::Key_0:
            return setSubject(Subject::Craft);
        default:
            QWidget::keyPressEvent(event);
    }
}

}  // namespace stillbay::ui
