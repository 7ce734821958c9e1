// SPDX-License-Identifier: MIT
#include "ui/panels/row_list.h"

#include "ui/widgets/labels.h"

#include <QFrame>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QToolButton>
#include <QVBoxLayout>

#include <utility>

namespace stillbay::ui {

RowList::RowList(Document& document, RowListSpec spec, QWidget* parent)
    : QWidget(parent),
      m_document(document),
      m_spec(std::move(spec)),
      m_cardLayout(new QVBoxLayout),
      m_refusal(new ProblemLabel(this))
{
    auto* const add = new QPushButton(tr("Add %1").arg(m_spec.thing), this);
    connect(add, &QPushButton::clicked, this,
            [this] { change(tr("add %1").arg(m_spec.thing), m_spec.add); });
    m_cardLayout->setSpacing(8);
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addLayout(m_cardLayout);
    layout->addWidget(m_refusal);
    layout->addWidget(add, 0, Qt::AlignLeft);
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
    for (QWidget* card : m_cards) {
        card->hide();
        card->deleteLater();  // the click that asked for this may come from inside
    }
    m_cards.clear();
    m_kind = kind;
    for (std::size_t index = 0; index < count; ++index) {
        m_cards.push_back(makeCard(index));
        m_cardLayout->addWidget(m_cards.back());
    }
}

QWidget* RowList::makeCard(std::size_t index)
{
    const QString name = QStringLiteral("%1 %2").arg(m_spec.thing).arg(index + 1);
    auto* const card = new QFrame(this);
    card->setFrameShape(QFrame::StyledPanel);
    auto* const title = new QLabel(name.left(1).toUpper() + name.mid(1), card);
    auto* const remove = new QToolButton(card);
    remove->setText(tr("Remove"));
    remove->setAutoRaise(true);
    remove->setAccessibleName(tr("Remove %1").arg(name));
    connect(remove, &QToolButton::clicked, this, [this, index] {
        change(tr("remove %1").arg(m_spec.thing),
               [&](Setup& setup) { m_spec.remove(setup, index); });
    });
    auto* const top = new QHBoxLayout;
    top->addWidget(title, 1);
    top->addWidget(remove);
    auto* const layout = new QVBoxLayout(card);
    layout->setContentsMargins(8, 4, 8, 8);
    layout->setSpacing(4);
    layout->addLayout(top);
    layout->addWidget(m_spec.makeRow(index));
    return card;
}

void RowList::change(const QString& text, const std::function<void(Setup&)>& change)
{
    const Result<void> done = m_document.edit(text, {}, change);
    if (done)
        return;
    m_refusal->setText(tr("Not done: %1").arg(QString::fromStdString(done.error().what)));
    m_refusal->show();
}

}  // namespace stillbay::ui
