// SPDX-License-Identifier: MIT
#include "ui/findings/word_page.h"

#include <QScrollBar>

#include <utility>

namespace stillbay::ui {

WordPage::WordPage(const QString& accessibleName, QWidget* parent)
    : QTextBrowser(parent), m_pace(Paced::Pace::AtRest, [this] { write(); })
{
    setAccessibleName(accessibleName);
    setFrameShape(QFrame::NoFrame);
    setAcceptDrops(false);
    setOpenLinks(false);
    QPalette plain = palette();
    plain.setColor(QPalette::Base, Qt::transparent);
    setPalette(plain);
}

void WordPage::say(std::function<QString()> html)
{
    m_newest = std::move(html);
    m_pace.ask();
}

void WordPage::goToTop()
{
    m_toTop = true;
    verticalScrollBar()->setValue(0);
}

void WordPage::write()
{
    QString html = m_newest();
    const int place = std::exchange(m_toTop, false) ? 0 : verticalScrollBar()->value();
    if (m_written == html)
        return;
    m_written = std::move(html);
    setHtml(m_written);
    verticalScrollBar()->setValue(place);
}

}  // namespace stillbay::ui
