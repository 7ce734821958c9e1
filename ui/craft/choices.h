// SPDX-License-Identifier: MIT
#pragma once

#include "ui/document/document.h"

#include <QWidget>

/// Choices between states of the craft, each with the reason below it when it is refused.
namespace stillbay::ui {

QWidget* lensChoice(Document& document);    ///< rectilinear or fisheye
QWidget* endsChoice(Document& document);    ///< clamped or hinged
QWidget* anchorChoice(Document& document);  ///< planned or drilled

}  // namespace stillbay::ui
