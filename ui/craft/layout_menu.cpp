// SPDX-License-Identifier: MIT
#include "ui/craft/layout_menu.h"

#include "ui/widgets/labels.h"

#include <QMenu>
#include <QPushButton>
#include <QVBoxLayout>

namespace stillbay::ui {

LayoutMenu::LayoutMenu(Document& document, const RowLayouts& layouts, QWidget* parent)
    : QWidget(parent)
{
    auto* const button = new QPushButton(layouts.title, this);
    button->setToolTip(QStringLiteral("<p>%1</p>").arg(layouts.meaning.toHtmlEscaped()));
    auto* const refusal = new ProblemLabel(this);
    connect(&document, &Document::setupChanged, refusal, &QLabel::hide);
    auto* const menu = new QMenu(layouts.title, button);
    for (const RowLayout& layout : layouts.layouts)
        connect(menu->addAction(layout.title), &QAction::triggered, this,
                [&document, refusal, layout, unchanged = layouts.unchanged] {
                    const quint64 before = document.revision();
                    if (refusal->display(document.edit(layout.undoText, {}, layout.apply)) &&
                        document.revision() == before)
                        refusal->format(unchanged);
                });
    button->setMenu(menu);
    auto* const whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->addWidget(button, 0, Qt::AlignLeft);
    whole->addWidget(refusal);
}

}  // namespace stillbay::ui
