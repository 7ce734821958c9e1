// SPDX-License-Identifier: MIT
#pragma once

#include <QList>
#include <QPointer>
#include <QWidget>

namespace stillbay::ui {

/// What Tab stops at inside a widget, hidden ones included, in the order of its layouts: the order
/// one reads, where every layout lists its widgets from the top down and from left to right.
QList<QPointer<QWidget>> tabStopsIn(const QWidget& root);

/// Makes Tab go from the first widget on through these, in this order.
void orderTabs(QWidget& from, const QList<QPointer<QWidget>>& stops);

}  // namespace stillbay::ui
