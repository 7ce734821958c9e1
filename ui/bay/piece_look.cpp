// SPDX-License-Identifier: MIT
#include "ui/bay/piece_look.h"

#include "ui/widgets/chart_theme.h"
#include "ui/widgets/colours.h"

namespace stillbay::ui {
namespace {

constexpr double kShade = 0.35;  // of a face seen edge on

}  // namespace

PieceLook lookOf(Piece piece, const QPalette& palette, double facing)
{
    const ChartTheme theme = chartTheme(palette, false);
    const QColor text = palette.color(QPalette::Text);
    const auto lit = [&](const QColor& colour) {
        return mixed(colour, isDark(palette) ? QColor(Qt::black) : text, kShade * (1.0 - facing));
    };
    const QPen outline(mixed(text, theme.canvas, 0.35), 0.8);
    switch (piece) {
        case Piece::Airframe: {
            QColor glass = lit(mixed(text, theme.canvas, 0.72));  // what hangs inside shows through
            glass.setAlpha(110);
            return {glass, outline};
        }
        case Piece::Arm:
            return {lit(mixed(text, theme.canvas, 0.82)), outline};
        case Piece::Propeller: {
            QColor glass = theme.quiet;
            glass.setAlpha(26);
            return {glass, QPen(theme.quiet, 1.0, Qt::DashLine)};
        }
        case Piece::Bay:
            return {lit(mixed(theme.axes[0], theme.canvas, 0.45)), outline};
        case Piece::Tube:
            return {lit(theme.axes[2]), QPen(mixed(theme.axes[2], text, 0.5), 0.4)};
        case Piece::View:
            return {Qt::NoBrush, QPen(theme.axes[0], 1.4, Qt::DotLine)};
        case Piece::Axis:
            break;
    }
    return {Qt::NoBrush, QPen(text, 1.0)};
}

}  // namespace stillbay::ui
