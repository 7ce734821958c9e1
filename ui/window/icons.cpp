// SPDX-License-Identifier: MIT
#include "ui/window/icons.h"

#include <QPainter>
#include <QPainterPath>
#include <QPixmap>

namespace stillbay::ui {
namespace {

constexpr int kSide = 20;  // of the drawing's own grid

QString themeName(Glyph glyph)
{
    switch (glyph) {
        case Glyph::New:
            return QStringLiteral("document-new");
        case Glyph::Open:
            return QStringLiteral("document-open");
        case Glyph::Save:
            return QStringLiteral("document-save");
        case Glyph::Undo:
            return QStringLiteral("edit-undo");
        case Glyph::Redo:
            return QStringLiteral("edit-redo");
        case Glyph::Keep:
            return QStringLiteral("bookmark-new");
        case Glyph::Find:
            return QStringLiteral("edit-find");
        case Glyph::Sheet:
            break;
    }
    return QStringLiteral("document-print-preview");
}

// Four arms with their propellers.
QPainterPath craft()
{
    QPainterPath path;
    for (const QPointF& motor : {QPointF(5, 5), QPointF(15, 5), QPointF(15, 15), QPointF(5, 15)}) {
        path.moveTo(10, 10);
        path.lineTo(motor);
        path.addEllipse(motor, 2.5, 2.5);
    }
    return path;
}

QPainterPath folder()
{
    QPainterPath path;
    path.addPolygon(QPolygonF({{2.5, 16.5},
                               {2.5, 4.5},
                               {8, 4.5},
                               {10, 6.5},
                               {16.5, 6.5},
                               {16.5, 9},
                               {5.5, 9},
                               {2.5, 16.5},
                               {15.5, 16.5},
                               {18.2, 9},
                               {16.5, 9}}));
    return path;
}

QPainterPath disk()
{
    QPainterPath path;
    path.addPolygon(
        QPolygonF({{3.5, 3.5}, {13.5, 3.5}, {16.5, 6.5}, {16.5, 16.5}, {3.5, 16.5}, {3.5, 3.5}}));
    path.addRect(6.5, 11, 7, 5.5);
    path.addRect(6.5, 3.5, 6, 3.5);
    return path;
}

// A hooked arrow back to the left.
QPainterPath hook()
{
    QPainterPath path;
    path.moveTo(3.5, 8);
    path.lineTo(12, 8);
    path.arcTo(QRectF(8, 8, 8.5, 8.5), 90, -180);
    path.lineTo(8, 16.5);
    path.moveTo(7.5, 4);
    path.lineTo(3.5, 8);
    path.lineTo(7.5, 12);
    return path;
}

// A ribbon between pages.
QPainterPath ribbon()
{
    QPainterPath path;
    path.addPolygon(
        QPolygonF({{5.5, 2.5}, {14.5, 2.5}, {14.5, 17}, {10, 13}, {5.5, 17}, {5.5, 2.5}}));
    return path;
}

// A lens on its handle.
QPainterPath lens()
{
    QPainterPath path;
    path.addEllipse(QPointF(8.5, 8.5), 5.5, 5.5);
    path.moveTo(12.5, 12.5);
    path.lineTo(17.5, 17.5);
    return path;
}

// A page with a hole to drill and a ruler.
QPainterPath page()
{
    QPainterPath path;
    path.addRect(4.5, 2.5, 11, 15);
    path.addEllipse(QPointF(10, 7.5), 2, 2);
    path.moveTo(10, 4);
    path.lineTo(10, 11);
    path.moveTo(6.5, 7.5);
    path.lineTo(13.5, 7.5);
    for (const double x : {6.5, 10.0, 13.5}) {
        path.moveTo(x, 14);
        path.lineTo(x, 17.5);
    }
    return path;
}

QPainterPath outline(Glyph glyph)
{
    switch (glyph) {
        case Glyph::New:
            return craft();
        case Glyph::Open:
            return folder();
        case Glyph::Save:
            return disk();
        case Glyph::Undo:
            return hook();
        case Glyph::Redo:
            return QTransform(-1, 0, 0, 1, kSide, 0).map(hook());
        case Glyph::Keep:
            return ribbon();
        case Glyph::Find:
            return lens();
        case Glyph::Sheet:
            break;
    }
    return page();
}

QPixmap drawn(Glyph glyph, const QColor& colour, qreal ratio)
{
    QPixmap pixmap(QSize(kSide, kSide) * ratio);
    pixmap.setDevicePixelRatio(ratio);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(colour, 1.4, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.drawPath(outline(glyph));
    return pixmap;
}

}  // namespace

QIcon icon(Glyph glyph, const QPalette& palette)
{
    QIcon result;
    for (const qreal ratio : {1.0, 2.0}) {
        result.addPixmap(drawn(glyph, palette.color(QPalette::ButtonText), ratio));
        result.addPixmap(
            drawn(glyph, palette.color(QPalette::Disabled, QPalette::ButtonText), ratio),
            QIcon::Disabled);
    }
    return QIcon::fromTheme(themeName(glyph), result);
}

}  // namespace stillbay::ui
