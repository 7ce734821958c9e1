// SPDX-License-Identifier: MIT
#pragma once

#include "ui/widgets/verdict.h"

#include <QPalette>
#include <QRectF>

class QPainter;

namespace stillbay::ui {

/// The ground and hatch that go with a verdict's word, wherever it is shown.
void drawGradeFlag(QPainter& painter, const QRectF& area, Verdict::Kind kind,
                   const QPalette& palette);

}  // namespace stillbay::ui
