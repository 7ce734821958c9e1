// SPDX-License-Identifier: MIT
#include "ui/window/map_page.h"

#include "ui/find/find_pane.h"
#include "ui/map/map_chart.h"
#include "ui/map/map_view.h"

#include <QAction>
#include <QSplitter>
#include <QVBoxLayout>

namespace stillbay::ui {

MapPage::MapPage(Document& document, QWidget* parent)
    : QWidget(parent),
      m_map(new MapView(document)),
      m_find(new FindPane(document)),
      m_splitter(new QSplitter(Qt::Horizontal)),
      m_action(new QAction(tr("&Find a tune…"), this))
{
    m_action->setShortcut(Qt::CTRL | Qt::Key_T);
    m_action->setToolTip(tr("With which tube, length and stretch the film wobbles least (%1)")
                             .arg(m_action->shortcut().toString(QKeySequence::NativeText)));
    m_action->setEnabled(false);  // until there is a craft
    m_splitter->setObjectName(QStringLiteral("view.mapFind"));
    m_splitter->addWidget(m_map);
    m_splitter->addWidget(m_find);
    m_splitter->setChildrenCollapsible(false);
    m_splitter->setStretchFactor(0, 1);
    m_splitter->setStretchFactor(1, 0);
    m_splitter->setSizes({700, 420});
    m_find->hide();
    connect(m_find, &FindPane::closed, this, &MapPage::closeFind);
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_splitter);
}

void MapPage::openFind()
{
    m_find->open();
}

void MapPage::closeFind()
{
    m_find->hide();
    m_map->chart().canvas()->setFocus();
}

void MapPage::craftOpened()
{
    m_action->setEnabled(true);
    m_map->lookAround();
    m_find->craftOpened();
}

}  // namespace stillbay::ui
