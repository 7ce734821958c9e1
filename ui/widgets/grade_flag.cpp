// SPDX-License-Identifier: MIT
#include "ui/widgets/grade_flag.h"

#include "ui/widgets/chart_theme.h"

#include <QPainter>

namespace stillbay::ui {
namespace {

struct Flag {
    QColor ground, hatch;
    Qt::BrushStyle style;
};

Flag flagOf(Verdict::Kind kind, const QPalette& palette)
{
    const QColor canvas = chartTheme(palette, false).canvas;
    switch (kind) {
        case Verdict::Kind::Clean:
            return {QColor(0x00, 0x9E, 0x73), QColor(0x00, 0x9E, 0x73), Qt::SolidPattern};
        case Verdict::Kind::Faint:
            return {QColor(0xE6, 0x9F, 0x00), canvas, Qt::BDiagPattern};
        case Verdict::Kind::Bad:
            return {QColor(0xD5, 0x5E, 0x00), canvas, Qt::DiagCrossPattern};
        case Verdict::Kind::None:
        case Verdict::Kind::Failure:
            break;
    }
    return {palette.color(QPalette::Mid), palette.color(QPalette::Mid), Qt::SolidPattern};
}

}  // namespace

void drawGradeFlag(QPainter& painter, const QRectF& area, Verdict::Kind kind,
                   const QPalette& palette)
{
    const Flag flag = flagOf(kind, palette);
    painter.fillRect(area, flag.ground);
    painter.fillRect(area, QBrush(flag.hatch, flag.style));
}

}  // namespace stillbay::ui
