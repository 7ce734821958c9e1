// SPDX-License-Identifier: MIT
#include "ui/widgets/tall_scroll.h"

#include <QEvent>
#include <QScrollBar>

namespace stillbay::ui {
namespace {

constexpr int kLeastHeight = 80;

}  // namespace

TallScroll::TallScroll(QWidget* content, QWidget* parent) : QScrollArea(parent)
{
    setFocusPolicy(Qt::NoFocus);
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setWidgetResizable(true);
    setWidget(content);
    viewport()->setAutoFillBackground(false);
    content->setAutoFillBackground(false);
}

QSize TallScroll::sizeHint() const
{
    return {widget()->sizeHint().width() + verticalScrollBar()->sizeHint().width(),
            widget()->sizeHint().height()};
}

QSize TallScroll::minimumSizeHint() const
{
    return {widget()->minimumSizeHint().width() + verticalScrollBar()->sizeHint().width(),
            kLeastHeight};
}

// Other words inside may need another width.
bool TallScroll::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == widget() && event->type() == QEvent::LayoutRequest)
        updateGeometry();
    return QScrollArea::eventFilter(watched, event);
}

}  // namespace stillbay::ui
