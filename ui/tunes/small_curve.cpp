// SPDX-License-Identifier: MIT
#include "ui/tunes/small_curve.h"

#include "ui/charts/compared_curves.h"
#include "ui/tunes/tunes_model.h"
#include "ui/widgets/chart_theme.h"

#include <QApplication>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace stillbay::ui {
namespace {

// A decade below the faint limit and half a one above the bad limit are in sight.
constexpr double kBelowFaint = 10.0, kAboveBad = 3.0;
constexpr double kMargin = 3.0;

}  // namespace

SmallCurve::SmallCurve(const TunesModel& model, QObject* parent)
    : QStyledItemDelegate(parent), m_model(model)
{
}

QSize SmallCurve::sizeHint(const QStyleOptionViewItem& option, const QModelIndex&) const
{
    return {24 * option.fontMetrics.averageCharWidth(), option.fontMetrics.height() + 8};
}

void SmallCurve::paint(QPainter* painter, const QStyleOptionViewItem& option,
                       const QModelIndex& index) const
{
    QStyledItemDelegate::paint(painter, option, index);
    const TuneFigures* const figures = m_model.figures(index.row());
    if (!figures || figures->curve.size() < 2)
        return;
    const ChartTheme theme = chartTheme(option.palette, m_model.isLate());
    const Limits& limits = m_model.limits();
    const QRectF area = QRectF(option.rect).adjusted(kMargin, kMargin, -kMargin, -kMargin);
    const double low = std::log(limits.faint_px / kBelowFaint),
                 high = std::log(limits.bad_px * kAboveBad);
    const auto y = [&](double wobble_px) {
        const double share =
            std::clamp((std::log(std::max(wobble_px, 1e-12)) - low) / (high - low), 0.0, 1.0);
        return area.bottom() - share * area.height();
    };
    const double from = figures->curve.front().throttle, to = figures->curve.back().throttle;
    QPolygonF line;
    for (const WobbleAt& at : figures->curve)
        line << QPointF(area.left() + (at.throttle - from) / (to - from) * area.width(),
                        y(at.wobble_px));

    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    painter->setPen(QPen(theme.faintHatch, 1.0, Qt::DotLine));
    painter->drawLine(QPointF(area.left(), y(limits.faint_px)),
                      QPointF(area.right(), y(limits.faint_px)));
    painter->setPen(QPen(theme.badHatch, 1.0));
    painter->drawLine(QPointF(area.left(), y(limits.bad_px)),
                      QPointF(area.right(), y(limits.bad_px)));
    const auto place = m_model.comparedPlace(index.row());
    painter->setPen(place ? comparedPen(theme, *place) : QPen(theme.text, 1.2));
    painter->drawPolyline(line);
    painter->restore();
}

}  // namespace stillbay::ui
