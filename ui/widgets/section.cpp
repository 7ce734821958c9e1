// SPDX-License-Identifier: MIT
#include "ui/widgets/section.h"

#include "ui/widgets/labels.h"

#include <QFrame>
#include <QHBoxLayout>
#include <QToolButton>
#include <QVBoxLayout>

namespace stillbay::ui {

Section::Section(const QString& title, QWidget* parent)
    : QWidget(parent),
      m_heading(new QToolButton(this)),
      m_summary(new ElidedLabel(Qt::AlignRight, this)),
      m_body(new QWidget(this)),
      m_bodyLayout(new QVBoxLayout(m_body))
{
    QFont bold = font();
    bold.setBold(true);
    m_heading->setFont(bold);
    m_heading->setText(title);
    m_heading->setAccessibleName(tr("Section %1").arg(title));
    m_heading->setCheckable(true);
    m_heading->setAutoRaise(true);
    m_heading->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
    m_heading->setArrowType(Qt::RightArrow);
    m_heading->setFocusPolicy(Qt::TabFocus);
    m_bodyLayout->setContentsMargins(12, 2, 2, 10);
    m_bodyLayout->setSpacing(6);
    m_body->hide();

    auto* const line = new QFrame(this);
    line->setFrameShape(QFrame::HLine);
    line->setFrameShadow(QFrame::Plain);
    line->setForegroundRole(QPalette::Mid);
    auto* const top = new QHBoxLayout;
    top->setContentsMargins(0, 0, 4, 0);
    top->addWidget(m_heading);
    top->addWidget(m_summary, 1);
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(2);
    layout->addLayout(top);
    layout->addWidget(m_body);
    layout->addWidget(line);
    connect(m_heading, &QToolButton::toggled, this, &Section::setOpen);
    connect(m_heading, &QToolButton::toggled, this, &Section::toggled);
}

void Section::add(QWidget* widget, Qt::Alignment alignment)
{
    m_bodyLayout->addWidget(widget, 0, alignment);
}

void Section::setSummary(const QString& summary)
{
    m_summary->setText(summary);
}

QString Section::summary() const
{
    return m_summary->text();
}

void Section::setOpen(bool open)
{
    m_heading->setChecked(open);
    m_heading->setArrowType(open ? Qt::DownArrow : Qt::RightArrow);
    m_body->setVisible(open);
}

void Section::rememberAs(const QString& name)
{
    m_heading->setObjectName(QStringLiteral("view.section.%1").arg(name));
}

bool Section::isOpen() const
{
    return m_heading->isChecked();
}

}  // namespace stillbay::ui
