// SPDX-License-Identifier: MIT
#include "ui/sheet/wobble_figure.h"

#include "core/base/units.h"
#include "ui/charts/scales.h"
#include "ui/charts/spread.h"
#include "ui/widgets/quantity.h"

#include <QLocale>
#include <QObject>

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

namespace stillbay::ui {
namespace {

constexpr double kTick_percent = 10.0;
constexpr double kBelowFaint = 30.0;  // what is this far below the limit lies on the lower edge
constexpr double kLeft_mm = 14.0, kRight_mm = 14.0, kTop_mm = 5.0, kBottom_mm = 9.0;
const QColor kShade(232, 232, 232);
const QColor kGrid(190, 190, 190);

// Percent of throttle and logarithm of pixels to millimetres.
struct Axes {
    QRectF area;
    double from_percent, to_percent, bottom_px, top_px;

    double x(double percent) const
    {
        return area.left() + area.width() * (percent - from_percent) / (to_percent - from_percent);
    }
    double y(double wobble_px) const
    {
        const double held = std::clamp(wobble_px, bottom_px, top_px);
        return area.bottom() -
               area.height() * std::log(held / bottom_px) / std::log(top_px / bottom_px);
    }
};

Axes axesFor(const QRectF& area_mm, const Limits& limits, const Assessment& assessment)
{
    double top = 3.0 * limits.bad_px;
    for (const ThrottlePoint& point : assessment.throttle)
        top = std::max(top, point.wobble_px);
    return {area_mm.adjusted(kLeft_mm, kTop_mm, -kRight_mm, -kBottom_mm),
            kPercent * assessment.throttle.front().throttle,
            kPercent * assessment.throttle.back().throttle,
            ladderBelow(limits.faint_px / kBelowFaint), ladderAbove(top)};
}

void drawCruise(Page& page, const Axes& axes, const Flight& flight)
{
    const double left = axes.x(
        std::clamp(kPercent * flight.cruise_throttle[0], axes.from_percent, axes.to_percent));
    const double right = axes.x(
        std::clamp(kPercent * flight.cruise_throttle[1], axes.from_percent, axes.to_percent));
    const QRectF band(left, axes.area.top(), right - left, axes.area.height());
    page.painter().fillRect(page.dots(band), kShade);
    page.text(QRectF(left + 1.0, axes.area.bottom() - 4.5, 30.0, 4.0),
              Qt::AlignLeft | Qt::AlignVCenter, QObject::tr("cruise"), paperFont(7.0));
}

void drawScales(Page& page, const Axes& axes)
{
    const QFont font = paperFont(7.0);
    const QRectF& area = axes.area;
    const int first = static_cast<int>(std::ceil(axes.from_percent / kTick_percent));
    const int last = static_cast<int>(std::floor(axes.to_percent / kTick_percent));
    for (int index = first; index <= last; ++index) {
        const double tick = kTick_percent * index;
        page.setPen(0.1, Qt::SolidLine, kGrid);
        page.line({axes.x(tick), area.top()}, {axes.x(tick), area.bottom()});
        page.text(QRectF(axes.x(tick) - 8.0, area.bottom() + 0.7, 16.0, 3.5), Qt::AlignCenter,
                  QLocale().toString(tick, 'f', 0), font);
    }
    const QwtScaleDiv division = logDivision(axes.bottom_px, axes.top_px, Ticks::Decades);
    for (const double tick : division.ticks(QwtScaleDiv::MajorTick)) {
        page.setPen(0.1, Qt::SolidLine, kGrid);
        page.line({area.left(), axes.y(tick)}, {area.right(), axes.y(tick)});
        page.text(QRectF(area.left() - 12.0, axes.y(tick) - 2.0, 11.0, 4.0),
                  Qt::AlignRight | Qt::AlignVCenter, QLocale().toString(tick, 'g', 4), font);
    }
    page.text(QRectF(area.left(), area.bottom() + 4.0, area.width(), 4.0), Qt::AlignCenter,
              QObject::tr("Throttle (%)"), font);
    page.painter().save();
    page.painter().translate(page.dots(QPointF(area.left() - 11.0, area.center().y())));
    page.painter().rotate(-90.0);
    page.text(QRectF(-20.0, -2.5, 40.0, 4.0), Qt::AlignCenter, QObject::tr("Wobble (px rms)"),
              font);
    page.painter().restore();
}

void drawLimits(Page& page, const Axes& axes, const Limits& limits)
{
    const QRectF& area = axes.area;
    page.setPen(0.25, Qt::DashLine);
    for (const double limit : {limits.faint_px, limits.bad_px})
        page.line({area.left(), axes.y(limit)}, {area.right(), axes.y(limit)});
    const std::array edges{area.bottom(), axes.y(limits.faint_px), axes.y(limits.bad_px),
                           area.top()};
    const std::array names{QObject::tr("clean"), QObject::tr("faint"), QObject::tr("bad")};
    for (std::size_t zone = 0; zone < names.size(); ++zone)
        page.text(QRectF(area.right() + 1.0, (edges[zone] + edges[zone + 1]) / 2.0 - 2.0,
                         kRight_mm - 1.0, 4.0),
                  Qt::AlignLeft | Qt::AlignVCenter, names[zone], paperFont(7.0));
}

void drawHover(Page& page, const Axes& axes, const HoverFigures& hover)
{
    std::vector<double> places;
    QStringList names;
    const auto add = [&](std::optional<double> throttle, const QString& text) {
        if (!throttle || kPercent * *throttle < axes.from_percent ||
            kPercent * *throttle > axes.to_percent)
            return;
        places.push_back(axes.x(kPercent * *throttle));
        names << text.arg(percentNumber(*throttle));
    };
    add(hover.throttle_full, QObject::tr("hover, full pack %1 %"));
    add(hover.throttle_empty, QObject::tr("hover, empty pack %1 %"));
    constexpr double kWidth_mm = 36.0;
    const std::vector<double> widths(places.size(), kWidth_mm);
    const std::vector<double> labels =
        spread(places, widths, 0.0, axes.area.left(), axes.area.right());
    for (std::size_t k = 0; k < places.size(); ++k) {
        page.setPen(0.25, Qt::DotLine);
        page.line({places[k], axes.area.top()}, {places[k], axes.area.bottom()});
        page.text(QRectF(labels[k] - kWidth_mm / 2.0, axes.area.top() - 4.5, kWidth_mm, 4.0),
                  Qt::AlignCenter, names[static_cast<qsizetype>(k)], paperFont(7.0));
    }
}

void drawCurve(Page& page, const Axes& axes, const std::vector<WobbleAt>& wobble)
{
    QPolygonF curve;
    for (const WobbleAt& at : wobble)
        curve << page.dots(QPointF(axes.x(kPercent * at.throttle), axes.y(at.wobble_px)));
    page.setPen(0.5);
    page.painter().drawPolyline(curve);
}

}  // namespace

void drawWobbleFigure(Page& page, const QRectF& area_mm, const Setup& setup,
                      const Assessment& assessment)
{
    if (assessment.throttle.size() < 2)
        return;
    const Axes axes = axesFor(area_mm, setup.limits, assessment);
    page.painter().save();
    if (assessment.cruise)
        drawCruise(page, axes, setup.flight);
    drawScales(page, axes);
    drawLimits(page, axes, setup.limits);
    drawHover(page, axes, assessment.hover);
    drawCurve(page, axes, assessment.curve);
    page.setPen(0.25);
    page.painter().setBrush(Qt::NoBrush);
    page.painter().drawRect(page.dots(axes.area));
    page.painter().restore();
}

}  // namespace stillbay::ui
