// SPDX-License-Identifier: MIT
#include "ui/recordings/film_frame.h"

#include "ui/widgets/chart_theme.h"
#include "ui/widgets/plain_number.h"

#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <array>
#include <cmath>

namespace stillbay::ui {
namespace {

constexpr double kShareOfRows = 0.3;  // of the width, for the rows beside the picture
constexpr double kMostRowsWidth = 260.0, kGap = 10.0, kCaption = 1.3;  // the last in lines of text
constexpr std::array kFrameGains{10, 20, 50, 100, 200, 500};

struct FrameAxis {
    double RowBend::*px;
    std::size_t hue;
    Qt::PenStyle style;
};
constexpr FrameAxis kAcross{&RowBend::across_px, 0, Qt::SolidLine};
constexpr FrameAxis kUp{&RowBend::up_px, 2, Qt::DashLine};

QPen penOf(const FrameAxis& axis, const ChartTheme& theme)
{
    QPen pen(theme.axes[axis.hue], 1.8, axis.style);
    pen.setCapStyle(Qt::FlatCap);
    return pen;
}

}  // namespace

FilmFrame::FilmFrame(QWidget* parent) : QWidget(parent)
{
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    setAccessibleName(tr("Frame of the film"));
    setToolTip(
        tr("A frame as the sensor's rows took it, and how far its rows stand off a straight line: "
           "solid across, dashed up. The line through the picture hangs as a plumb line would look "
           "in it, bent so many times more than in the film."));
    clear();
}

void FilmFrame::clear()
{
    setStill({}, 0, 0.0, 0.0);
}

void FilmFrame::setStill(const FilmStill& still, unsigned filmWidth, double cameraWidth,
                         double largest_px)
{
    m_still = still;
    m_filmWidth = filmWidth;
    m_cameraWidth = cameraWidth;
    m_largest_px = largest_px;
    chooseGain();
    setAccessibleDescription(text());
    update();
}

QString FilmFrame::text() const
{
    if (m_still.picture.isNull())
        return {};
    if (m_still.bend.rows.empty())
        return tr("Frame at %1 s says nothing").arg(plainNumber(m_still.time_s, 3));
    return tr("Frame at %1 s: bent by %2 px (rms)")
        .arg(plainNumber(m_still.time_s, 3),
             plainNumber(m_still.bend.rms_px * m_cameraWidth / m_filmWidth, 2));
}

FilmFrame::Places FilmFrame::places() const
{
    const double caption = kCaption * fontMetrics().height();
    const QRectF area(0.0, caption, width(), std::max(height() - caption, 1.0));
    const double rowsWidth = std::min(kShareOfRows * area.width(), kMostRowsWidth);
    const double across = area.width() - rowsWidth - kGap;
    if (m_still.picture.isNull() || !(across > 0.0))
        return {};
    const QSizeF size =
        QSizeF(m_still.picture.size()).scaled(QSizeF(across, area.height()), Qt::KeepAspectRatio);
    const double left = (area.width() - size.width() - rowsWidth - kGap) / 2.0;
    const QRectF picture(QPointF(left, area.top()), size);
    return {picture, QRectF(picture.right() + kGap, area.top(), rowsWidth, size.height()),
            m_filmWidth > 0 ? size.width() / m_filmWidth : 0.0};
}

// The largest with which all frames' rows fit.
void FilmFrame::chooseGain()
{
    const Places at = places();
    m_gain = kFrameGains.front();
    for (const int gain : kFrameGains)
        if (gain * at.scale * m_largest_px <= at.rows.width() / 2.0)
            m_gain = gain;
}

void FilmFrame::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    chooseGain();
}

void FilmFrame::drawRows(QPainter& painter, const Places& at) const
{
    const ChartTheme theme = chartTheme(palette(), !isEnabled());
    painter.fillRect(at.rows, theme.canvas);
    painter.setPen(QPen(theme.grid, 1.0));
    const double middle = at.rows.center().x();
    painter.drawLine(QPointF(middle, at.rows.top()), QPointF(middle, at.rows.bottom()));
    painter.save();
    painter.setClipRect(at.rows);
    for (const FrameAxis& axis : {kUp, kAcross}) {
        QPolygonF line;
        for (const RowBend& row : m_still.bend.rows)
            line << QPointF(middle + m_gain * at.scale * row.*axis.px,
                            at.rows.center().y() + row.row * at.rows.height());
        painter.setPen(penOf(axis, theme));
        painter.drawPolyline(line);
    }
    painter.restore();
    painter.setPen(QPen(theme.quiet, 1.0));
    painter.drawRect(at.rows);
    painter.setPen(theme.text);
    const QRectF caption(at.rows.left(), 0.0, at.rows.width(), at.rows.top());
    painter.drawText(
        caption, Qt::AlignHCenter | Qt::AlignVCenter,
        painter.fontMetrics().elidedText(tr("bend of its rows, ×%1").arg(m_gain), Qt::ElideRight,
                                         static_cast<int>(caption.width())));
    if (m_still.bend.rows.empty()) {
        painter.drawText(at.rows, Qt::AlignCenter | Qt::TextWordWrap, tr("says nothing"));
        return;
    }
    const double lineHeight = painter.fontMetrics().height();
    double y = at.rows.bottom() - 2.0 * lineHeight - 2.0;
    for (const auto& [axis, name] :
         {std::pair(kAcross, tr("across")), std::pair(kUp, tr("up", "direction in a picture"))}) {
        painter.setPen(penOf(axis, theme));
        painter.drawLine(QPointF(at.rows.left() + 4.0, y + lineHeight / 2.0),
                         QPointF(at.rows.left() + 24.0, y + lineHeight / 2.0));
        painter.setPen(theme.text);
        painter.drawText(QPointF(at.rows.left() + 28.0, y + 0.8 * lineHeight), name);
        y += lineHeight;
    }
}

// Light on dark, so that it shows over any scene.
void FilmFrame::drawPlumbLine(QPainter& painter, const Places& at) const
{
    QPolygonF line;
    for (const RowBend& row : m_still.bend.rows)
        line << QPointF(at.picture.center().x() + m_gain * at.scale * row.across_px,
                        at.picture.center().y() + row.row * at.picture.height());
    painter.save();
    painter.setClipRect(at.picture);
    painter.setPen(QPen(Qt::black, 4.0));
    painter.drawPolyline(line);
    painter.setPen(QPen(Qt::white, 1.8));
    painter.drawPolyline(line);
    painter.restore();
}

void FilmFrame::paintEvent(QPaintEvent*)
{
    const Places at = places();
    if (at.picture.isEmpty())
        return;
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    painter.drawImage(at.picture, m_still.picture);
    const QRectF caption(at.picture.left(), 0.0, at.picture.width(), at.picture.top());
    painter.setPen(palette().color(QPalette::WindowText));
    painter.drawText(caption, Qt::AlignLeft | Qt::AlignVCenter,
                     painter.fontMetrics().elidedText(text(), Qt::ElideRight,
                                                      static_cast<int>(caption.width())));
    drawPlumbLine(painter, at);
    drawRows(painter, at);
}

}  // namespace stillbay::ui
