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

/// @param facing  1: the face looks at the viewer, 0: it is seen edge on
/// @param lit  it stands out, by a colour of its own and a thick outline
PieceLook lookOf(Piece piece, bool lit, const QPalette& palette, double facing);

}  // namespace stillbay::ui
