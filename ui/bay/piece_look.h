// SPDX-License-Identifier: MIT
#pragma once

#include "ui/bay/craft_shape.h"

#include <QBrush>
#include <QPalette>
#include <QPen>
#include <QString>

namespace stillbay::ui {

struct PieceLook {
    QBrush fill;
    QPen edge;
};

/// @param facing  1: the face looks into the light, 0: the light only grazes it
/// @param lit  it stands out, by a colour of its own and a thick outline
PieceLook lookOf(Piece piece, bool lit, const QPalette& palette, double facing);

QPen ghostPen(const QPalette& palette);       ///< outlines of the bay where it is drawn
QPen litThroughPen(const QPalette& palette);  ///< outlines of what is lit, where it is hidden

}  // namespace stillbay::ui
