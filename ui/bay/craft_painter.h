// SPDX-License-Identifier: MIT
#pragma once

#include "ui/bay/craft_shape.h"
#include "ui/bay/depth_picture.h"
#include "ui/bay/lit_pieces.h"
#include "ui/bay/view_point.h"

#include <QPalette>

#include <functional>
#include <vector>

class QPainter;

namespace stillbay::ui {

/// Paints all faces that look at the viewer; those of glass last.
///
/// @param pixelRatio  device pixels a logical pixel
/// @param colourOf    translucent for glass
void paintFaces(DepthPicture& picture, const ViewFrame& frame, double pixelRatio,
                const CraftShape& shape, const std::function<QColor(const Face&)>& colourOf);

/// Draws a craft into a widget of some size: faces, then the edges of what is seen of them. What
/// is lit is outlined through what hides it.
///
/// @param picture  to work in; kept from picture to picture
/// @param ghost  drawn as dashed outlines
void paintCraft(QPainter& painter, DepthPicture& picture, const QSize& size, const ViewFrame& frame,
                const CraftShape& shape, const CraftShape& ghost, const std::vector<LitPieces>& lit,
                const QPalette& palette);

}  // namespace stillbay::ui
