// SPDX-License-Identifier: MIT
#include "ui/bench/tube_drawing.h"

#include "ui/widgets/colours.h"
#include "ui/widgets/quantity.h"

#include <QPainter>

#include <algorithm>
#include <cmath>

namespace stillbay::ui {
namespace {

constexpr double kArrow = 4.0;  // half size of a dimension's arrow head
constexpr double kScaleBar_mm = 10.0;

// A dimension line from x1 to x2 with its text below.
void drawDimension(QPainter& painter, double x1, double x2, double y, const QString& text)
{
    painter.drawLine(QPointF(x1, y), QPointF(x2, y));
    for (const double x : {x1, x2})
        painter.drawLine(QPointF(x, y - kArrow), QPointF(x, y + kArrow));
    const double width = painter.fontMetrics().horizontalAdvance(text) + 4.0;
    const QRectF place((x1 + x2 - width) / 2.0, y + 2.0, width, painter.fontMetrics().height());
    painter.drawText(place, Qt::AlignCenter, text);
}

// Outline and bore of a length of tube about the axis y.
void drawTube(QPainter& painter, double x1, double x2, double y, double outer, double bore,
              const QPen& outline, const QColor& rubber)
{
    painter.setPen(outline);
    painter.setBrush(rubber);
    painter.drawRect(QRectF(x1, y - outer / 2.0, x2 - x1, outer));
    QPen hidden = outline;
    hidden.setStyle(Qt::DashLine);
    painter.setPen(hidden);
    for (const double side : {-0.5, 0.5})
        painter.drawLine(QPointF(x1, y + side * bore), QPointF(x2, y + side * bore));
}

}  // namespace

struct TubeDrawing::Ink {
    QPen line, outline;
    QColor rubber, metal;
};

TubeDrawing::TubeDrawing(QWidget* parent) : QWidget(parent)
{
    setAccessibleName(tr("Drawing of one tube"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

void TubeDrawing::setShape(const TubeShape& shape)
{
    if (m_shape == shape)
        return;
    m_shape = shape;
    setAccessibleDescription(tr("Cut %1 long; %2 free between the clamps; fitted over %3.")
                                 .arg(measureText(shape.cut_mm()), measureText(shape.free_mm),
                                      measureText(shape.fitted_mm)));
    update();
}

void TubeDrawing::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QColor text = palette().color(QPalette::WindowText);
    const QColor window = palette().color(QPalette::Window);
    const bool dark = isDark(palette());
    const Ink ink{QPen(mixed(text, window, 0.3), 1.0), QPen(mixed(text, window, 0.15), 1.2),
                  mixed(window, QColor(0x56, 0xB4, 0xE9), dark ? 0.35 : 0.4),
                  mixed(window, text, 0.35)};

    const double title = fontMetrics().height() + 2.0;
    const double below = 2.0 * fontMetrics().height() + 12.0;  // the dimension, the scale bar
    const double half = width() / 2.0;
    const double margin = 14.0;
    const double longest = std::max(m_shape.cut_mm(), m_shape.fitted_mm + 2.0 * m_shape.grip_mm);
    const double widest = 1.35 * m_shape.outer_mm;  // clamps stand out beyond the tube
    const double scale = std::max(
        0.1, std::min((half - 2.0 * margin) / longest, (height() - title - below - 4.0) / widest));
    drawAsCut(painter, ink, QRectF(0.0, 0.0, half, height()), scale);
    drawAsFitted(painter, ink, QRectF(half, 0.0, half, height()), scale);

    const double bar = scale * kScaleBar_mm;
    const double y = height() - 3.0;
    painter.setPen(QPen(ink.line.color(), 3.0, Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(QPointF(half - bar / 2.0, y), QPointF(half + bar / 2.0, y));
    painter.setPen(ink.line);
    painter.drawText(QRectF(half - 60.0, y - title - 2.0, 120.0, title),
                     Qt::AlignHCenter | Qt::AlignBottom, tr("%1 mm").arg(kScaleBar_mm));
}

void TubeDrawing::drawAsCut(QPainter& painter, const Ink& ink, const QRectF& area,
                            double scale) const
{
    painter.setPen(palette().color(QPalette::WindowText));
    painter.drawText(area, Qt::AlignHCenter | Qt::AlignTop,
                     tr("As cut: %1").arg(measureText(m_shape.cut_mm())));
    const double x = area.center().x(), y = area.center().y() - 8.0;
    const double cut = scale * m_shape.cut_mm() / 2.0, free = scale * m_shape.free_mm / 2.0;
    const double outer = scale * m_shape.outer_mm;
    drawTube(painter, x - cut, x + cut, y, outer, scale * m_shape.bore_mm, ink.outline, ink.rubber);
    painter.setPen(ink.line);
    for (const double mark : {x - free, x + free})
        painter.drawLine(QPointF(mark, y - outer / 2.0), QPointF(mark, y + outer / 2.0 + 8.0));
    drawDimension(painter, x - free, x + free, y + outer / 2.0 + 8.0,
                  tr("%1 free").arg(measureText(m_shape.free_mm)));
}

void TubeDrawing::drawAsFitted(QPainter& painter, const Ink& ink, const QRectF& area,
                               double scale) const
{
    painter.setPen(palette().color(QPalette::WindowText));
    painter.drawText(area, Qt::AlignHCenter | Qt::AlignTop, tr("As fitted"));
    const double x = area.center().x(), y = area.center().y() - 8.0;
    const double fitted = scale * m_shape.fitted_mm / 2.0, grip = scale * m_shape.grip_mm;
    const double outer = scale * m_shape.outer_mm;
    // Rubber keeps its volume: longer means thinner.
    const double thinning = std::sqrt(m_shape.free_mm / m_shape.fitted_mm);
    drawTube(painter, x - fitted, x + fitted, y, thinning * outer,
             thinning * scale * m_shape.bore_mm, ink.outline, ink.rubber);

    painter.setPen(ink.outline);
    painter.setBrush(ink.metal);
    if (m_shape.ends == Ends::Clamped) {
        const double held = 1.3 * outer;
        painter.drawRect(QRectF(x - fitted - grip, y - held / 2.0, grip, held));
        painter.drawRect(QRectF(x + fitted, y - held / 2.0, grip, held));
    } else {
        const double eye = std::min(grip, outer) / 2.0;
        painter.drawEllipse(QPointF(x - fitted - eye, y), eye, eye);
        painter.drawEllipse(QPointF(x + fitted + eye, y), eye, eye);
    }
    painter.setPen(ink.line);
    for (const double end : {x - fitted, x + fitted})
        painter.drawLine(QPointF(end, y + outer / 2.0), QPointF(end, y + outer / 2.0 + 8.0));
    drawDimension(painter, x - fitted, x + fitted, y + outer / 2.0 + 8.0,
                  tr("%1 apart").arg(measureText(m_shape.fitted_mm)));
}

}  // namespace stillbay::ui
