// SPDX-License-Identifier: MIT
#pragma once

#include "ui/sheet/drilling_plan.h"
#include "ui/sheet/page.h"

#include <QString>

#include <cstddef>

namespace stillbay::ui {

inline constexpr double kRuler_mm = 100.0;

/// Room that a template leaves for the drawing itself on a page of this size, below a running head
/// and beside the two check rulers.
QRectF templateArea_mm(const QSizeF& page_mm);

/// Draws one sheet of the template: the holes of both plates at true size, centre lines, the way
/// forward, and two rulers that show whether the printer kept the size.
void drawTemplate(Page& page, const QSizeF& page_mm, const DrillingPlan& plan, std::size_t sheet);

}  // namespace stillbay::ui
