// SPDX-License-Identifier: MIT
#pragma once

#include <QPointF>
#include <QVector>
#include <qwt_scale_div.h>
#include <qwt_scale_draw.h>
#include <qwt_text.h>

#include <span>

class QwtPlot;

namespace stillbay::ui {

enum class Ticks { Decades, OneTwoFive };

/// Ticks of a logarithmic axis from `from` to `to`, both > 0; labels at the major ones.
QwtScaleDiv logDivision(double from, double to, Ticks ticks);

/// The same with labels as suit the stretch: every 1, 2, 5, or every decade where these are more
/// than `most`, or even steps where they are too few.
QwtScaleDiv logDivision(double from, double to, int most);

/// Ticks of a linear axis at multiples of 1, 2 or 5 times a power of ten; at most `most` labels.
QwtScaleDiv evenDivision(double from, double to, int most);

/// The next value below or above on the ladder …, 1, 3, 10, 30, …: keeps an axis still while the
/// curve on it moves a little.
double ladderBelow(double value);
double ladderAbove(double value);

/// Makes an axis logarithmic, or even. The zero that an axis has before its first range has no
/// logarithm: until a range is set, a logarithmic one goes from 1 to 10.
void setLogScale(QwtPlot& plot, int axis, bool isLog = true);

/// Points for a logarithmic axis. What has no place there (zero, negative, infinite, not a number)
/// leaves a gap, because a zero would be drawn as a wedge over the whole plot.
QVector<QPointF> logSamples(std::span<const double> x, std::span<const double> y);

/// Plain numbers at the ticks, "0.01" and "100", without thousands separators.
class PlainScaleDraw final : public QwtScaleDraw {
public:
    QwtText label(double value) const override;
};

}  // namespace stillbay::ui
