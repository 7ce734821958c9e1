// SPDX-License-Identifier: MIT
#include "ui/charts/chart_menu.h"

#include "ui/charts/chart.h"
#include "ui/charts/chart_paper.h"
#include "ui/charts/chart_table.h"
#include "ui/charts/table_dialog.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/message_bar.h"

#include <QAction>
#include <QClipboard>
#include <QDir>
#include <QFileDialog>
#include <QGuiApplication>
#include <QMainWindow>
#include <QMimeData>
#include <QSettings>
#include <QStatusBar>

namespace stillbay::ui {
namespace {

const QString kFolder = QStringLiteral("files/last-export-folder");
constexpr int kNotice_ms = 8000;

// The craft's window, also of a chart in a window beside it.
QMainWindow* mainWindowOf(const QWidget& widget)
{
    QWidget* window = widget.window();
    while (window && !qobject_cast<QMainWindow*>(window))
        window = window->parentWidget() ? window->parentWidget()->window() : nullptr;
    return static_cast<QMainWindow*>(window);
}

void notice(const QWidget& widget, const QString& text)
{
    if (auto* const window = mainWindowOf(widget))
        window->statusBar()->showMessage(text, kNotice_ms);
}

// "PNG picture (*.png)" names the suffix png.
QString suffixOf(const QString& filter)
{
    return filter.section(QStringLiteral("*."), 1).section(u')', 0, 0);
}

}  // namespace

ChartMenu::ChartMenu(Chart& chart) : QMenu(&chart), m_chart(chart)
{
    addWithKeys(tr("&Copy the picture"), {QKeySequence::Copy}, &ChartMenu::copyPicture);
    addWithKeys(tr("Copy the &numbers"), {}, &ChartMenu::copyData);
    addWithKeys(tr("&Export…"), {}, &ChartMenu::askAndExport);
    addWithKeys(tr("Show the numbers in a &table"), {}, &ChartMenu::showTable);
    addSeparator();
    addWithKeys(tr("Zoom &in"), {Qt::Key_Plus, Qt::Key_Equal}, &ChartMenu::zoomIn);
    addWithKeys(tr("Zoom &out"), {Qt::Key_Minus}, &ChartMenu::zoomOut);
    addWithKeys(tr("&Reset the zoom"), {Qt::Key_0}, &ChartMenu::resetZoom);
}

void ChartMenu::addWithKeys(const QString& text, const QList<QKeySequence>& keys,
                            void (ChartMenu::*act)())
{
    QAction* const action = addAction(text);
    action->setShortcuts(keys);
    action->setShortcutContext(Qt::WidgetShortcut);
    connect(action, &QAction::triggered, this, act);
    m_chart.canvas()->addAction(action);
}

void ChartMenu::copyPicture()
{
    QGuiApplication::clipboard()->setMimeData(chartMimeData(m_chart).release());
    notice(m_chart, tr("Copied the picture and the numbers of “%1”.").arg(m_chart.name()));
}

void ChartMenu::copyData()
{
    QGuiApplication::clipboard()->setText(toTabbedText(m_chart.table()));
    notice(m_chart, tr("Copied the numbers of “%1”.").arg(m_chart.name()));
}

// Beside the craft's file; a craft that has none goes where the last export went.
QString ChartMenu::suggestedPath() const
{
    const QMainWindow* const window = mainWindowOf(m_chart);
    const QString craft = window ? window->windowFilePath() : QString();
    QString name = m_chart.table().title;
    if (name == m_chart.name() && !craft.isEmpty())
        name = tr("%1: %2").arg(QFileInfo(craft).completeBaseName(), name);
    name.replace(QStringLiteral(": "), QStringLiteral(" - "));
    for (QChar& letter : name)
        if (QStringLiteral("./\\:*?\"<>|").contains(letter) ||
            letter.category() == QChar::Other_Control)
            letter = u'-';
    const QString folder = craft.isEmpty() ? QSettings().value(kFolder, QDir::homePath()).toString()
                                           : QFileInfo(craft).absolutePath();
    return QDir(folder).filePath(name.simplified());
}

void ChartMenu::askAndExport()
{
    const QStringList filters{tr("PNG picture (*.png)"), tr("SVG drawing (*.svg)"),
                              tr("PDF page (*.pdf)"), tr("CSV numbers (*.csv)")};
    QFileDialog dialog(&m_chart, tr("Export “%1” as").arg(m_chart.name()), suggestedPath());
    dialog.setAcceptMode(QFileDialog::AcceptSave);
    dialog.setNameFilters(filters);
    dialog.setDefaultSuffix(suffixOf(filters.front()));
    connect(&dialog, &QFileDialog::filterSelected, &dialog,
            [&dialog](const QString& filter) { dialog.setDefaultSuffix(suffixOf(filter)); });
    if (dialog.exec() != QDialog::Accepted)
        return;
    const QString path = dialog.selectedFiles().constFirst();
    QSettings().setValue(kFolder, QFileInfo(path).absolutePath());
    exportTo(path);
}

bool ChartMenu::exportTo(const QString& path)
{
    const Result<void> written = exportChart(m_chart, path);
    const QString shown = QDir::toNativeSeparators(path);
    if (written)
        notice(m_chart, tr("Exported “%1” to %2").arg(m_chart.name(), shown));
    else if (MessageBar* const bar = problemBar())
        bar->display(MessageBar::Kind::Problem, tr("Could not export to %1").arg(shown),
                     tr("%1. You can choose another name or folder.")
                         .arg(displayText(written.error().what)));
    return written.has_value();
}

MessageBar* ChartMenu::problemBar() const
{
    MessageBar* const own = m_chart.window()->findChild<MessageBar*>();
    QMainWindow* const window = mainWindowOf(m_chart);
    return own || !window ? own : window->findChild<MessageBar*>();
}

void ChartMenu::showTable()
{
    auto* const dialog = new TableDialog(m_chart.table(), m_chart.window());
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->show();
}

void ChartMenu::zoomIn()
{
    m_chart.zoomAtCursor(1.0 / Chart::kZoomStep);
}

void ChartMenu::zoomOut()
{
    m_chart.zoomAtCursor(Chart::kZoomStep);
}

void ChartMenu::resetZoom()
{
    m_chart.resetZoom();
}

}  // namespace stillbay::ui
