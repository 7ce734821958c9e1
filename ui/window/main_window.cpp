// SPDX-License-Identifier: MIT
#include "ui/window/main_window.h"

#include "ui/bay/bay_view.h"
#include "ui/bench/tube_bench.h"
#include "ui/charts/throttle_chart.h"
#include "ui/compare/compare_view.h"
#include "ui/craft/craft_form.h"
#include "ui/find/find_pane.h"
#include "ui/findings/findings_panel.h"
#include "ui/findings/verdict_strip.h"
#include "ui/help/help_pages.h"
#include "ui/help/help_window.h"
#include "ui/map/map_chart.h"
#include "ui/map/map_view.h"
#include "ui/recordings/recordings_view.h"
#include "ui/speeds/speeds_view.h"
#include "ui/tunes/tunes_panel.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/field_row.h"
#include "ui/widgets/holder.h"
#include "ui/widgets/message_bar.h"
#include "ui/widgets/result_view.h"
#include "ui/window/file_actions.h"
#include "ui/window/file_drop.h"
#include "ui/window/file_guard.h"
#include "ui/window/icons.h"
#include "ui/window/map_page.h"
#include "ui/window/new_craft_desk.h"
#include "ui/window/recovery.h"
#include "ui/window/session.h"
#include "ui/window/sheet_desk.h"
#include "ui/window/tuning_view.h"
#include "ui/window/welcome_page.h"

#include <QApplication>
#include <QCloseEvent>
#include <QDir>
#include <QLabel>
#include <QMenuBar>
#include <QMessageBox>
#include <QSessionManager>
#include <QSettings>
#include <QSplitter>
#include <QStackedWidget>
#include <QStatusBar>
#include <QTabWidget>
#include <QToolBar>
#include <QToolButton>
#include <QVBoxLayout>

namespace stillbay::ui {
namespace {

constexpr int kLate_ms = 150;  // without an answer; sooner, fading would only flicker
const QString kGrip = QStringLiteral("bench/grip-mm");  // key of the settings

}  // namespace

MainWindow::MainWindow(QWidget* parent)
    : QMainWindow(parent),
      m_recompute(m_document),
      m_messages(new MessageBar(tr("Notice"))),
      m_files(new FileActions(m_document, *m_messages, *this)),
      m_new(new NewCraftDesk(*m_files, *this)),
      m_autosave(m_document),
      m_pages(new QStackedWidget),
      m_tabs(new QTabWidget),
      m_map(new MapPage(m_document)),
      m_compare(new CompareView(m_document, m_cursor)),
      m_recordings(new RecordingsView(m_document)),
      m_tuning(new TuningView(m_document, m_cursor)),
      m_verdict(new VerdictStrip(m_tuning->suggestions(), m_tuning->measureFirst())),
      m_tunes(new TunesPanel(m_document)),
      m_state(new QLabel)
{
    makeActions();
    makePages();
    makeStatus();
    auto* const drop = new FileDrop(*this);
    connect(drop, &FileDrop::dropped, m_files, &FileActions::openAfterAsking);
    connect(&m_document, &Document::opened, drop, [drop] { drop->takeRecordings(); });
    connect(drop, &FileDrop::recordingsDropped, this, [this](const QStringList& paths) {
        m_tabs->setCurrentWidget(m_recordings);
        m_recordings->addFiles(paths);
    });
    connect(m_recordings, &RecordingsView::marksChanged, &m_tuning->acrossThrottle(),
            &ThrottleChart::setFilmed);
    connect(m_files, &FileActions::opened, this, &MainWindow::showCraft);
    connect(m_files, &FileActions::saved, this, [this](const QString& path) {
        statusBar()->showMessage(tr("Saved %1").arg(QDir::toNativeSeparators(path)), 4000);
    });
    m_lateness.setSingleShot(true);
    m_lateness.setInterval(kLate_ms);
    connect(&m_lateness, &QTimer::timeout, this, [this] {
        for (ResultView* view : m_views)
            view->setStale(true);
    });
    connect(&m_document, &Document::setupChanged, this, &MainWindow::setupChanged);
    connect(&m_document, &Document::fileChanged, this, &MainWindow::showTitle);
    connect(&m_document.undoStack(), &QUndoStack::cleanChanged, this,
            [this](bool clean) { setWindowModified(!clean); });
    connect(&m_recompute, &Recompute::finished, this, &MainWindow::resultArrived);
    connect(
        qApp, &QGuiApplication::commitDataRequest, this,
        [this](QSessionManager& manager) {
            if (!prepareToEnd(manager.allowsInteraction()))
                manager.cancel();
            manager.release();
        },
        Qt::DirectConnection);
    showTitle();
    m_session = std::make_unique<Session>(*this);
    restoreSession();
}

// While the document is still there: pages that are hidden look at it.
MainWindow::~MainWindow()
{
    hide();
}

void MainWindow::makeActions()
{
    m_undo = m_document.undoStack().createUndoAction(this, tr("Undo"));
    m_undo->setShortcuts(QKeySequence::Undo);
    m_redo = m_document.undoStack().createRedoAction(this, tr("Redo"));
    m_redo->setShortcuts(QKeySequence::Redo);

    m_sheet = new SheetDesk(
        m_document, [this] { return m_tuning->bench().grip_mm(); }, *this);
    connect(m_sheet->action(), &QAction::triggered, m_files, &FileActions::commitTyping);
    connect(m_sheet->action(), &QAction::triggered, m_sheet, &SheetDesk::show);
    m_views.push_back(m_sheet);
    connect(m_map->findAction(), &QAction::triggered, m_files, &FileActions::commitTyping);
    connect(m_map->findAction(), &QAction::triggered, this, [this] {
        m_tabs->setCurrentWidget(m_map);
        m_map->openFind();
    });
    QMenu* const file = menuBar()->addMenu(tr("&File"));
    file->addAction(m_new->action());
    m_files->fillMenu(*file);
    file->addSeparator();
    file->addAction(m_sheet->action());
    file->addSeparator();
    QAction* const quit = file->addAction(tr("&Quit"), this, &QWidget::close);
    quit->setShortcut(Qt::CTRL | Qt::Key_Q);  // not all desktops name one
    QMenu* const edit = menuBar()->addMenu(tr("&Edit"));
    edit->addActions({m_undo, m_redo});
    edit->addSeparator();
    edit->addActions({m_tunes->keepAction(), m_map->findAction()});
    makeViewMenu(*menuBar()->addMenu(tr("&View")));
    makeHelpMenu(*menuBar()->addMenu(tr("&Help")));

    QToolBar* const bar = addToolBar(tr("Main toolbar"));
    bar->setObjectName(QStringLiteral("mainToolbar"));
    bar->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
    bar->setMovable(false);
    bar->setContextMenuPolicy(Qt::PreventContextMenu);
    bar->addActions({m_new->action(), m_files->openAction(), m_files->saveAction()});
    bar->addSeparator();
    bar->addActions({m_undo, m_redo});
    bar->addSeparator();
    bar->addActions({m_tunes->keepAction(), m_map->findAction(), m_sheet->action()});
    for (QAction* step : {m_undo, m_redo})  // known by their arrows; the others need the width
        if (auto* const button = qobject_cast<QToolButton*>(bar->widgetForAction(step)))
            button->setToolButtonStyle(Qt::ToolButtonIconOnly);
    // The menu tells which step; on the toolbar that would make the buttons jump.
    m_undo->setIconText(tr("Undo"));
    m_redo->setIconText(tr("Redo"));
    drawIcons();
}

void MainWindow::makeViewMenu(QMenu& menu)
{
    QAction* const full = menu.addAction(tr("&Full screen"));
    full->setShortcut(Qt::Key_F11);
    full->setCheckable(true);
    connect(full, &QAction::triggered, this,
            [this] { setWindowState(windowState() ^ Qt::WindowFullScreen); });
    connect(&menu, &QMenu::aboutToShow, full, [this, full] { full->setChecked(isFullScreen()); });
    menu.addAction(tr("&Reset layout"), this, [this] { m_session->reset(); });
}

void MainWindow::makeHelpMenu(QMenu& menu)
{
    QAction* const pages = menu.addAction(tr("&Help pages"), this, &MainWindow::showHelp);
    pages->setShortcut(QKeySequence::HelpContents);
    menu.addAction(tr("&Keyboard shortcuts"), this, [this] { help().showPage(kShortcutsUrl); });
    menu.addSeparator();
    menu.addAction(tr("&About Stillbay"), this, &MainWindow::about);
}

HelpWindow& MainWindow::help()
{
    if (!m_help)
        m_help = new HelpWindow(*this);
    return *m_help;
}

// In a field of the craft, what the pages say of that field; in the search and beside a recording,
// what they say of it.
void MainWindow::showHelp()
{
    if (m_map->find().isAncestorOf(focusWidget())) {
        help().showPage(kSearchUrl);
        return;
    }
    if (m_recordings->isAncestorOf(focusWidget())) {
        help().showPage(kRecordingsUrl);
        return;
    }
    for (const QWidget* widget = focusWidget(); widget; widget = widget->parentWidget())
        if (const auto* const row = qobject_cast<const FieldRow*>(widget)) {
            help().showField(row->spec().path);
            return;
        }
    help().showPage(kFirstPageUrl);
}

void MainWindow::makePages()
{
    auto* const welcome = new WelcomePage(m_files->recent());
    connect(welcome, &WelcomePage::newWanted, m_new->action(), &QAction::trigger);
    connect(welcome, &WelcomePage::openWanted, m_files, &FileActions::askAndOpen);
    connect(welcome, &WelcomePage::fileWanted, m_files, &FileActions::openAfterAsking);
    connect(welcome, &WelcomePage::sampleWanted, m_files, &FileActions::openSample);
    m_tabs->setObjectName(QStringLiteral("view.tabs"));
    m_tabs->setDocumentMode(true);
    m_tabs->setTabBarAutoHide(true);
    m_views.push_back(m_verdict);
    connect(m_verdict, &VerdictStrip::warningsWanted, this, [this] {
        m_tabs->setCurrentWidget(m_tuning);
        m_tuning->showWarnings();
    });
    connect(m_verdict, &VerdictStrip::tuneWanted, m_map->findAction(), &QAction::trigger);
    addView(m_tuning, tr("Tuning"));
    addTab(m_map, m_map->map().chart().name());
    connect(&m_map->map().chart(), &Chart::named, this,
            [this](const QString& name) { m_tabs->setTabText(m_tabs->indexOf(m_map), name); });
    addView(new SpeedsView(m_cursor), tr("Campbell diagram"));
    addView(m_compare, tr("Compare"));
    addView(m_recordings, tr("Recordings"));
    makeBayPage();
    m_pages->addWidget(welcome);
    auto* const craft = new QWidget;
    auto* const craftLayout = new QVBoxLayout(craft);
    craftLayout->setContentsMargins(0, 0, 0, 0);
    craftLayout->setSpacing(0);
    craftLayout->addWidget(m_verdict);
    craftLayout->addWidget(m_tabs, 1);
    craftLayout->addWidget(m_tunes);
    m_pages->addWidget(craft);
    connect(m_tunes, &TunesPanel::figuresChanged, m_compare,
            [this] { m_compare->setTunes(m_tunes->figures(), m_tunes->isLate()); });

    auto* const centre = new QWidget;
    auto* const layout = new QVBoxLayout(centre);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    auto* const unsaved = new MessageBar(tr("Unsaved work"));
    auto* const onDisk = new MessageBar(tr("File on disk"));
    auto* const safety = new MessageBar(tr("Safety against a crash"));
    // One a source, so that none wipes what another has said.
    for (MessageBar* bar : {unsaved, onDisk, m_messages, safety, m_sheet->messages()})
        layout->addWidget(bar);
    new FileGuard(m_document, *m_files, *onDisk);
    new Recovery(*m_files, m_autosave, *unsaved);
    connect(&m_autosave, &Autosave::failed, safety, [safety](const Phrase& why) {
        safety->display(MessageBar::Kind::Problem,
                        tr("Unsaved work cannot be kept safe against a crash"),
                        tr("%1. Save the craft often.").arg(displayText(why)));
    });
    connect(&m_autosave, &Autosave::worksAgain, safety, &QWidget::hide);
    layout->addWidget(m_pages, 1);
    setCentralWidget(centre);
}

// The craft's form stands beside the bay too: what the field at hand belongs to is seen there.
void MainWindow::makeBayPage()
{
    auto* const bay = new BayView;
    auto* const craft = new Holder;
    auto* const page = new QSplitter;
    page->setObjectName(QStringLiteral("view.bayColumns"));
    page->setChildrenCollapsible(false);
    page->addWidget(craft);
    page->addWidget(bay);
    page->setStretchFactor(1, 1);
    page->setSizes({290, 990});
    m_tabs->addTab(page, tr("Bay"));
    m_views.push_back(bay);
    connect(&m_tuning->findingsPanel(), &FindingsPanel::modeWanted, bay,
            [this, bay, page](bool flight, int index) {
                bay->showMode(flight, index);
                m_tabs->setCurrentWidget(page);
            });
    connect(&m_tuning->form(), &CraftForm::fieldFocused, bay, &BayView::setFocusedField);
    connect(m_tabs, &QTabWidget::currentChanged, this, [this, craft, page] {
        if (m_tabs->currentWidget() == page) {
            craft->layout()->addWidget(&m_tuning->form());
            m_tuning->form().show();
        } else if (m_tabs->currentWidget() == m_tuning) {
            m_tuning->takeForm();
        }
    });
}

// A tab that shows the newest result.
template <class View>
void MainWindow::addView(View* view, const QString& title)
{
    addTab(view, title);
    m_views.push_back(view);
}

void MainWindow::addTab(QWidget* page, const QString& title)
{
    page->setObjectName(QString::fromLatin1(page->metaObject()->className()));
    m_tabs->addTab(page, title);
}

void MainWindow::makeStatus()
{
    m_state->setAccessibleName(tr("State of the numbers"));
    m_state->setContentsMargins(8, 0, 0, 0);
    statusBar()->addWidget(m_state);
    // Of one size for all it says: it changes with every move of a slider.
    QSize room;
    for (const QString& text : {tr("Computing…"), tr("Up to date"), tr("No answer for this craft"),
                                tr("No craft open")}) {
        m_state->setText(text);
        room = room.expandedTo(m_state->sizeHint());
    }
    m_state->setFixedSize(room);
}

void MainWindow::drawIcons()
{
    m_new->action()->setIcon(icon(Glyph::New, palette()));
    m_files->openAction()->setIcon(icon(Glyph::Open, palette()));
    m_files->saveAction()->setIcon(icon(Glyph::Save, palette()));
    m_undo->setIcon(icon(Glyph::Undo, palette()));
    m_redo->setIcon(icon(Glyph::Redo, palette()));
    m_tunes->keepAction()->setIcon(icon(Glyph::Keep, palette()));
    m_map->findAction()->setIcon(icon(Glyph::Find, palette()));
    m_sheet->action()->setIcon(icon(Glyph::Sheet, palette()));
}

void MainWindow::changeEvent(QEvent* event)
{
    if (event->type() == QEvent::PaletteChange && m_redo)
        drawIcons();
    QMainWindow::changeEvent(event);
}

QString MainWindow::message() const
{
    QStringList texts;
    for (const MessageBar* bar : findChildren<MessageBar*>())
        if (!bar->isHidden())
            texts << bar->text();
    return texts.join(u'\n');
}

bool MainWindow::openFile(const QString& path)
{
    return m_files->openFile(path);
}

bool MainWindow::saveFile(const QString& path)
{
    return m_files->saveFile(path);
}

void MainWindow::showCraft()
{
    m_freshCraft = true;
    m_map->craftOpened();
    m_pages->setCurrentWidget(m_tabs->parentWidget());
}

void MainWindow::showTitle()
{
    setWindowFilePath(m_document.path());
    setWindowTitle(m_document.hasCraft() ? tr("%1[*] — Stillbay").arg(m_document.fileName())
                                         : tr("Stillbay"));
    setWindowModified(m_document.isModified());
}

void MainWindow::setupChanged()
{
    m_state->setText(tr("Computing…"));
    if (!m_lateness.isActive())
        m_lateness.start();
}

void MainWindow::resultArrived(const Outcome& outcome)
{
    for (ResultView* view : m_views) {
        view->setResult(outcome.setup, outcome.assessment);
        view->setStale(false);
    }
    if (!m_recompute.isCurrent()) {
        m_lateness.start();  // anew: during a drag every answer is one step behind, and no more
        return;
    }
    m_lateness.stop();
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
    m_session->restore();
    const QSettings settings;
    if (settings.contains(kGrip))
        m_tuning->bench().setGrip_mm(settings.value(kGrip).toDouble());
}

void MainWindow::storeSession()
{
    m_session->store();
    QSettings().setValue(kGrip, m_tuning->bench().grip_mm());
}

void MainWindow::closeEvent(QCloseEvent* event)
{
    if (!m_files->maybeSave()) {
        event->ignore();
        return;
    }
    m_autosave.drop();
    storeSession();
    // With it the windows beside it: a search would go on while all this is taken down.
    for (QWidget* beside : findChildren<QWidget*>(Qt::FindDirectChildrenOnly))
        if (beside->isWindow())
            beside->close();
    event->accept();
}

bool MainWindow::prepareToEnd(bool mayAsk)
{
    storeSession();
    if (!mayAsk) {
        m_files->commitTyping();
        m_autosave.writeNow();
        return true;
    }
    if (!m_files->maybeSave())
        return false;
    m_autosave.drop();
    return true;
}

}  // namespace stillbay::ui
