// SPDX-License-Identifier: MIT
#include "ui/window/new_craft_desk.h"

#include "ui/bay/bay_view.h"
#include "ui/newcraft/new_craft_guide.h"
#include "ui/window/file_actions.h"

#include <QAction>
#include <QComboBox>
#include <QLabel>

namespace stillbay::ui {
namespace {

// The guide shows how the craft stands; how it swings is for the tab, where there is room for it.
void leaveStill(BayView& picture)
{
    for (QComboBox* box : picture.findChildren<QComboBox*>())
        box->hide();
    for (QLabel* label : picture.findChildren<QLabel*>())
        if (qobject_cast<QComboBox*>(label->buddy()))
            label->hide();
}

}  // namespace

NewCraftDesk::NewCraftDesk(FileActions& files, QWidget& window)
    : QObject(&window),
      m_files(files),
      m_window(window),
      m_action(new QAction(tr("&New craft…"), this))
{
    m_action->setShortcut(QKeySequence::New);
    m_action->setToolTip(tr("Describe your own craft on five short pages (%1)")
                             .arg(m_action->shortcut().toString(QKeySequence::NativeText)));
    connect(m_action, &QAction::triggered, this, &NewCraftDesk::begin);
}

void NewCraftDesk::begin()
{
    if (!m_files.maybeSave())
        return;
    auto* const picture = new BayView;
    leaveStill(*picture);
    auto* const guide = new NewCraftGuide(picture, *picture, &m_window);
    guide->setAttribute(Qt::WA_DeleteOnClose);
    connect(guide, &NewCraftGuide::created, &m_files, &FileActions::openNew);
    connect(guide, &NewCraftGuide::fieldFocused, picture, &BayView::setFocusedField);
    guide->open();
}

}  // namespace stillbay::ui
