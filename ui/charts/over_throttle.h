// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/setup/setup.h"
#include "ui/charts/chart.h"
#include "ui/charts/chart_table.h"
#include "ui/charts/mark_lane.h"

#include <QString>

#include <vector>

/// What the charts have in common whose points are those of the throttle grid.
namespace stillbay::ui {

/// Where the keyboard takes the throttle cursor: half a percent, far five, or an end.
double stepped(double throttle, Chart::Step step);

/// "33.5 %", for the cursor's handle.
QString handleText(double throttle);

/// Whole percent.
QString percentText(double throttle);

/// Hover at the full and the empty pack, on an axis in percent of throttle.
std::vector<Mark> hoverMarks(const HoverFigures& hover);

/// The cruise window between two places of any axis.
Mark cruiseMark(const Flight& flight, double from, double to);

/// A column of the points' values.
template <class Value>
ChartColumn columnOf(const std::vector<ThrottlePoint>& points, const QString& key,
                     const QString& heading, const Value& value)
{
    ChartColumn column{key, heading, {}};
    for (const ThrottlePoint& point : points)
        column.values.push_back(value(point));
    return column;
}

/// Throttle and rotor speed.
std::vector<ChartColumn> speedColumns(const std::vector<ThrottlePoint>& points);

/// Frequency and wobble of every order.
std::vector<ChartColumn> orderColumns(const std::vector<ThrottlePoint>& points);

}  // namespace stillbay::ui
