// SPDX-License-Identifier: MIT
#include "ui/widgets/message_bar.h"

#include "ui/widgets/colours.h"

#include <QAccessible>
#include <QApplication>
#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QToolButton>
#include <QVBoxLayout>

namespace stillbay::ui {

MessageBar::MessageBar(QWidget* parent)
    : QFrame(parent), m_title(new QLabel(this)), m_detail(new QLabel(this))
{
    QFont bold = font();
    bold.setBold(true);
    m_title->setFont(bold);
    for (QLabel* label : {m_title, m_detail}) {
        label->setWordWrap(true);
        label->setTextFormat(Qt::PlainText);
        label->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    }
    m_title->setAccessibleName(tr("Message"));
    m_detail->setAccessibleName(tr("Message details"));
    auto* const close = new QToolButton(this);
    close->setText(tr("Dismiss"));
    close->setAccessibleName(tr("Dismiss the message"));
    close->setFocusPolicy(Qt::TabFocus);
    connect(close, &QToolButton::clicked, this, &QWidget::hide);

    auto* const words = new QVBoxLayout;
    words->setSpacing(2);
    words->addWidget(m_title);
    words->addWidget(m_detail);
    auto* const layout = new QHBoxLayout(this);
    layout->setContentsMargins(12, 8, 8, 8);
    layout->addLayout(words, 1);
    layout->addWidget(close, 0, Qt::AlignTop);
    setAutoFillBackground(true);
    setAccessibleName(tr("Message bar"));
    hide();
}

void MessageBar::tell(Kind kind, const QString& title, const QString& detail)
{
    m_kind = kind;
    m_title->setText(title);
    m_detail->setText(detail);
    m_detail->setVisible(!detail.isEmpty());
    recolour();
    show();
    QAccessibleEvent alert(this, QAccessible::Alert);
    QAccessible::updateAccessibility(&alert);
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
