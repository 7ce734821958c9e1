// SPDX-License-Identifier: MIT
#include "ui/widgets/pane.h"

#include <QEvent>

namespace stillbay::ui {

Pane::Pane(QWidget* content, QWidget* parent)
    : QWidget(parent), m_content(content), m_least(content->minimumSizeHint())
{
    m_content->setParent(this);
}

QSize Pane::sizeHint() const
{
    return m_content->sizeHint();
}

QSize Pane::minimumSizeHint() const
{
    return m_content->minimumSizeHint();
}

bool Pane::event(QEvent* event)
{
    if (event->type() == QEvent::LayoutRequest && m_least != minimumSizeHint()) {
        m_least = minimumSizeHint();
        updateGeometry();
    }
    return QWidget::event(event);
}

void Pane::resizeEvent(QResizeEvent*)
{
    m_content->setGeometry(rect());
}

}  // namespace stillbay::ui
