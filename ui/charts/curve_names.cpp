// SPDX-License-Identifier: MIT
#include "ui/charts/curve_names.h"

#include <QFontMetricsF>
#include <QPainter>
#include <qwt_plot_curve.h>
#include <qwt_scale_map.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>
#include <vector>

namespace stillbay::ui {
namespace {

constexpr double kNamesZ = 35.0;     // over curves and lanes, below the cursor
constexpr int kPlaces = 24;          // across the canvas, where a name may stand
constexpr double kFarEnough = 60.0;  // [px] from the other curves; beyond, the middle counts
constexpr double kGap = 5.0, kSample = 20.0, kPadding = 4.0;
constexpr double kMostWidth = 0.3;  // of the canvas

// The curve's height on the canvas; none outside its samples and in a gap.
std::optional<double> heightAt(const QwtPlotCurve& curve, double x, const QwtScaleMap& yMap)
{
    std::size_t low = 0, high = curve.dataSize();
    while (low < high) {
        const std::size_t middle = low + (high - low) / 2;
        if (curve.sample(static_cast<int>(middle)).x() < x)
            low = middle + 1;
        else
            high = middle;
    }
    if (low == 0 || low >= curve.dataSize())
        return {};
    const QPointF before = curve.sample(static_cast<int>(low) - 1),
                  after = curve.sample(static_cast<int>(low));
    const double y =
        yMap.transform(before.y()) + (yMap.transform(after.y()) - yMap.transform(before.y())) *
                                         (x - before.x()) / (after.x() - before.x());
    return std::isfinite(y) ? std::optional(y) : std::nullopt;
}

// Where the curve is in the room, the places first at which it is easiest to tell from the others.
std::vector<QPointF> anchorsOf(const std::vector<const QwtPlotCurve*>& curves, std::size_t which,
                               const QwtScaleMap& xMap, const QwtScaleMap& yMap, const QRectF& room)
{
    std::vector<std::pair<double, QPointF>> found;
    for (int place = 1; place < kPlaces; ++place) {
        const double x = room.left() + room.width() * place / kPlaces;
        const double value = xMap.invTransform(x);
        const auto y = heightAt(*curves[which], value, yMap);
        if (!y || *y < room.top() || *y > room.bottom())
            continue;
        double apart = kFarEnough;
        for (std::size_t other = 0; other < curves.size(); ++other)
            if (other != which)
                if (const auto there = heightAt(*curves[other], value, yMap))
                    apart = std::min(apart, std::abs(*there - *y));
        const double offMiddle = std::abs(x - room.center().x()) / room.width();
        found.emplace_back(apart - 10.0 * offMiddle, QPointF(x, *y));
    }
    std::stable_sort(found.begin(), found.end(),
                     [](const auto& a, const auto& b) { return a.first > b.first; });
    std::vector<QPointF> anchors;
    for (const auto& [worth, anchor] : found)
        anchors.push_back(anchor);
    return anchors;
}

}  // namespace

CurveNames::CurveNames() : QwtPlotItem(QwtText())
{
    setZ(kNamesZ);
    setItemAttribute(QwtPlotItem::Legend, false);
}

void CurveNames::setLook(const QFont& font, const QColor& ink, const QColor& ground)
{
    m_font = font;
    m_ink = ink;
    m_ground = ground;
}

void CurveNames::setMargins(double above, double below)
{
    m_above = above;
    m_below = below;
}

void CurveNames::draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
                      const QRectF& canvas) const
{
    const QFontMetricsF metrics(m_font);
    const QRectF room =
        canvas.adjusted(2.0, m_above * metrics.height(), -2.0, -m_below * metrics.height() - 2.0);
    m_labels.begin(room);
    m_boxes.assign(m_curves.size(), {});
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    painter->setFont(m_font);
    for (std::size_t k = 0; k < m_curves.size(); ++k) {
        const QString text = metrics.elidedText(m_curves[k]->title().text(), Qt::ElideRight,
                                                kMostWidth * canvas.width());
        const QSizeF size(metrics.horizontalAdvance(text) + kSample + 3.0 * kPadding,
                          metrics.height() + 2.0);
        std::optional<MarkLabels::Spot> spot;
        QPointF anchor;
        for (const QPointF& place : anchorsOf(m_curves, k, xMap, yMap, room)) {
            anchor = place;
            spot = m_labels.placeWhereFree(static_cast<int>(k), anchor, kGap, size);
            if (spot)
                break;
        }
        if (!spot)
            continue;
        const QRectF& box = spot->box;
        m_boxes[k] = box;
        painter->setPen(QPen(m_ink, 0.8));
        if (spot->apart)
            painter->drawLine(anchor, box.center());
        painter->setPen(Qt::NoPen);
        painter->setBrush(m_ground);
        painter->drawRoundedRect(box, 3.0, 3.0);
        painter->setPen(m_curves[k]->pen());
        painter->drawLine(QPointF(box.left() + kPadding, box.center().y()),
                          QPointF(box.left() + kPadding + kSample, box.center().y()));
        painter->setPen(m_ink);
        painter->drawText(box.adjusted(kSample + 2.0 * kPadding, 0.0, 0.0, 0.0),
                          Qt::AlignVCenter | Qt::AlignLeft, text);
    }
    painter->restore();
}

}  // namespace stillbay::ui
