// SPDX-License-Identifier: MIT
#include "ui/charts/over_throttle.h"

#include <QLocale>
#include <QObject>
#include <QPen>

#include <cmath>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr double kStep = 0.005, kFarStep = 0.05;

}  // namespace

double stepped(double throttle, Chart::Step step)
{
    switch (step) {
        case Chart::Step::Back:
            return throttle - kStep;
        case Chart::Step::On:
            return throttle + kStep;
        case Chart::Step::FarBack:
            return throttle - kFarStep;
        case Chart::Step::FarOn:
            return throttle + kFarStep;
        case Chart::Step::First:
            return 0.0;
        case Chart::Step::Last:
            break;
    }
    return 1.0;
}

QString handleText(double throttle)
{
    return QObject::tr("%1 %", "throttle").arg(QLocale().toString(kPercent * throttle, 'f', 1));
}

QString percentText(double throttle)
{
    return QLocale().toString(std::round(kPercent * throttle));
}

std::vector<Mark> hoverMarks(const HoverFigures& hover)
{
    std::vector<Mark> marks;
    const auto add = [&marks](std::optional<double> throttle, const QString& text) {
        if (throttle)
            marks.push_back({kPercent * *throttle, kPercent * *throttle,
                             text.arg(percentText(*throttle)), QPen(Qt::DotLine)});
    };
    add(hover.throttle_full, QObject::tr("hover, full pack %1 %"));
    add(hover.throttle_empty, QObject::tr("hover, empty pack %1 %"));
    return marks;
}

Mark cruiseMark(const Flight& flight, double from, double to)
{
    return {
        from, to,
        QObject::tr("cruise %1 to %2 %")
            .arg(percentText(flight.cruise_throttle[0]), percentText(flight.cruise_throttle[1])),
        QPen(Qt::SolidLine)};
}

std::vector<ChartColumn> speedColumns(const std::vector<ThrottlePoint>& points)
{
    ChartColumn throttle = columnOf(points, QStringLiteral("throttle"), QObject::tr("Throttle (%)"),
                                    [](const ThrottlePoint& p) { return p.throttle; });
    throttle.perValue = kPercent;
    return {std::move(throttle),
            columnOf(points, QStringLiteral("speed_rpm"), QObject::tr("Rotor speed (rpm)"),
                     [](const ThrottlePoint& p) { return p.speed_rpm; })};
}

std::vector<ChartColumn> orderColumns(const std::vector<ThrottlePoint>& points)
{
    std::vector<ChartColumn> columns;
    for (std::size_t k = 0; !points.empty() && k < points.front().orders.size(); ++k) {
        const int order = points.front().orders[k].order;
        columns.push_back(columnOf(points, QStringLiteral("order_%1_frequency_hz").arg(order),
                                   QObject::tr("Order %1: frequency (Hz)").arg(order),
                                   [k](const auto& p) { return p.orders[k].frequency_hz; }));
        columns.push_back(columnOf(points, QStringLiteral("order_%1_wobble_px").arg(order),
                                   QObject::tr("Order %1: wobble (px)").arg(order),
                                   [k](const auto& p) { return p.orders[k].wobble_px; }));
    }
    return columns;
}

}  // namespace stillbay::ui
