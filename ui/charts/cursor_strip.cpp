// SPDX-License-Identifier: MIT
#include "ui/charts/cursor_strip.h"

#include "core/base/units.h"
#include "core/film/film.h"
#include "core/response/at_throttle.h"
#include "ui/charts/point_text.h"
#include "ui/widgets/colours.h"

#include <QApplication>
#include <QLocale>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace stillbay::ui {
namespace {

constexpr int kCellPadding = 6;
constexpr int kWordSlack = 2;             // of the width of words
constexpr std::size_t kWholeCells = 2;    // throttle and wobble
constexpr double kLeastShown_px = 0.001;  // nobody sees less

QFont smallOf(const QFont& font)
{
    QFont small = font;
    small.setPointSizeF(0.88 * font.pointSizeF());
    return small;
}

QFont boldOf(const QFont& font)
{
    QFont bold = font;
    bold.setBold(true);
    return bold;
}

QString pixels(double wobble_px)
{
    const QLocale locale;
    return wobble_px > 0.0 && wobble_px < kLeastShown_px
               ? QObject::tr("< %1 px", "less than").arg(locale.toString(kLeastShown_px))
               : QObject::tr("%1 px").arg(locale.toString(wobble_px, 'g', 2));
}

QString orderMeaning(const OrderPoint& order, const Setup& setup)
{
    const QString sign = orderSign(order.order, setup.drive.propeller.blades);
    const double beat = beat_hz(order.frequency_hz, setup.camera.frame_rate_hz);
    return QObject::tr("%1, beats at %2 Hz", "order").arg(sign, QLocale().toString(beat, 'f', 1));
}

}  // namespace

CursorStrip::CursorStrip(QWidget* parent) : QWidget(parent)
{
    setAccessibleName(tr("Numbers at the throttle cursor"));
    setToolTip(
        tr("At the throttle cursor: order 1 is the unbalance, B the blade pass, 2B twice that. In "
           "the film each beats against the frame rate at the frequency named."));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void CursorStrip::setAssessment(const Setup& setup, const Assessment& assessment)
{
    m_setup = setup;
    m_assessment = assessment;
    fill();
}

void CursorStrip::setThrottle(double throttle)
{
    m_throttle = throttle;
    fill();
}

void CursorStrip::fill()
{
    m_cells.clear();
    if (const ThrottlePoint* const point = pointAt(m_assessment.throttle, m_throttle)) {
        const QLocale locale;
        m_cells.push_back(
            {tr("%1 %").arg(locale.toString(kPercent * point->throttle, 'f', 1)),
             tr("%1 rpm").arg(locale.toString(std::round(point->speed_rpm), 'f', 0))});
        m_cells.push_back({pixels(point->wobble_px), gradeWord(m_setup.limits, point->wobble_px)});
        for (const OrderPoint& order : point->orders)
            m_cells.push_back(
                {tr("%1 Hz, %2", "frequency, wobble")
                     .arg(locale.toString(order.frequency_hz, 'f', 1), pixels(order.wobble_px)),
                 orderMeaning(order, m_setup)});
    }
    setAccessibleDescription(text());
    update();
}

QString CursorStrip::text() const
{
    QStringList parts;
    for (const Cell& cell : m_cells)
        parts << tr("%1 (%2)").arg(cell.value, cell.meaning);
    return parts.join(QStringLiteral("; "));
}

QSize CursorStrip::sizeHint() const
{
    return {400,
            QFontMetrics(boldOf(font())).height() + QFontMetrics(smallOf(font())).height() + 4};
}

// Each cell as wide as its words, the rest of the width shared out between them. Where the width
// does not do, throttle and wobble stay whole, and the orders give way.
void CursorStrip::paintEvent(QPaintEvent*)
{
    if (m_cells.empty())
        return;
    const QFont bold = boldOf(font()), small = smallOf(font());
    const QFontMetrics boldMetrics(bold), smallMetrics(small);
    std::vector<int> widths;
    int sum = 0, whole = 0;
    for (const Cell& cell : m_cells) {
        widths.push_back(std::max(boldMetrics.horizontalAdvance(cell.value),
                                  smallMetrics.horizontalAdvance(cell.meaning)) +
                         2 * kCellPadding + kWordSlack);
        sum += widths.back();
        if (widths.size() <= kWholeCells)
            whole = sum;
    }
    const int count = static_cast<int>(m_cells.size());
    const int share = std::max(0, (width() - sum) / count);
    const double squeeze =
        sum > whole ? std::clamp(static_cast<double>(width() - whole) / (sum - whole), 0.0, 1.0)
                    : 1.0;
    QPainter painter(this);
    const QColor quiet = quietColour(QApplication::palette());
    int left = 0;
    for (std::size_t k = 0; k < m_cells.size(); ++k) {
        const int wide =
            (k < kWholeCells ? widths[k] : static_cast<int>(widths[k] * squeeze)) + share;
        const QRect cell(left + kCellPadding, 0, wide - 2 * kCellPadding, height());
        painter.setFont(bold);
        painter.setPen(palette().color(QPalette::WindowText));
        painter.drawText(cell, Qt::AlignLeft | Qt::AlignTop,
                         boldMetrics.elidedText(m_cells[k].value, Qt::ElideRight, cell.width()));
        painter.setFont(small);
        painter.setPen(quiet);
        painter.drawText(cell, Qt::AlignLeft | Qt::AlignBottom,
                         smallMetrics.elidedText(m_cells[k].meaning, Qt::ElideRight, cell.width()));
        if (k > 0) {
            painter.setPen(palette().color(QPalette::Mid));
            painter.drawLine(left, 3, left, height() - 3);
        }
        left += wide;
    }
}

}  // namespace stillbay::ui
