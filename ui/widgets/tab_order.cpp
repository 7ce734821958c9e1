// SPDX-License-Identifier: MIT
#include "ui/widgets/tab_order.h"

#include <QLayout>

namespace stillbay::ui {
namespace {

void collect(const QLayout* layout, QList<QPointer<QWidget>>& stops)
{
    for (int k = 0; layout && k < layout->count(); ++k) {
        QLayoutItem* const item = layout->itemAt(k);
        QWidget* const widget = item->widget();
        if (widget && !widget->focusProxy() && widget->focusPolicy() & Qt::TabFocus)
            stops.append(widget);
        collect(widget ? widget->layout() : item->layout(), stops);
    }
}

}  // namespace

QList<QPointer<QWidget>> tabStopsIn(const QWidget& root)
{
    QList<QPointer<QWidget>> stops;
    collect(root.layout(), stops);
    return stops;
}

void orderTabs(QWidget& from, const QList<QPointer<QWidget>>& stops)
{
    QWidget* before = &from;
    for (QWidget* stop : stops) {
        QWidget::setTabOrder(before, stop);
        before = stop;
    }
}

}  // namespace stillbay::ui
