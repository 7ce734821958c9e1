// SPDX-License-Identifier: MIT
#include "ui/widgets/pane.h"

#include <QEvent>

namespace stillbay::ui {

Pane::Pane(QWidget* content, QWidget* parent)
    : QWidget(parent), m_content(content), m_room(content->minimumSizeHint())
{
    m_content->setParent(this);
    QSizePolicy policy = sizePolicy();
    policy.setHeightForWidth(content->hasHeightForWidth());
    setSizePolicy(policy);
}

QSize Pane::sizeHint() const
{
    return m_content->sizeHint();
}

QSize Pane::minimumSizeHint() const
{
    return m_content->minimumSizeHint();
}

bool Pane::hasHeightForWidth() const
{
    return m_content->hasHeightForWidth();
}

int Pane::heightForWidth(int width) const
{
    return m_content->heightForWidth(width);
}

QSize Pane::room() const
{
    QSize room = minimumSizeHint();
    if (hasHeightForWidth())
        room.setHeight(heightForWidth(width()));
    return room;
}

bool Pane::event(QEvent* event)
{
    if (event->type() == QEvent::LayoutRequest && m_room != room()) {
        m_room = room();
        updateGeometry();
    }
    return QWidget::event(event);
}

void Pane::resizeEvent(QResizeEvent*)
{
    m_content->setGeometry(rect());
}

}  // namespace stillbay::ui
