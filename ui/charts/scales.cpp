// SPDX-License-Identifier: MIT
#include "ui/charts/scales.h"

#include <QLocale>
#include <qwt_plot.h>
#include <qwt_scale_engine.h>
#include <qwt_scale_widget.h>
#include <qwt_text.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace stillbay::ui {

namespace {

constexpr double kRounding = 1e-9;
constexpr qsizetype kLeastLabels = 3;  // fewer do not tell where one is

}  // namespace

QwtScaleDiv logDivision(double from, double to, Ticks ticks)
{
    QList<double> minor, medium, major;
    const int last = static_cast<int>(std::floor(std::log10(to) + kRounding));
    for (int decade = static_cast<int>(std::floor(std::log10(from))); decade <= last; ++decade) {
        for (int digit = 1; digit < 10; ++digit) {
            const double value = digit * std::pow(10.0, decade);
            if (value < from * (1.0 - kRounding) || value > to * (1.0 + kRounding))
                continue;
            const bool isLabelled =
                digit == 1 || (ticks == Ticks::OneTwoFive && (digit == 2 || digit == 5));
            (isLabelled ? major : digit == 5 ? medium : minor).append(value);
        }
    }
    return QwtScaleDiv(from, to, minor, medium, major);
}

QwtScaleDiv logDivision(double from, double to, int most)
{
    const QwtScaleDiv fine = logDivision(from, to, Ticks::OneTwoFive);
    const qsizetype labels = fine.ticks(QwtScaleDiv::MajorTick).size();
    if (labels < kLeastLabels)
        return evenDivision(from, to, most);
    return labels <= most ? fine : logDivision(from, to, Ticks::Decades);
}

QwtScaleDiv evenDivision(double from, double to, int most)
{
    constexpr int kParts = 5;  // of a labelled step
    const double least = (to - from) / most;
    const double decade = std::pow(10.0, std::floor(std::log10(least)));
    double step = 10.0 * decade;
    for (const double factor : {5.0, 2.0, 1.0})
        if (factor * decade >= least * (1.0 - kRounding))
            step = factor * decade;
    QList<double> minor, major;
    const double slack = kRounding * (to - from);
    const auto first = static_cast<qint64>(std::ceil((from - slack) / step * kParts));
    const auto last = static_cast<qint64>(std::floor((to + slack) / step * kParts));
    for (qint64 k = first; k <= last; ++k)
        (k % kParts == 0 ? major : minor).append(static_cast<double>(k) / kParts * step);
    return QwtScaleDiv(from, to, minor, {}, major);
}

double ladderBelow(double value)
{
    const double decade = std::pow(10.0, std::floor(std::log10(value)));
    return value >= 3.0 * decade ? 3.0 * decade : decade;
}

double ladderAbove(double value)
{
    const double decade = std::pow(10.0, std::floor(std::log10(value)));
    return value <= decade ? decade : value <= 3.0 * decade ? 3.0 * decade : 10.0 * decade;
}

void setLogScale(QwtPlot& plot, int axis, bool isLog)
{
    QwtScaleWidget& scale = *plot.axisWidget(axis);
    if (isLog && !(scale.scaleDraw()->scaleDiv().lowerBound() > 0.0))
        scale.setScaleDiv(QwtScaleDiv(1.0, 10.0));
    if (isLog)
        plot.setAxisScaleEngine(axis, new QwtLogScaleEngine);
    else
        plot.setAxisScaleEngine(axis, new QwtLinearScaleEngine);
}

QVector<QPointF> logSamples(std::span<const double> x, std::span<const double> y)
{
    constexpr double kNoPlace = std::numeric_limits<double>::quiet_NaN();
    const std::size_t count = std::min(x.size(), y.size());
    QVector<QPointF> samples;
    samples.reserve(static_cast<qsizetype>(count));
    for (std::size_t k = 0; k < count; ++k) {
        const bool fits = std::isfinite(x[k]) && std::isfinite(y[k]) && y[k] > 0.0;
        samples.append(fits ? QPointF(x[k], y[k]) : QPointF(x[k], kNoPlace));
    }
    return samples;
}

QwtText PlainScaleDraw::label(double value) const
{
    QLocale plain;
    plain.setNumberOptions(QLocale::OmitGroupSeparator);
    return QwtText(plain.toString(value, 'g', 6));
}

}  // namespace stillbay::ui
