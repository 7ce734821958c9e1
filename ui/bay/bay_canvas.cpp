// SPDX-License-Identifier: MIT
#include "ui/bay/bay_canvas.h"

#include "ui/bay/piece_look.h"
#include "ui/widgets/chart_theme.h"

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
constexpr double kMargin = 24.0;  // around the craft [logical pixels]
constexpr double kAxis = 34.0;    // length of an axis' arrow [logical pixels]
constexpr double kCircle = 6.0, kCross = 9.0, kDiamond = 10.0;  // marks, from their middles

// Labels; the tubes' numbers follow.
enum LabelKey { kMassLabel, kElasticLabel, kRollLabel, kPitchLabel, kCameraLabel, kFirstTubeLabel };

QRectF around(const QPointF& middle, double half)
{
    return {middle - QPointF(half, half), middle + QPointF(half, half)};
}

}  // namespace

// The projection and its scale for the widget as it is now.
struct BayCanvas::Frame {
    Projection projection;
    double pixelsPerMillimetre;
    QPointF middle;
    Vector3d middle_mm;

    QPointF place(const Vector3d& p_mm) const
    {
        const Seen seen = projection.see(p_mm - middle_mm);
        return middle + pixelsPerMillimetre * QPointF(seen.right, -seen.up);
    }
};

BayCanvas::BayCanvas(QWidget* parent) : QWidget(parent)
{
    setFocusPolicy(Qt::StrongFocus);
    setCursor(Qt::OpenHandCursor);
    setAccessibleName(tr("Craft in space"));
    setToolTip(
        tr("Drag or use the arrow keys to turn the craft, the wheel or + and − to zoom, 0 to see "
           "all of it."));
}

void BayCanvas::setCraft(const Setup& setup)
{
    m_labels.forgetSides();
    m_setup = setup;
    Vector3d low = Vector3d::Constant(1e9), high = Vector3d::Constant(-1e9);
    for (const Face& face : craftShape(m_setup, m_bay).faces)
        for (const Vector3d& corner : face.corners) {
            low = low.cwiseMin(corner);
            high = high.cwiseMax(corner);
        }
    m_middle_mm = 0.5 * (low + high);
    m_reach_mm = std::max(1.0, 0.5 * (high - low).norm());
    update();
}

void BayCanvas::setBay(const BayPlace& bay)
{
    m_bay = bay;
    update();
}

void BayCanvas::setElastic(const std::optional<ElasticMarks>& marks)
{
    m_elastic = marks;
    update();
}

void BayCanvas::setView(const ViewPoint& view)
{
    m_labels.forgetSides();
    m_view = view;
    update();
}

void BayCanvas::setZoom(double zoom)
{
    m_labels.forgetSides();
    m_zoom = std::clamp(zoom, kLeastZoom, kMostZoom);
    update();
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

BayCanvas::Frame BayCanvas::frame() const
{
    const double room = std::max(10.0, 0.5 * std::min(width(), height()) - kMargin);
    // Seen from most sides a flat craft fills about two thirds of its diagonal.
    return {Projection(m_view), 1.35 * m_zoom * room / m_reach_mm,
            QPointF(0.5 * width(), 0.5 * height()), m_middle_mm};
}

QPointF BayCanvas::placeOf(const Vector3d& p_mm) const
{
    return frame().place(p_mm);
}

void BayCanvas::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(rect(), palette().base());
    if (m_stale)
        painter.setOpacity(0.4);
    const Frame now = frame();
    const CraftShape shape = craftShape(m_setup, m_bay);
    drawFaces(painter, now, shape);
    drawStrokes(painter, now, shape);
    drawMarks(painter, now, shape);
    painter.setOpacity(1.0);
    drawAxes(painter, now);
    if (hasFocus()) {
        painter.setPen(QPen(palette().color(QPalette::Highlight), 1.0));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5));
    }
}

// Far faces first; what is nearer covers them.
void BayCanvas::drawFaces(QPainter& painter, const Frame& frame, const CraftShape& shape) const
{
    struct Drawn {
        const Face* face;
        double near;
    };
    std::vector<Drawn> order;
    for (const Face& face : shape.faces) {
        double near = 0.0;
        for (const Vector3d& corner : face.corners)
            near += frame.projection.see(corner).near;
        order.push_back({&face, near / static_cast<double>(face.corners.size())});
    }
    std::stable_sort(order.begin(), order.end(),
                     [](const Drawn& a, const Drawn& b) { return a.near < b.near; });
    for (const Drawn& drawn : order) {
        const std::vector<Vector3d>& corners = drawn.face->corners;
        const Vector3d normal =
            (corners[1] - corners[0]).cross(corners[2] - corners[1]).normalized();
        const PieceLook look =
            lookOf(drawn.face->piece, isLit(m_lit, drawn.face->piece, drawn.face->index), palette(),
                   std::abs(normal.dot(frame.projection.towardsViewer())));
        QPolygonF polygon;
        for (const Vector3d& corner : corners)
            polygon << frame.place(corner);
        painter.setPen(look.edge);
        painter.setBrush(look.fill);
        painter.drawPolygon(polygon);
    }
}

void BayCanvas::drawStrokes(QPainter& painter, const Frame& frame, const CraftShape& shape) const
{
    for (const Stroke& stroke : shape.strokes) {
        painter.setPen(
            lookOf(stroke.piece, isLit(m_lit, stroke.piece, stroke.index), palette(), 1.0).edge);
        painter.drawLine(frame.place(stroke.from), frame.place(stroke.to));
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

void BayCanvas::drawMarks(QPainter& painter, const Frame& frame, const CraftShape& shape)
{
    const QColor ink = palette().color(QPalette::Text);
    if (m_elastic)
        drawElasticAxes(painter, frame);
    painter.setBrush(palette().base());
    for (std::size_t k = 0; k < shape.tubeEnds.size(); ++k) {
        const bool lit = isLit(m_lit, Piece::Tube, static_cast<int>(k));
        const double size = lit ? 5.0 : 2.5;
        painter.setPen(QPen(ink, lit ? 2.6 : 1.0));
        painter.drawEllipse(frame.place(shape.tubeEnds[k]), size, size);
    }
    const QPointF mass = frame.place(shape.centreOfMass_mm);
    painter.setPen(QPen(ink, 1.6));
    painter.drawEllipse(mass, kCircle, kCircle);
    painter.drawLine(mass - QPointF(kCross, 0.0), mass + QPointF(kCross, 0.0));
    painter.drawLine(mass - QPointF(0.0, kCross), mass + QPointF(0.0, kCross));
    std::vector<QRectF> marks{around(mass, kCross)};
    if (m_elastic) {
        drawElasticCentre(painter, frame);
        marks.push_back(around(frame.place(m_bay.moved(m_elastic->centre_mm)), kDiamond));
    }
    drawLabels(painter, namesOf(frame, shape), marks);
}

// Dash and dot, on a ground that keeps them apart from what they run through.
void BayCanvas::drawElasticAxes(QPainter& painter, const Frame& frame) const
{
    for (const auto& [from, to] : {m_elastic->rollAxis_mm, m_elastic->pitchAxis_mm}) {
        const QLineF line(frame.place(m_bay.moved(from)), frame.place(m_bay.moved(to)));
        painter.setPen(QPen(palette().color(QPalette::Base), 3.6));
        painter.drawLine(line);
        painter.setPen(QPen(palette().color(QPalette::Text), 1.3, Qt::DashDotLine, Qt::FlatCap));
        painter.drawLine(line);
    }
}

// A diamond that the mark of the centre of mass does not hide.
void BayCanvas::drawElasticCentre(QPainter& painter, const Frame& frame) const
{
    const QPointF middle = frame.place(m_bay.moved(m_elastic->centre_mm));
    QPolygonF diamond;
    for (const QPointF& way :
         {QPointF(0.0, -1.0), QPointF(1.0, 0.0), QPointF(0.0, 1.0), QPointF(-1.0, 0.0)})
        diamond << middle + kDiamond * way;
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(palette().color(QPalette::Base), 4.0));
    painter.drawPolygon(diamond);
    painter.setPen(QPen(palette().color(QPalette::Text), 1.6));
    painter.drawPolygon(diamond);
    painter.setBrush(palette().color(QPalette::Text));
    painter.drawEllipse(middle, 1.6, 1.6);
}

// What stands in most need of its place comes first.
std::vector<BayCanvas::Label> BayCanvas::namesOf(const Frame& frame, const CraftShape& shape) const
{
    std::vector<Label> named;
    int key = kFirstTubeLabel;
    for (const Vector3d& end : shape.tubeEnds) {
        named.push_back({key, frame.place(end), 5.0, QString::number(key - kFirstTubeLabel + 1)});
        ++key;
    }
    named.push_back(
        {kMassLabel, frame.place(shape.centreOfMass_mm), kCross + 2.0, tr("centre of mass")});
    named.push_back({kCameraLabel, frame.place(shape.camera_mm), 6.0, tr("camera")});
    if (!m_elastic)
        return named;
    const auto place = [&](const Vector3d& p_mm) {
        return frame.place(m_bay.moved(p_mm));
    };
    named.push_back(
        {kElasticLabel, place(m_elastic->centre_mm), kDiamond + 2.0, tr("elastic centre")});
    named.push_back({kRollLabel, place(m_elastic->rollAxis_mm[0]), 5.0, tr("roll axis")});
    named.push_back({kPitchLabel, place(m_elastic->pitchAxis_mm[0]), 5.0, tr("pitch axis")});
    return named;
}

// Forward, left and up in the lower left corner.
void BayCanvas::drawAxes(QPainter& painter, const Frame& frame) const
{
    const double room = fontMetrics().horizontalAdvance(tr("x forward")) + kAxis + 8.0;
    const QPointF origin(room, height() - kAxis - 22.0);
    const std::array names{tr("x forward"), tr("y left"), tr("z up")};
    painter.setPen(QPen(palette().color(QPalette::Text), 1.4));
    for (int axis = 0; axis < 3; ++axis) {
        const Seen seen = frame.projection.see(Vector3d::Unit(axis));
        const QPointF tip = origin + kAxis * QPointF(seen.right, -seen.up);
        painter.drawLine(origin, tip);
        painter.drawEllipse(tip, 1.5, 1.5);
        if (std::hypot(seen.right, seen.up) < 0.15)
            continue;  // it points at the viewer
        const double width = fontMetrics().horizontalAdvance(names[static_cast<std::size_t>(axis)]);
        painter.drawText(
            tip + QPointF(seen.right < -0.3 ? -width - 4.0 : 4.0, seen.up < -0.3 ? 12.0 : -3.0),
            names[static_cast<std::size_t>(axis)]);
    }
}

void BayCanvas::turn(double azimuth_deg, double elevation_deg)
{
    m_labels.forgetSides();
    m_view.azimuth_deg = std::remainder(m_view.azimuth_deg + azimuth_deg, 360.0);
    m_view.elevation_deg = std::clamp(m_view.elevation_deg + elevation_deg, -90.0, 90.0);
    update();
}

void BayCanvas::mousePressEvent(QMouseEvent* event)
{
    m_dragged = event->pos();
}

void BayCanvas::mouseMoveEvent(QMouseEvent* event)
{
    if (!(event->buttons() & Qt::LeftButton))
        return;
    const QPoint way = event->pos() - m_dragged;
    m_dragged = event->pos();
    turn(-kTurnPerPixel_deg * way.x(), kTurnPerPixel_deg * way.y());
}

void BayCanvas::wheelEvent(QWheelEvent* event)
{
    setZoom(m_zoom * std::pow(kZoomStep, event->angleDelta().y() / 120.0));
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
            return setZoom(1.0);
        default:
            QWidget::keyPressEvent(event);
    }
}

}  // namespace stillbay::ui
