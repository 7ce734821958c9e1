// SPDX-License-Identifier: MIT
#include "ui/charts/scales.h"

#include <QLocale>
#include <qwt_text.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace stillbay::ui {

QwtScaleDiv logDivision(double from, double to, Ticks ticks)
{
    constexpr double kRounding = 1e-9;
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

QVector<QPointF> logSamples(std::span<const double> x, std::span<const double> y)
{
    constexpr double kGap = std::numeric_limits<double>::quiet_NaN();
    const std::size_t count = std::min(x.size(), y.size());
    QVector<QPointF> samples;
    samples.reserve(static_cast<qsizetype>(count));
    for (std::size_t k = 0; k < count; ++k) {
        const bool fits = std::isfinite(x[k]) && std::isfinite(y[k]) && y[k] > 0.0;
        samples.append(fits ? QPointF(x[k], y[k]) : QPointF(x[k], kGap));
    }
    return samples;
}

QwtText PlainScaleDraw::label(double value) const
{
    QLocale plain;
    plain.setNumberOptions(QLocale::OmitGroupSeparator);
    return QwtText(plain.toString(value, 'g', 4));
}

}  // namespace stillbay::ui
