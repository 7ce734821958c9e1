// SPDX-License-Identifier: MIT
#pragma once

#include "ui/document/document.h"

#include <QWidget>

/// The craft's lists of like things, each row with all its fields.
namespace stillbay::ui {

QWidget* airframePartList(Document& document);
QWidget* bayPartList(Document& document);
QWidget* armList(Document& document);
QWidget* pointList(Document& document);

}  // namespace stillbay::ui
