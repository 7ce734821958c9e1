// SPDX-License-Identifier: MIT
#include "ui/find/find_desk.h"

#include "ui/find/find_window.h"

#include <QAction>

#include <utility>

namespace stillbay::ui {

FindDesk::FindDesk(Document& document, QList<QAction*> shared, QWidget& window)
    : QObject(&window),
      m_document(document),
      m_shared(std::move(shared)),
      m_window(window),
      m_action(new QAction(tr("&Find a tune…"), this))
{
    m_action->setShortcut(Qt::CTRL | Qt::Key_T);
    m_action->setToolTip(tr("With which tube, length and stretch the film wobbles least (%1)")
                             .arg(m_action->shortcut().toString(QKeySequence::NativeText)));
    m_action->setEnabled(false);  // until there is a craft
}

void FindDesk::show()
{
    if (!m_search)
        m_search = new FindWindow(m_document, m_shared, m_window);
    m_search->show();
    m_search->raise();
    m_search->activateWindow();
}

void FindDesk::craftOpened()
{
    m_action->setEnabled(true);
    if (m_search)
        m_search->craftOpened();
}

}  // namespace stillbay::ui
