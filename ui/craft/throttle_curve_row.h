// SPDX-License-Identifier: MIT
#pragma once

#include "ui/document/document.h"

#include <QWidget>

namespace stillbay::ui {

/// The speed controller's throttle curve, with a button that takes it away; hidden while the craft
/// has none.
QWidget* throttleCurveRow(Document& document);

}  // namespace stillbay::ui
