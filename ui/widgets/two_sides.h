// SPDX-License-Identifier: MIT
#pragma once

#include <QString>

class QWidget;

namespace stillbay::ui {

/// Fills a view with a wide left and a narrow right side; the border between them can be dragged
/// and is remembered.
///
/// @param name  of the border among the settings, "view.mapColumns"
void layOutTwoSides(QWidget& view, QWidget* left, QWidget* right, const QString& name);

}  // namespace stillbay::ui
