// SPDX-License-Identifier: MIT
#include "ui/help/help_window.h"

#include "ui/help/help_browser.h"
#include "ui/help/help_pages.h"

#include <QAction>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QMainWindow>
#include <QPushButton>
#include <QSettings>
#include <QSplitter>
#include <QTextBlock>
#include <QVBoxLayout>

namespace stillbay::ui {
namespace {

const QString kPlace = QStringLiteral("help/geometry");  // keys of the settings
const QString kColumns = QStringLiteral("help/columns");

}  // namespace

HelpWindow::HelpWindow(QMainWindow& explained)
    : QWidget(&explained, Qt::Window),
      m_pages(new QListWidget),
      m_browser(new HelpBrowser([&explained] { return shortcutsPage(explained); })),
      m_text(new QLineEdit),
      m_note(new QLabel),
      m_columns(new QSplitter)
{
    setWindowTitle(tr("Help — Stillbay"));
    m_pages->setAccessibleName(tr("Pages of the help"));
    m_pages->setToolTip(tr("Choose a page to read."));
    for (const HelpPage& page : helpPages()) {
        auto* const item = new QListWidgetItem(page.title, m_pages);
        item->setData(Qt::UserRole, page.url);
    }
    connect(m_pages, &QListWidget::currentItemChanged, this, [this](const QListWidgetItem* item) {
        if (item)
            m_browser->open(item->data(Qt::UserRole).toUrl());
    });
    m_browser->setAccessibleName(tr("Text of the page"));
    connect(m_browser, &QTextBrowser::sourceChanged, this, &HelpWindow::listed);
    connect(m_browser, &HelpBrowser::linkIsDead, this, [this](const QString& target) {
        m_note->setText(tr("%1 is not part of this help").arg(target));
    });

    auto* const right = new QWidget;
    auto* const column = new QVBoxLayout(right);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(makeSearch());
    column->addWidget(m_browser, 1);
    m_columns->addWidget(m_pages);
    m_columns->addWidget(right);
    m_columns->setStretchFactor(0, 0);
    m_columns->setStretchFactor(1, 1);
    m_columns->setSizes({200, 620});
    m_columns->setChildrenCollapsible(false);
    auto* const layout = new QVBoxLayout(this);
    layout->addWidget(m_columns);
    const QSettings settings;
    if (!restoreGeometry(settings.value(kPlace).toByteArray()))
        resize(840, 640);
    m_columns->restoreState(settings.value(kColumns).toByteArray());
    m_browser->setFocus();
}

// Once, when the program ends: until then the window is only hidden.
HelpWindow::~HelpWindow()
{
    QSettings settings;
    settings.setValue(kPlace, saveGeometry());
    settings.setValue(kColumns, m_columns->saveState());
}

QWidget* HelpWindow::makeSearch()
{
    m_text->setPlaceholderText(tr("Search in this page"));
    m_text->setAccessibleName(tr("Search in this page"));
    m_text->setToolTip(tr("Enter finds the next place, Shift+F3 the one before."));
    m_text->setClearButtonEnabled(true);
    auto* const next = new QPushButton(tr("&Next"));
    next->setToolTip(tr("Goes to the next place that has these words (F3)."));
    auto* const previous = new QPushButton(tr("&Previous"));
    previous->setToolTip(tr("Goes to the place before that has these words (Shift+F3)."));
    m_note->setAccessibleName(tr("Outcome of the search"));
    connect(m_text, &QLineEdit::returnPressed, this, [this] { find(false); });
    connect(next, &QPushButton::clicked, this, [this] { find(false); });
    connect(previous, &QPushButton::clicked, this, [this] { find(true); });

    const auto onKeys = [this](const QList<QKeySequence>& keys, const auto& act) {
        auto* const action = new QAction(this);
        action->setShortcuts(keys);
        connect(action, &QAction::triggered, this, act);
        addAction(action);
    };
    onKeys({QKeySequence::Find}, [this] {
        m_text->setFocus();
        m_text->selectAll();
    });
    onKeys({Qt::Key_F3}, [this] { find(false); });
    onKeys({Qt::SHIFT | Qt::Key_F3}, [this] { find(true); });
    onKeys({Qt::Key_Escape, QKeySequence::Close}, [this] { close(); });
    onKeys({QKeySequence::Back}, [this] { m_browser->backward(); });
    onKeys({QKeySequence::Forward}, [this] { m_browser->forward(); });

    auto* const row = new QWidget;
    auto* const layout = new QHBoxLayout(row);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_text, 1);
    layout->addWidget(next);
    layout->addWidget(previous);
    layout->addWidget(m_note);
    return row;
}

void HelpWindow::find(bool backwards)
{
    const QString text = m_text->text();
    if (text.isEmpty())
        return;
    const QTextDocument::FindFlags way =
        backwards ? QTextDocument::FindBackward : QTextDocument::FindFlags();
    bool found = m_browser->find(text, way);
    bool again = false;
    if (!found) {  // from the other end
        const QTextCursor before = m_browser->textCursor();
        m_browser->moveCursor(backwards ? QTextCursor::End : QTextCursor::Start);
        found = again = m_browser->find(text, way);
        if (!found)
            m_browser->setTextCursor(before);
    }
    m_note->setText(!found  ? tr("Not on this page")
                    : again ? tr("From the other end of the page")
                            : QString());
}

void HelpWindow::listed(const QUrl& url)
{
    m_note->clear();
    for (int k = 0; k < m_pages->count(); ++k)
        if (m_pages->item(k)->data(Qt::UserRole).toUrl() == url)
            m_pages->setCurrentRow(k);
}

void HelpWindow::showPage(const QUrl& url)
{
    show();
    raise();
    activateWindow();
    m_browser->open(url);
}

void HelpWindow::showField(const QString& path)
{
    showPage(kSetupFileUrl);
    const QTextBlock place = fieldIn(*m_browser->document(), path);
    if (place.isValid())
        m_browser->goTo(place);
}

}  // namespace stillbay::ui
