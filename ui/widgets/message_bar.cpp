// SPDX-License-Identifier: MIT
#include "ui/widgets/message_bar.h"

#include "ui/widgets/colours.h"

#include <QAccessible>
#include <QApplication>
#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QToolButton>
#include <QVBoxLayout>

namespace stillbay::ui {

MessageBar::MessageBar(const QString& topic, QWidget* parent)
    : QFrame(parent),
      m_title(new QLabel(this)),
      m_detail(new QLabel(this)),
      m_close(new QToolButton(this)),
      m_buttons(new QHBoxLayout)
{
    QFont bold = font();
    bold.setBold(true);
    m_title->setFont(bold);
    for (QLabel* label : {m_title, m_detail}) {
        label->setWordWrap(true);
        label->setTextFormat(Qt::PlainText);
        label->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    }
    m_title->setAccessibleName(tr("%1: message").arg(topic));
    m_detail->setAccessibleName(tr("%1: details").arg(topic));
    m_close->setText(tr("Dismiss"));
    m_close->setAccessibleName(tr("%1: dismiss").arg(topic));
    m_close->setToolTip(tr("Hides this message."));
    m_close->setFocusPolicy(Qt::TabFocus);
    connect(m_close, &QToolButton::clicked, this, &QWidget::hide);
    connect(m_close, &QToolButton::clicked, this, &MessageBar::dismissed);

    auto* const text = new QVBoxLayout;
    text->setSpacing(2);
    text->addWidget(m_title);
    text->addWidget(m_detail);
    auto* const layout = new QHBoxLayout(this);
    layout->setContentsMargins(12, 8, 8, 8);
    layout->addLayout(text, 1);
    layout->addLayout(m_buttons);
    layout->addWidget(m_close, 0, Qt::AlignVCenter);
    setFrameShape(QFrame::StyledPanel);  // tells one bar from the next
    setAutoFillBackground(true);
    setAccessibleName(topic);
    hide();
}

void MessageBar::display(Kind kind, const QString& title, const QString& detail,
                         const std::vector<Action>& actions)
{
    m_kind = kind;
    m_title->setText(title);
    m_detail->setText(detail);
    m_detail->setVisible(!detail.isEmpty());
    showActions(actions);
    recolour();
    show();
    QAccessibleEvent alert(this, QAccessible::Alert);
    QAccessible::updateAccessibility(&alert);
}

void MessageBar::showActions(const std::vector<Action>& actions)
{
    while (QLayoutItem* const item = m_buttons->takeAt(0)) {
        item->widget()->hide();
        item->widget()->deleteLater();  // it may be the very button that is being pressed
        delete item;
    }
    QWidget* before = m_detail;
    for (const Action& action : actions) {
        auto* const button = new QPushButton(action.text, this);
        button->setToolTip(action.meaning);
        connect(button, &QPushButton::clicked, this, [this, action] {
            const auto run = action.run;  // outlives the button, should it tell something new
            if (action.settles)
                hide();
            run();
        });
        m_buttons->addWidget(button, 0, Qt::AlignVCenter);
        setTabOrder(before, button);
        before = button;
    }
    setTabOrder(before, m_close);
}

QString MessageBar::text() const
{
    return m_title->text() + u'\n' + m_detail->text();
}

void MessageBar::recolour()
{
    const QPalette desktop = QApplication::palette();
    const QColor accent =
        m_kind == Kind::Problem ? QColor(0xD5, 0x5E, 0x00) : QColor(0, 0x72, 0xB2);
    const QColor ground = mixed(desktop.color(QPalette::Window), accent, 0.22);
    if (palette().color(QPalette::Window) == ground)
        return;
    QPalette mine = desktop;
    mine.setColor(QPalette::Window, ground);
    setPalette(mine);
}

void MessageBar::changeEvent(QEvent* event)
{
    if (event->type() == QEvent::ApplicationPaletteChange)
        recolour();
    QFrame::changeEvent(event);
}

}  // namespace stillbay::ui
