// SPDX-License-Identifier: MIT
#include "ui/widgets/flow_layout.h"

#include <QWidget>

#include <algorithm>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr int kGap_px = 6;

}  // namespace

FlowLayout::FlowLayout(QWidget* parent) : QLayout(parent)
{
    setContentsMargins(0, 0, 0, 0);
    setSpacing(kGap_px);
}

FlowLayout::~FlowLayout() = default;

void FlowLayout::addItem(QLayoutItem* item)
{
    m_items.emplace_back(item);
}

int FlowLayout::count() const
{
    return static_cast<int>(m_items.size());
}

QLayoutItem* FlowLayout::itemAt(int index) const
{
    return index < 0 || index >= count() ? nullptr : m_items[static_cast<std::size_t>(index)].get();
}

QLayoutItem* FlowLayout::takeAt(int index)
{
    if (!itemAt(index))
        return nullptr;
    const auto at = m_items.begin() + index;
    QLayoutItem* const item = at->release();
    m_items.erase(at);
    return item;
}

// The height that the items take in the width of rect; really: and puts them there.
int FlowLayout::place(const QRect& rect, bool really) const
{
    int x = rect.left(), y = rect.top(), lineHeight = 0;
    for (const auto& item : m_items) {
        if (item->isEmpty())
            continue;
        const QSize size = item->sizeHint().boundedTo({rect.width(), QWIDGETSIZE_MAX});
        if (x > rect.left() && x + size.width() > rect.right() + 1) {
            x = rect.left();
            y += lineHeight + spacing();
            lineHeight = 0;
        }
        if (really)
            item->setGeometry({QPoint(x, y), size});
        x += size.width() + spacing();
        lineHeight = std::max(lineHeight, size.height());
    }
    return y + lineHeight - rect.top();
}

int FlowLayout::heightForWidth(int width) const
{
    return place({0, 0, width, 0}, false);
}

QSize FlowLayout::sizeHint() const
{
    QSize size;
    for (const auto& item : m_items)
        if (!item->isEmpty())
            size = {size.width() + (size.width() > 0 ? spacing() : 0) + item->sizeHint().width(),
                    std::max(size.height(), item->sizeHint().height())};
    return size;
}

QSize FlowLayout::minimumSize() const
{
    QSize size;
    for (const auto& item : m_items)
        if (!item->isEmpty())
            size = size.expandedTo(item->minimumSize());
    return size;
}

void FlowLayout::setGeometry(const QRect& rect)
{
    QLayout::setGeometry(rect);
    place(rect, true);
}

}  // namespace stillbay::ui
