// SPDX-License-Identifier: MIT
#include "ui/bay/piece_look.h"

#include "ui/widgets/chart_theme.h"
#include "ui/widgets/colours.h"

namespace stillbay::ui {
namespace {

constexpr double kShade = 0.35;      // of a face that the light grazes
constexpr double kLitOutline = 2.6;  // [logical pixels]

}  // namespace

PieceLook lookOf(Piece piece, bool lit, const QPalette& palette, double facing)
{
    const ChartTheme theme = chartTheme(palette, false);
    const QColor text = palette.color(QPalette::Text);
    const auto shaded = [&](const QColor& colour) {
        return mixed(colour, isDark(palette) ? QColor(Qt::black) : text, kShade * (1.0 - facing));
    };
    const QPen outline(mixed(text, theme.canvas, 0.35), 1.0);
    if (lit) {
        QColor fill = shaded(mixed(theme.axes[1], theme.canvas, 0.3));
        fill.setAlpha(piece == Piece::Propeller ? 90 : piece == Piece::Airframe ? 160 : 255);
        return {fill, QPen(text, kLitOutline, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin)};
    }
    switch (piece) {
        case Piece::Airframe: {
            QColor glass =
                shaded(mixed(text, theme.canvas, 0.72));  // what hangs inside shows through
            glass.setAlpha(110);
            return {glass, outline};
        }
        case Piece::Arm:
            return {shaded(mixed(text, theme.canvas, 0.82)), outline};
        case Piece::Motor:
            return {shaded(mixed(text, theme.canvas, 0.6)), outline};
        case Piece::Propeller: {
            QColor glass = theme.quiet;
            glass.setAlpha(26);
            return {glass, QPen(theme.quiet, 1.0, Qt::DashLine)};
        }
        case Piece::Bay:
            return {shaded(mixed(theme.axes[0], theme.canvas, 0.45)), outline};
        case Piece::Tube:
            return {shaded(theme.axes[2]), QPen(mixed(theme.axes[2], text, 0.5), 1.0)};
        case Piece::View:
            break;
    }
    return {Qt::NoBrush, QPen(theme.axes[0], 1.4, Qt::DotLine)};
}

QPen ghostPen(const QPalette& palette)
{
    QPen pen(mixed(palette.color(QPalette::Text), palette.color(QPalette::Base), 0.4), 1.0);
    pen.setDashPattern({5.0, 4.0});
    pen.setCapStyle(Qt::FlatCap);
    return pen;
}

QPen litThroughPen(const QPalette& palette)
{
    return {palette.color(QPalette::Text), 1.2, Qt::DotLine, Qt::RoundCap};
}

}  // namespace stillbay::ui
