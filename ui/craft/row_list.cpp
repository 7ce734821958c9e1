// SPDX-License-Identifier: MIT
#include "ui/craft/row_list.h"

#include "ui/widgets/display_text.h"
#include "ui/widgets/field_path.h"
#include "ui/widgets/labels.h"

#include <QApplication>
#include <QFrame>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QShortcut>
#include <QToolButton>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace stillbay::ui {

namespace {

// The place of the focus among all widgets of a card; −1: it is elsewhere.
int focusPlace(const QWidget& frame)
{
    return static_cast<int>(frame.findChildren<QWidget*>().indexOf(QApplication::focusWidget()));
}

// The first widget for typing, as the layouts go; null where there is none.
QWidget* firstField(const QLayout* layout)
{
    for (int k = 0; layout && k < layout->count(); ++k) {
        QLayoutItem* const item = layout->itemAt(k);
        QWidget* const widget = item->widget();
        if (widget && !widget->isHidden() && widget->focusPolicy() & Qt::TabFocus)
            return widget;
        if (QWidget* const inside = firstField(widget ? widget->layout() : item->layout()))
            return inside;
    }
    return nullptr;
}

// Brings a card into sight, whatever it scrolls in.
void reveal(QWidget& frame)
{
    for (QWidget* above = frame.parentWidget(); above; above = above->parentWidget())
        if (auto* const area = qobject_cast<QScrollArea*>(above))
            area->ensureWidgetVisible(&frame);
}

}  // namespace

RowList::RowList(Document& document, RowListSpec spec, QWidget* parent)
    : QWidget(parent),
      m_document(document),
      m_spec(std::move(spec)),
      m_add(new QPushButton(tr("Add %1").arg(m_spec.thing), this)),
      m_cardLayout(new QVBoxLayout),
      m_refusal(new ProblemLabel(this))
{
    m_add->setToolTip(tr("One more at the end of the list."));
    connect(m_add, &QPushButton::clicked, this, &RowList::add);
    m_cardLayout->setSpacing(8);
    auto* const below = new QHBoxLayout;
    below->addWidget(m_add);
    below->addStretch();
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addLayout(m_cardLayout);
    layout->addWidget(m_refusal);
    layout->addLayout(below);
    for (QWidget* extra : m_spec.extras)
        layout->addWidget(extra);
    connect(&m_document, &Document::setupChanged, this, &RowList::refresh);
    refresh();
}

void RowList::refresh()
{
    m_refusal->hide();
    const std::size_t count = m_spec.count(m_document.setup());
    const int kind = m_spec.kind(m_document.setup());
    if (count == m_cards.size() && kind == m_kind)
        return;
    const auto focused = std::find_if(m_cards.begin(), m_cards.end(), [](const Card& card) {
        return focusPlace(*card.frame) >= 0;
    });
    const auto focusedIndex = static_cast<std::size_t>(focused - m_cards.begin());
    const int place = focused == m_cards.end() ? -1 : focusPlace(*focused->frame);
    for (const Card& card : m_cards) {
        card.frame->hide();
        card.frame->deleteLater();  // the click that asked for this may come from inside
    }
    m_cards.clear();
    m_kind = kind;
    for (std::size_t index = 0; index < count; ++index) {
        m_cards.push_back(makeCard(index));
        m_cardLayout->addWidget(m_cards.back().frame);
    }
    if (!m_cards.empty()) {
        m_cards.front().up->setEnabled(false);
        m_cards.back().down->setEnabled(false);
    }
    if (place >= 0)
        focusNear(focusedIndex, place);
}

// To the same place of the card that stands there now, or of the one before.
void RowList::focusNear(std::size_t index, int place)
{
    QWidget* next = m_add;
    if (!m_cards.empty()) {
        const Card& card = m_cards[std::min(index, m_cards.size() - 1)];
        const QList<QWidget*> widgets = card.frame->findChildren<QWidget*>();
        next = place < widgets.size() && widgets[place]->focusPolicy() != Qt::NoFocus &&
                       widgets[place]->isEnabled()
                   ? widgets[place]
                   : firstField(card.fields->layout());
    }
    if (next)
        next->setFocus(Qt::OtherFocusReason);
}

void RowList::add()
{
    const std::size_t before = m_cards.size();
    if (!change(tr("add %1").arg(m_spec.thing), m_spec.add) || m_cards.size() == before)
        return;
    enterLast();
}

void RowList::remove(std::size_t index)
{
    const std::size_t before = m_cards.size();
    if (!change(tr("remove %1").arg(m_spec.thing),
                [&](Setup& setup) { m_spec.remove(setup, index); }) ||
        m_cards.size() == before)
        return;
    if (m_cards.empty())
        m_add->setFocus(Qt::OtherFocusReason);
    else
        enter(std::min(index, m_cards.size() - 1));
}

void RowList::enterLast()
{
    if (!m_cards.empty())
        enter(m_cards.size() - 1);
}

// Into a card's first field.
void RowList::enter(std::size_t index)
{
    const Card& card = m_cards[index];
    if (QWidget* const field = firstField(card.fields->layout()))
        field->setFocus(Qt::TabFocusReason);
    reveal(*card.frame);
}

RowList::Card RowList::makeCard(std::size_t index)
{
    const QString name = QStringLiteral("%1 %2").arg(m_spec.thing).arg(index + 1);
    auto* const frame = new QFrame(this);
    frame->setFrameShape(QFrame::StyledPanel);
    setFieldPath(*frame, QStringLiteral("%1[%2]").arg(m_spec.path).arg(index));
    auto* const title = new QLabel(capitalised(name), frame);
    title->setWordWrap(true);  // in a narrow form
    QToolButton* const up = moveButton(index, Way::Up, name, frame);
    QToolButton* const down = moveButton(index, Way::Down, name, frame);
    auto* const remove = new QToolButton(frame);
    remove->setText(tr("Remove"));
    remove->setAutoRaise(true);
    remove->setFocusPolicy(Qt::StrongFocus);
    remove->setAccessibleName(tr("Remove %1").arg(name));
    remove->setToolTip(remove->accessibleName());
    connect(remove, &QToolButton::clicked, this, [this, index] { this->remove(index); });
    auto* const top = new QHBoxLayout;
    top->setSpacing(0);
    top->addWidget(title, 1);
    top->addWidget(up);
    top->addWidget(down);
    top->addWidget(remove);
    auto* const layout = new QVBoxLayout(frame);
    layout->setContentsMargins(6, 4, 6, 8);
    layout->setSpacing(4);
    layout->addLayout(top);
    QWidget* const fields = m_spec.makeRow(index);
    layout->addWidget(fields);
    return {frame, up, down, fields};
}

QToolButton* RowList::moveButton(std::size_t index, Way way, const QString& name, QWidget* frame)
{
    const bool isUp = way == Way::Up;
    const QKeySequence keys(Qt::ALT | (isUp ? Qt::Key_Up : Qt::Key_Down));
    auto* const button = new QToolButton(frame);
    button->setArrowType(isUp ? Qt::UpArrow : Qt::DownArrow);
    button->setAutoRaise(true);
    button->setFocusPolicy(Qt::StrongFocus);
    button->setAccessibleName(isUp ? tr("Move %1 up").arg(name) : tr("Move %1 down").arg(name));
    button->setToolTip(QStringLiteral("%1 (%2)").arg(button->accessibleName(),
                                                     keys.toString(QKeySequence::NativeText)));
    connect(button, &QToolButton::clicked, this, [this, index, way] { move(index, way); });
    auto* const shortcut = new QShortcut(keys, frame);
    shortcut->setContext(Qt::WidgetWithChildrenShortcut);
    connect(shortcut, &QShortcut::activated, this, [this, index, way] { move(index, way); });
    return button;
}

void RowList::move(std::size_t index, Way way)
{
    if (way == Way::Up ? index == 0 : index + 1 == m_cards.size())
        return;
    const int place = focusPlace(*m_cards[index].frame);
    if (QWidget* const focused = QApplication::focusWidget())
        focused->clearFocus();  // what is being typed belongs to the row where it stands now
    const std::size_t target = way == Way::Up ? index - 1 : index + 1;
    const QString text = way == Way::Up ? tr("move %1 up") : tr("move %1 down");
    if (change(text.arg(m_spec.thing), [&](Setup& setup) { m_spec.swap(setup, index, target); }))
        focusAfterMove(target, way, place);
}

void RowList::focusAfterMove(std::size_t index, Way way, int place)
{
    const Card& card = m_cards[index];
    QWidget* next = way == Way::Up ? card.up : card.down;
    const QList<QWidget*> widgets = card.frame->findChildren<QWidget*>();
    if (place >= 0 && place < widgets.size())
        next = widgets[place];
    if (!next->isEnabled())
        next = next == card.up ? card.down : card.up;  // at the end of the list: the way back
    next->setFocus(Qt::OtherFocusReason);
    reveal(*card.frame);
}

bool RowList::change(const QString& text, const std::function<void(Setup&)>& change)
{
    return m_refusal->display(m_document.edit(text, {}, change));
}

}  // namespace stillbay::ui
