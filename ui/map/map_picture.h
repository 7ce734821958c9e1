// SPDX-License-Identifier: MIT
#pragma once

#include "ui/charts/wobble_scale.h"
#include "ui/map/map_field.h"

#include <QImage>
#include <QRectF>

namespace stillbay::ui {

/// Colours of what is not feasible.
struct RefusedColours {
    QColor ground, hatch;
};

/// Whether the hatch of a reason covers a pixel. Every reason has a pattern of its own.
bool isHatched(Constraint reason, int x, int y);

/// The map as a picture.
///
/// @param area  what is seen of the map, in nodes; y grows downwards in the picture
/// @param size  in pixels
QImage drawMap(const MapField& field, const WobbleScale& scale, const RefusedColours& refused,
               const QRectF& area, const QSize& size);

}  // namespace stillbay::ui
