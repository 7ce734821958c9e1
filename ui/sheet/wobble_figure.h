// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/setup/setup.h"
#include "ui/sheet/page.h"

namespace stillbay::ui {

/// A small chart of the wobble over the throttle for paper: black ink, limits and cruise named.
void drawWobbleFigure(Page& page, const QRectF& area_mm, const Setup& setup,
                      const Assessment& assessment);

}  // namespace stillbay::ui
