// SPDX-License-Identifier: MIT
#include "ui/film/test_scene.h"

#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <array>
#include <cmath>

namespace stillbay::ui {
namespace {

// Shares of the picture's height or width.
constexpr double kHorizon = 0.44;
constexpr int kLanes = 28;  // lines of the paving that run away from the eye
constexpr int kRows = 12;   // and across
const QColor kSkyAbove(0x6F, 0xA6, 0xD6), kSkyBelow(0xDD, 0xEB, 0xF4);
const QColor kFarHills(0x93, 0xA9, 0xB8), kNearHills(0x6E, 0x8B, 0x80);
const QColor kPlainFar(0xC6, 0xC4, 0xA8), kPlainNear(0xA3, 0xA0, 0x7C), kJoints(0x5F, 0x5C, 0x48);
const QColor kPoleDark(0x1D, 0x2B, 0x3A), kPoleLight(0xF5, 0xF3, 0xEA);

struct Pole {
    double x, top, foot;  // shares of the picture
    int bands;
};

// The same on both sides of the middle.
constexpr std::array kPoles{
    Pole{0.08, -0.20, 0.93, 13}, Pole{0.21, 0.20, 0.62, 7},   Pole{0.31, -0.20, 0.80, 11},
    Pole{0.43, 0.27, 0.54, 5},   Pole{0.57, 0.27, 0.54, 5},   Pole{0.69, -0.20, 0.80, 11},
    Pole{0.79, 0.20, 0.62, 7},   Pole{0.92, -0.20, 0.93, 13},
};

void drawSky(QPainter& painter, const QRectF& all, double horizon)
{
    QLinearGradient sky(0.0, all.top(), 0.0, horizon);
    sky.setColorAt(0.0, kSkyAbove);
    sky.setColorAt(1.0, kSkyBelow);
    painter.fillRect(all, sky);
}

void drawHills(QPainter& painter, const QRectF& all, double horizon, double height, double waves,
               const QColor& colour)
{
    QPainterPath outline(QPointF(all.left(), horizon));
    constexpr int kSteps = 160;
    for (int k = 0; k <= kSteps; ++k) {
        const double u = 1.0 * k / kSteps;
        const double rise = 0.55 + 0.3 * std::sin(waves * u) + 0.15 * std::sin(2.7 * waves * u + 1);
        outline.lineTo(all.left() + u * all.width(), horizon - height * rise);
    }
    outline.lineTo(all.right(), horizon);
    painter.fillPath(outline, colour);
}

void drawPlain(QPainter& painter, const QRectF& all, QSizeF picture, double horizon)
{
    const QRectF plain(all.left(), horizon, all.width(), all.bottom() - horizon);
    QLinearGradient ground(0.0, horizon, 0.0, plain.bottom());
    ground.setColorAt(0.0, kPlainFar);
    ground.setColorAt(1.0, kPlainNear);
    painter.fillRect(plain, ground);
    painter.setPen(QPen(kJoints, std::max(0.7, picture.height() / 260.0)));
    const QPointF vanishing(0.5 * picture.width(), horizon);
    const double depth = picture.height() - horizon;
    for (int k = -kLanes / 2; k <= kLanes / 2; ++k) {
        const QPointF near(vanishing.x() + k * 0.17 * picture.width(), horizon + 1.3 * depth);
        painter.drawLine(vanishing + 0.04 * (near - vanishing), near);
    }
    for (int k = 1; k <= kRows; ++k) {
        const double y = horizon + 1.2 * depth / (1.0 + 0.62 * (k - 1));
        painter.drawLine(QPointF(all.left(), y), QPointF(all.right(), y));
    }
    painter.drawLine(QPointF(all.left(), horizon), QPointF(all.right(), horizon));
}

void drawPole(QPainter& painter, const Pole& pole, QSizeF picture)
{
    const double size = pole.foot - kHorizon;  // the nearer, the thicker
    const double width = std::max(2.0, 0.024 * (0.35 + size) * picture.width());
    const double top = pole.top * picture.height(), foot = pole.foot * picture.height();
    const double band = (foot - top) / pole.bands;
    for (int k = 0; k < pole.bands; ++k) {
        const QRectF piece(pole.x * picture.width() - 0.5 * width, top + k * band, width, band);
        painter.fillRect(piece, (pole.bands - k) % 2 == 0 ? kPoleLight : kPoleDark);
    }
}

}  // namespace

QImage testScene(QSize picture, int margin)
{
    QImage scene(picture + 2 * QSize(margin, margin), QImage::Format_RGB32);
    QPainter painter(&scene);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(margin, margin);
    const QRectF all(-margin, -margin, scene.width(), scene.height());
    const double horizon = kHorizon * picture.height();
    drawSky(painter, all, horizon);
    drawHills(painter, all, horizon, 0.16 * picture.height(), 9.0, kFarHills);
    drawHills(painter, all, horizon, 0.08 * picture.height(), 17.0, kNearHills);
    drawPlain(painter, all, picture, horizon);
    for (const Pole& pole : kPoles)
        drawPole(painter, pole, picture);
    return scene;
}

}  // namespace stillbay::ui
