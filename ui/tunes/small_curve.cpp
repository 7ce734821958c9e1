// SPDX-License-Identifier: MIT
#include "ui/tunes/small_curve.h"

#include "ui/charts/spark_line.h"
#include "ui/tunes/tunes_model.h"

#include <QPainter>

namespace stillbay::ui {
namespace {

constexpr double kMargin = 3.0, kWidth = 1.2;

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
    if (!figures)
        return;
    const ChartTheme theme = chartTheme(option.palette, m_model.isLate());
    drawSparkLine(*painter, QRectF(option.rect).adjusted(kMargin, kMargin, -kMargin, -kMargin),
                  figures->curve, m_model.limits(), theme, QPen(theme.text, kWidth));
}

}  // namespace stillbay::ui
