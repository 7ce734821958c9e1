// SPDX-License-Identifier: MIT
#include "ui/window/sheet_desk.h"

#include "ui/sheet/sheet_dialog.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/message_bar.h"

#include <QAction>

#include <utility>

namespace stillbay::ui {

SheetDesk::SheetDesk(const Document& document, std::function<double()> grip_mm, QWidget& window)
    : QObject(&window),
      m_document(document),
      m_grip_mm(std::move(grip_mm)),
      m_window(window),
      m_messages(new MessageBar(tr("Build sheet"), &window)),
      m_action(new QAction(tr("&Build sheet…"), this))
{
    m_action->setShortcut(QKeySequence::Print);
    m_action->setToolTip(tr("Cut list, holes and drilling template on paper (%1)")
                             .arg(m_action->shortcut().toString(QKeySequence::NativeText)));
    m_action->setEnabled(false);  // until there is a craft
}

void SheetDesk::setResult(const Setup& setup, const Result<Assessment>& assessment)
{
    m_setup = setup;
    m_assessment = assessment;
    m_action->setEnabled(true);
    if (assessment)
        m_messages->hide();
    if (m_wanted)
        showIfCurrent();
}

void SheetDesk::show()
{
    m_wanted = true;  // an answer that is still under way opens it
    showIfCurrent();
}

void SheetDesk::showIfCurrent()
{
    if (!m_assessment || m_setup != m_document.setup())
        return;
    m_wanted = false;
    const Result<Assessment>& answer = *m_assessment;
    if (!answer) {
        m_messages->display(MessageBar::Kind::Problem, tr("No build sheet for this craft"),
                            displayText(answer.error().what));
        return;
    }
    auto* const dialog =
        new SheetDialog({m_setup, *answer, m_grip_mm(), QDate::currentDate()}, &m_window);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->open();
}

}  // namespace stillbay::ui
