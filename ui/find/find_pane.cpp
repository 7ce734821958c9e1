// SPDX-License-Identifier: MIT
#include "ui/find/find_window.h"

#include "core/setup/tunes.h"
#include "ui/find/candidates_model.h"
#include "ui/find/candidates_table.h"
#include "ui/find/find_choices.h"
#include "ui/find/find_text.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/labels.h"

#include <QAction>
#include <QCloseEvent>
#include <QDateTime>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QProgressBar>
#include <QPushButton>
#include <QScreen>
#include <QSettings>
#include <QVBoxLayout>

namespace stillbay::ui {
namespace {

constexpr QSize kFirstSize(1160, 640);
constexpr int kProgressWidth = 160;
const QString kPlace = QStringLiteral("find/geometry");

// What to do stands out; what it brings follows on its line.
QString styled(QStringList lines)
{
    for (QString& line : lines)
        line = line.toHtmlEscaped();
    const QString first = QStringLiteral("<b>%1</b> ").arg(lines.takeFirst());
    return first + lines.join(QStringLiteral("<br>"));
}

}  // namespace

FindWindow::FindWindow(Document& document, const QList<QAction*>& shared, QWidget& window)
    : QWidget(&window, Qt::Window),
      m_document(document),
      m_choices(new FindChoices),
      m_progress(new QProgressBar),
      m_count(new QLabel),
      m_text(new QLabel),
      m_problem(new ProblemLabel),
      m_model(new CandidatesModel(this)),
      m_table(new CandidatesTable(*m_model)),
      m_done(new QuietLabel),
      m_job({.done = [this](const Result<Recommendation>& answer) { deliver(answer); },
             .advanced =
                 [this](int step, int steps) {
                     showProgress(step, steps);
                 }})
{
    setWindowTitle(tr("Find a tune — Stillbay"));
    addActions(shared);
    m_text->setWordWrap(true);
    m_text->setAccessibleName(tr("What to cut"));
    m_text->setTextInteractionFlags(Qt::TextSelectableByMouse);
    connect(m_choices, &FindChoices::refused, m_problem, &ProblemLabel::refuse);
    connect(m_choices, &FindChoices::changed, this, [this] { m_problem->format({}); });
    connect(m_table, &CandidatesTable::taken, this, &FindWindow::take);
    connect(m_table, &CandidatesTable::chosenChanged, this, &FindWindow::showState);
    auto* const layout = new QVBoxLayout(this);
    layout->addWidget(m_choices);
    layout->addWidget(makeRun());
    layout->addWidget(m_problem);
    layout->addWidget(m_text);
    layout->addWidget(m_table, 1);
    layout->addWidget(makeTaking());
    layout->addWidget(makeNotes());
    connect(&m_document, &Document::setupChanged, this, &FindWindow::setupChanged);
    if (!restoreGeometry(QSettings().value(kPlace).toByteArray()))
        resize(kFirstSize.boundedTo(screen()->availableSize()));
    craftOpened();
    m_find->setFocus();
}

// Also where the main window takes this one down with it, which sends no close event.
FindWindow::~FindWindow()
{
    rememberPlace();
}

void FindWindow::rememberPlace() const
{
    QSettings().setValue(kPlace, saveGeometry());
}

QPushButton* FindWindow::makeButton(const QString& text, const QString& meaning,
                                    void (FindWindow::*act)())
{
    auto* const button = new QPushButton(text);
    button->setToolTip(meaning);
    button->setAutoDefault(true);  // Enter presses the button that has the focus
    connect(button, &QPushButton::clicked, this, act);
    return button;
}

QWidget* FindWindow::makeRun()
{
    m_find = makeButton(tr("&Find the best"),
                        tr("Looks through the ranges for what wobbles least."), &FindWindow::find);
    QFont bold = font();
    bold.setBold(true);
    m_find->setFont(bold);
    m_stop = makeButton(tr("&Stop"), tr("Ends the search without an answer."), &FindWindow::stop);
    QPushButton* const look = makeButton(
        tr("How robust is the &present tune?"),
        tr("Shows how the present tune holds in builds that differ a little from the plan."),
        &FindWindow::lookAtPresent);
    m_progress->setAccessibleName(tr("Progress of the search"));
    m_progress->setTextVisible(false);
    m_progress->setFixedWidth(kProgressWidth);
    m_count->setAccessibleName(tr("How many were tried"));
    auto* const run = new QWidget;
    auto* const row = new QHBoxLayout(run);
    row->setContentsMargins(0, 0, 0, 0);
    for (QWidget* widget : {static_cast<QWidget*>(m_find), static_cast<QWidget*>(m_stop),
                            static_cast<QWidget*>(look), static_cast<QWidget*>(m_progress)})
        row->addWidget(widget);
    row->addWidget(m_count, 1);
    return run;
}

QWidget* FindWindow::makeTaking()
{
    m_take = makeButton(tr("&Take this tune"),
                        tr("Makes the chosen tune the present one; one step for undo (Enter)."),
                        &FindWindow::take);
    m_keep = makeButton(tr("&Keep this tune"),
                        tr("Puts the chosen tune among the kept ones; the craft stays as it is."),
                        &FindWindow::keep);
    auto* const close = new QPushButton(tr("&Close"));
    close->setToolTip(tr("Closes this window and stops a search."));
    close->setAutoDefault(true);
    connect(close, &QPushButton::clicked, this, &QWidget::close);
    m_done->setWordWrap(false);
    auto* const taking = new QWidget;
    auto* const row = new QHBoxLayout(taking);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(m_take);
    row->addWidget(m_keep);
    row->addWidget(m_done, 1);
    row->addWidget(close);
    return taking;
}

QWidget* FindWindow::makeNotes()
{
    return new QuietLabel(tolerancesText(Tolerances{}) + u' ' +
                          tr("All this is a prediction: check the finished tune on the bench, "
                             "propellers off, before you "
                             "fly it."));
}

void FindWindow::craftOpened()
{
    stop();
    m_answer.reset();
    m_model->clear();
    m_choices->openCraft(m_document.setup());
    m_problem->format({});
    setupChanged();
}

void FindWindow::setupChanged()
{
    const Setup& setup = m_document.setup();
    m_choices->follow(setup);
    m_model->setPresent(wholeDesignOf(setup));
    m_done->clear();
    if (isRunning() && !sameForSearch(setup, m_job.wanted()->setup)) {
        stop();
        m_problem->format(
            tr("Stopped: the craft has changed. Find again for the craft as it is now."));
    }
    showState();
}

bool FindWindow::isCurrent() const
{
    if (!m_answer)
        return false;
    const Setup& setup = m_document.setup();
    return m_model->has(wholeDesignOf(setup)) &&
           sameForSearch(withDesign(setup, wholeDesignOf(m_answer->setup)), m_answer->setup);
}

void FindWindow::find()
{
    const std::optional<SearchSpace> space = m_choices->space();
    if (!space)
        return;  // the reason is to be read first
    if (const QString fault = m_choices->faultOf(*space); !fault.isEmpty())
        m_problem->format(tr("Not started: %1.").arg(fault));
    else
        start(space);
}

void FindWindow::lookAtPresent()
{
    start({});
}

void FindWindow::start(const std::optional<SearchSpace>& space)
{
    m_job.drop();
    m_answer.reset();
    m_model->clear();
    m_done->clear();
    m_problem->format({});
    m_progress->setRange(0, 0);
    m_count->clear();
    RecommendQuestion question{m_document.setup(), space};
    m_job.want(question, [question](const Caller<Recommendation>& caller) {
        return recommend(question, {}, caller.stop, caller.progress);
    });
    showState();
}

void FindWindow::stop()
{
    m_job.drop();
    showState();
}

void FindWindow::showProgress(int step, int steps)
{
    m_progress->setRange(0, steps);
    m_progress->setValue(step);
    m_count->setText(tr("Designs and builds tried so far: %1").arg(QLocale().toString(step)));
}

void FindWindow::deliver(const Result<Recommendation>& answer)
{
    if (!answer) {
        m_problem->format(tr("Nothing found: %1.").arg(displayText(answer.error().what)));
        showState();
        return;
    }
    m_answer = *answer;
    m_model->setAnswer(*answer);
    m_count->setText(tr("Designs and builds tried: %1")
                         .arg(QLocale().toString(static_cast<qulonglong>(answer->evaluated))));
    m_table->selectRow(0);
    m_table->setFocus();
    showState();
}

void FindWindow::write(const QString& text, const std::function<void(Setup&)>& change,
                       const QString& done)
{
    if (m_problem->display(m_document.edit(text, {}, change)))
        m_done->setText(done);
}

void FindWindow::take()
{
    const int row = m_table->chosenRow();
    if (row < 0 || !isCurrent())
        return;
    write(
        tr("Take a tune that was found"),
        [design = m_model->candidate(row).design](Setup& setup) {
            setup = withDesign(std::move(setup), design);
        },
        tr("Taken; undo takes it back."));
}

void FindWindow::keep()
{
    const int row = m_table->chosenRow();
    if (row < 0 || !isCurrent())
        return;
    const Setup meant = withDesign(m_document.setup(), m_model->candidate(row).design);
    const std::string now = QDateTime::currentDateTimeUtc().toString(Qt::ISODate).toStdString();
    Tune tune = presentTune(meant, freeTuneName(meant), now);
    if (meant.bay != m_document.setup().bay)
        tune.design = m_model->candidate(row).design;
    write(
        tr("Keep a tune"), [&](Setup& setup) { setup.tunes.push_back(tune); },
        tr("Kept as “%1”.").arg(QString::fromStdString(tune.name)));
}

void FindWindow::showState()
{
    const bool running = isRunning();
    const bool current = isCurrent();
    m_find->setEnabled(!running);
    m_stop->setEnabled(running);
    m_progress->setVisible(running);
    if (!running && !m_answer)
        m_count->clear();
    m_model->setStale(m_answer && !current);
    if (m_answer) {
        QStringList lines = answerTexts(*m_answer);
        if (!current)
            lines.prepend(tr("The craft has changed since; this answer is for the craft before."));
        m_text->setText(styled(std::move(lines)));
    } else {
        m_text->setText(running
                            ? tr("Looking…")
                            : tr("Tick what may change, then find what makes the film wobble least "
                                 "and holds in builds that differ a little from the plan."));
    }
    m_take->setEnabled(current && m_table->chosenRow() >= 0);
    m_keep->setEnabled(current && m_table->chosenRow() >= 0);
}

// Another window may have filled the tube stock meanwhile.
void FindWindow::changeEvent(QEvent* event)
{
    if (event->type() == QEvent::ActivationChange && isActiveWindow())
        m_choices->readTubeStock();
    QWidget::changeEvent(event);
}

void FindWindow::closeEvent(QCloseEvent* event)
{
    stop();
    rememberPlace();
    event->accept();
}

void FindWindow::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Escape || event->matches(QKeySequence::Close))
        close();
    else
        QWidget::keyPressEvent(event);
}

}  // namespace stillbay::ui
