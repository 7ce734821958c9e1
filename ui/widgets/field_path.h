// SPDX-License-Identifier: MIT
#pragma once

#include <QString>

class QWidget;

/// Which number, text or row of the craft a widget stands for, by its path in the file.
namespace stillbay::ui {

void setFieldPath(QWidget& widget, const QString& path);

/// The path of the nearest widget from this one up to the root that has one; empty: none has.
QString fieldPathAt(const QWidget* widget, const QWidget* root);

}  // namespace stillbay::ui
