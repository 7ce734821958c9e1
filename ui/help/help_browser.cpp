// SPDX-License-Identifier: MIT
#include "ui/help/help_browser.h"

#include "ui/help/help_pages.h"

#include <QAbstractTextDocumentLayout>
#include <QDesktopServices>
#include <QFile>
#include <QImage>
#include <QScrollBar>
#include <QTextDocument>
#include <QTextTable>

#include <utility>

namespace stillbay::ui {

HelpBrowser::HelpBrowser(std::function<QString()> writtenPage, QWidget* parent)
    : QTextBrowser(parent), m_writtenPage(std::move(writtenPage))
{
    setOpenLinks(false);
    document()->setDocumentMargin(16);
    connect(this, &QTextBrowser::anchorClicked, this, &HelpBrowser::follow);
    connect(this, &QTextBrowser::sourceChanged, this, &HelpBrowser::ruleTables);
}

void HelpBrowser::open(const QUrl& url)
{
    const QUrl page = url.adjusted(QUrl::RemoveFragment);
    if (source() != page || page == kShortcutsUrl) {
        setSource(page, QTextDocument::MarkdownResource);
        if (page == kShortcutsUrl)
            reload();  // the window may have changed since
    }
    if (!url.hasFragment())
        return;
    const QTextBlock heading = headingOf(*document(), url.fragment());
    if (heading.isValid())
        goTo(heading);
    else
        emit linkIsDead(url.fragment());
}

// The heading or table row at the top, and the text cursor there for who listens or searches.
void HelpBrowser::goTo(const QTextBlock& block)
{
    setTextCursor(QTextCursor(block));
    const QRectF place = document()->documentLayout()->blockBoundingRect(block);
    verticalScrollBar()->setValue(static_cast<int>(place.top()) - fontMetrics().height());
}

void HelpBrowser::follow(const QUrl& link)
{
    const QUrl target = source().resolved(link);
    if (target.scheme().startsWith(QStringLiteral("http")))
        QDesktopServices::openUrl(target);
    else if (target.scheme() == QStringLiteral("qrc") && QFile::exists(u':' + target.path()))
        open(target);
    else
        emit linkIsDead(target.fileName());
}

QVariant HelpBrowser::loadResource(int type, const QUrl& url)
{
    if (url == kShortcutsUrl)
        return m_writtenPage().toUtf8();
    if (type != QTextDocument::ImageResource)
        return QTextBrowser::loadResource(type, url);
    const QImage image(u':' + source().resolved(url).path());
    const int room = viewport()->width() - 2 * static_cast<int>(document()->documentMargin());
    return image.width() > room && room > 0 ? image.scaledToWidth(room, Qt::SmoothTransformation)
                                            : image;
}

// Markdown says nothing of lines between cells, and without any a wide table cannot be read. One
// edit for all of them: the page is laid out once.
void HelpBrowser::ruleTables()
{
    QTextCursor edit(document());
    edit.beginEditBlock();
    for (QTextFrame* const frame : document()->rootFrame()->childFrames()) {
        auto* const table = qobject_cast<QTextTable*>(frame);
        if (!table)
            continue;
        QTextTableFormat format = table->format();
        format.setBorder(1);
        format.setBorderCollapse(true);
        format.setBorderStyle(QTextFrameFormat::BorderStyle_Solid);
        format.setBorderBrush(palette().mid());
        format.setCellPadding(4);
        format.setCellSpacing(0);
        table->setFormat(format);
    }
    edit.endEditBlock();
}

}  // namespace stillbay::ui
