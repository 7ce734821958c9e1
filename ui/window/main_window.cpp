// SPDX-License-Identifier: MIT
#include "ui/window/main_window.h"

#include "core/base/check.h"
#include "ui/panels/tube_bench.h"
#include "ui/widgets/message_bar.h"
#include "ui/window/icons.h"
#include "ui/window/result_view.h"
#include "ui/window/tuning_view.h"
#include "ui/window/welcome_page.h"

#include <QApplication>
#include <QCloseEvent>
#include <QDir>
#include <QFile>
#include <QFileDialog>
#include <QLabel>
#include <QMenuBar>
#include <QMessageBox>
#include <QMimeData>
#include <QScreen>
#include <QSettings>
#include <QStackedWidget>
#include <QStatusBar>
#include <QTabWidget>
#include <QToolBar>
#include <QVBoxLayout>

namespace stillbay::ui {
namespace {

constexpr int kLate_ms = 150;  // without an answer; sooner, fading would only flicker
constexpr QSize kFirstSize(1280, 800);
const QString kSuffix = QStringLiteral(".stillbay");

// Keys of the remembered session.
const QString kGeometry = QStringLiteral("window/geometry");
const QString kLayout = QStringLiteral("window/tuning-layout");
const QString kFolder = QStringLiteral("files/last-folder");
const QString kGrip = QStringLiteral("bench/grip-mm");

QString describe(const Error& error)
{
    const QString what = QString::fromStdString(error.what);
    return error.where.empty()
               ? what
               : QObject::tr("%1 (at %2)").arg(what, QString::fromStdString(error.where));
}

QString filter()
{
    return QObject::tr("Stillbay crafts (*.stillbay)");
}

// The one local file that is being dragged, if that is what is being dragged.
QString draggedFile(const QMimeData& data)
{
    const QList<QUrl> urls = data.urls();
    if (urls.size() != 1 || !urls.front().isLocalFile() ||
        !urls.front().path().endsWith(kSuffix, Qt::CaseInsensitive))
        return {};
    return urls.front().toLocalFile();
}

}  // namespace

MainWindow::MainWindow(QWidget* parent)
    : QMainWindow(parent),
      m_recompute(m_document),
      m_messages(new MessageBar),
      m_pages(new QStackedWidget),
      m_tabs(new QTabWidget),
      m_tuning(new TuningView(m_document, m_cursor)),
      m_state(new QLabel)
{
    makeActions();
    makePages();
    makeStatus();
    setAcceptDrops(true);
    m_lateness.setSingleShot(true);
    m_lateness.setInterval(kLate_ms);
    connect(&m_lateness, &QTimer::timeout, this, [this] {
        for (ResultView* view : m_views)
            view->setStale(true);
        m_state->setText(tr("Computing…"));
    });
    connect(&m_document, &Document::setupChanged, this, &MainWindow::setupChanged);
    connect(&m_document, &Document::fileChanged, this, &MainWindow::showTitle);
    connect(&m_document.undoStack(), &QUndoStack::cleanChanged, this,
            [this](bool clean) { setWindowModified(!clean); });
    connect(&m_recompute, &Recompute::finished, this, &MainWindow::resultArrived);
    showTitle();
    restoreSession();
}

MainWindow::~MainWindow() = default;

void MainWindow::makeActions()
{
    m_open = new QAction(tr("&Open…"), this);
    m_open->setShortcut(QKeySequence::Open);
    connect(m_open, &QAction::triggered, this, &MainWindow::askAndOpen);
    m_save = new QAction(tr("&Save"), this);
    m_save->setShortcut(QKeySequence::Save);
    connect(m_save, &QAction::triggered, this, &MainWindow::save);
    m_saveAs = new QAction(tr("Save &as…"), this);
    m_saveAs->setShortcut(QKeySequence::SaveAs);
    connect(m_saveAs, &QAction::triggered, this, &MainWindow::askAndSave);
    m_undo = m_document.undoStack().createUndoAction(this, tr("Undo"));
    m_undo->setShortcuts(QKeySequence::Undo);
    m_redo = m_document.undoStack().createRedoAction(this, tr("Redo"));
    m_redo->setShortcuts(QKeySequence::Redo);
    for (QAction* action : {m_save, m_saveAs})
        action->setEnabled(false);  // until there is a craft

    QMenu* const file = menuBar()->addMenu(tr("&File"));
    file->addAction(m_open);
    QMenu* const sampleMenu = file->addMenu(tr("Open a sa&mple"));
    for (const Sample& sample : samples())
        connect(sampleMenu->addAction(sample.title), &QAction::triggered, this,
                [this, sample] { openSample(sample); });
    file->addSeparator();
    file->addActions({m_save, m_saveAs});
    file->addSeparator();
    QAction* const quit = file->addAction(tr("&Quit"), this, &QWidget::close);
    quit->setShortcut(QKeySequence::Quit);
    QMenu* const edit = menuBar()->addMenu(tr("&Edit"));
    edit->addActions({m_undo, m_redo});
    menuBar()->addMenu(tr("&Help"))->addAction(tr("&About Stillbay"), this, &MainWindow::about);

    QToolBar* const bar = addToolBar(tr("Main toolbar"));
    bar->setObjectName(QStringLiteral("mainToolbar"));
    bar->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
    bar->setMovable(false);
    bar->setContextMenuPolicy(Qt::PreventContextMenu);
    bar->addActions({m_open, m_save});
    bar->addSeparator();
    bar->addActions({m_undo, m_redo});
    // The menu tells which step; on the toolbar that would make the buttons jump.
    m_undo->setIconText(tr("Undo"));
    m_redo->setIconText(tr("Redo"));
    drawIcons();
}

void MainWindow::makePages()
{
    auto* const welcome = new WelcomePage;
    connect(welcome, &WelcomePage::openWanted, this, &MainWindow::askAndOpen);
    connect(welcome, &WelcomePage::sampleWanted, this, &MainWindow::openSample);
    m_tabs->setDocumentMode(true);
    m_tabs->setTabBarAutoHide(true);
    addView(m_tuning, tr("Tuning"));
    m_pages->addWidget(welcome);
    m_pages->addWidget(m_tabs);

    auto* const centre = new QWidget;
    auto* const layout = new QVBoxLayout(centre);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    layout->addWidget(m_messages);
    layout->addWidget(m_pages, 1);
    setCentralWidget(centre);
}

// A tab that shows the newest result.
template <class View>
void MainWindow::addView(View* view, const QString& title)
{
    m_tabs->addTab(view, title);
    m_views.push_back(view);
}

void MainWindow::makeStatus()
{
    m_state->setAccessibleName(tr("State of the numbers"));
    m_state->setContentsMargins(8, 0, 0, 0);
    statusBar()->addWidget(m_state);
    m_state->setText(tr("No craft open"));
}

void MainWindow::drawIcons()
{
    m_open->setIcon(icon(Glyph::Open, palette()));
    m_save->setIcon(icon(Glyph::Save, palette()));
    m_undo->setIcon(icon(Glyph::Undo, palette()));
    m_redo->setIcon(icon(Glyph::Redo, palette()));
}

void MainWindow::changeEvent(QEvent* event)
{
    if (event->type() == QEvent::PaletteChange && m_open)
        drawIcons();
    QMainWindow::changeEvent(event);
}

QString MainWindow::message() const
{
    return m_messages->isHidden() ? QString() : m_messages->text();
}

bool MainWindow::openFile(const QString& path)
{
    const Result<void> opened = m_document.open(path);
    if (!opened) {
        m_messages->tell(MessageBar::Kind::Problem,
                         tr("Could not open %1").arg(QDir::toNativeSeparators(path)),
                         describe(opened.error()));
        return false;
    }
    showCraft();
    return true;
}

void MainWindow::openSample(const Sample& sample)
{
    if (!maybeSave())
        return;
    QFile file(sample.resource);
    check(file.open(QIODevice::ReadOnly), "a sample that is part of the program cannot be read");
    const Result<void> opened = m_document.openText(file.readAll(), sample.title);
    if (opened)
        showCraft();
    else
        m_messages->tell(MessageBar::Kind::Problem, tr("Could not open the sample"),
                         describe(opened.error()));
}

void MainWindow::showCraft()
{
    m_freshCraft = true;
    m_pages->setCurrentWidget(m_tabs);
    m_save->setEnabled(true);
    m_saveAs->setEnabled(true);
    showFileWarnings();
}

void MainWindow::showFileWarnings()
{
    m_messages->hide();
    if (m_document.fileWarnings().empty())
        return;
    QStringList lines;
    for (const Warning& warning : m_document.fileWarnings())
        lines << QString::fromStdString(warning.text);
    m_messages->tell(MessageBar::Kind::Note, tr("Opened %1").arg(m_document.fileName()),
                     lines.join(u'\n'));
}

bool MainWindow::saveFile(const QString& path)
{
    commitTyping();
    const Result<void> saved = m_document.save(path);
    if (!saved) {
        m_messages->tell(MessageBar::Kind::Problem,
                         tr("Could not save %1").arg(QDir::toNativeSeparators(path)),
                         tr("%1. The file on disk is as it was; you can save under another name.")
                             .arg(describe(saved.error())));
        return false;
    }
    m_messages->hide();
    statusBar()->showMessage(tr("Saved %1").arg(QDir::toNativeSeparators(path)), 4000);
    return true;
}

bool MainWindow::save()
{
    return m_document.path().isEmpty() ? askAndSave() : saveFile(m_document.path());
}

bool MainWindow::askAndSave()
{
    QSettings settings;
    const QString folder = settings.value(kFolder, QDir::homePath()).toString();
    const QString start = m_document.path().isEmpty()
                              ? QDir(folder).filePath(m_document.fileName() + kSuffix)
                              : m_document.path();
    QFileDialog dialog(this, tr("Save the craft as"), start, filter());
    dialog.setAcceptMode(QFileDialog::AcceptSave);
    dialog.setDefaultSuffix(kSuffix.mid(1));
    if (dialog.exec() != QDialog::Accepted)
        return false;
    const QString path = dialog.selectedFiles().constFirst();
    settings.setValue(kFolder, QFileInfo(path).absolutePath());
    return saveFile(path);
}

void MainWindow::askAndOpen()
{
    if (!maybeSave())
        return;
    QSettings settings;
    const QString path = QFileDialog::getOpenFileName(
        this, tr("Open a craft"), settings.value(kFolder, QDir::homePath()).toString(), filter());
    if (path.isEmpty())
        return;
    settings.setValue(kFolder, QFileInfo(path).absolutePath());
    openFile(path);
}

bool MainWindow::maybeSave()
{
    commitTyping();
    if (!m_document.isModified())
        return true;
    const auto answer = QMessageBox::warning(
        this, tr("Unsaved changes"), tr("Save the changes to %1 first?").arg(m_document.fileName()),
        QMessageBox::Save | QMessageBox::Discard | QMessageBox::Cancel, QMessageBox::Save);
    if (answer == QMessageBox::Save)
        return save();
    return answer == QMessageBox::Discard;
}

// A number that is typed but not yet entered belongs to the craft too.
void MainWindow::commitTyping()
{
    if (QWidget* const focus = focusWidget()) {
        focus->clearFocus();
        focus->setFocus();
    }
}

void MainWindow::showTitle()
{
    setWindowTitle(m_document.hasCraft() ? tr("%1[*] — Stillbay").arg(m_document.fileName())
                                         : tr("Stillbay"));
    setWindowModified(m_document.isModified());
}

void MainWindow::setupChanged()
{
    if (!m_lateness.isActive())
        m_lateness.start();
}

void MainWindow::resultArrived(const Outcome& outcome)
{
    for (ResultView* view : m_views) {
        view->setResult(outcome.setup, outcome.assessment);
        view->setStale(false);
    }
    if (m_recompute.isCurrent())
        m_lateness.stop();
    else
        m_lateness.start();  // anew: during a drag every answer is one step behind, and no more
    if (outcome.assessment && m_freshCraft) {
        m_cursor.moveTo(outcome.assessment->hover.throttle_full.value_or(
            outcome.setup.flight.cruise_throttle[0]));
        m_freshCraft = false;
    }
    m_state->setText(outcome.assessment ? tr("Up to date") : tr("No answer for this craft"));
}

void MainWindow::about()
{
    QMessageBox::about(
        this, tr("About Stillbay"),
        tr("<p><b>Stillbay %1</b></p><p>Tunes the tubes a camera bay hangs on.</p>"
           "<p>Free software under the MIT licence. Based in part on the work of the Qwt project "
           "(http://qwt.sf.net).</p>")
            .arg(QApplication::applicationVersion()));
}

void MainWindow::restoreSession()
{
    const QSettings settings;
    if (!restoreGeometry(settings.value(kGeometry).toByteArray()))
        resize(kFirstSize.boundedTo(screen()->availableSize()));
    m_tuning->restoreLayout(settings.value(kLayout).toByteArray());
    if (settings.contains(kGrip))
        m_tuning->bench().setGrip_mm(settings.value(kGrip).toDouble());
}

void MainWindow::storeSession()
{
    QSettings settings;
    settings.setValue(kGeometry, saveGeometry());
    settings.setValue(kLayout, m_tuning->saveLayout());
    settings.setValue(kGrip, m_tuning->bench().grip_mm());
}

void MainWindow::closeEvent(QCloseEvent* event)
{
    if (!maybeSave()) {
        event->ignore();
        return;
    }
    storeSession();
    event->accept();
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event)
{
    if (!draggedFile(*event->mimeData()).isEmpty())
        event->acceptProposedAction();
}

void MainWindow::dropEvent(QDropEvent* event)
{
    const QString path = draggedFile(*event->mimeData());
    event->acceptProposedAction();
    if (maybeSave())
        openFile(path);
}

}  // namespace stillbay::ui
