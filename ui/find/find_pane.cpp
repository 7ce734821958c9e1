// SPDX-License-Identifier: MIT
#include "ui/find/find_pane.h"

#include "core/setup/tunes.h"
#include "ui/find/candidates_model.h"
#include "ui/find/candidates_table.h"
#include "ui/find/find_choices.h"
#include "ui/find/find_text.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/labels.h"
#include "ui/widgets/tall_scroll.h"

#include <QDateTime>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QScrollBar>
#include <QTimer>
#include <QToolButton>
#include <QVBoxLayout>

namespace stillbay::ui {
namespace {

constexpr int kAbove = 8;  // of an answer, when it is brought into sight

// What to do stands out; what it brings follows on its line.
QString styled(QStringList lines)
{
    for (QString& line : lines)
        line = line.toHtmlEscaped();
    const QString first = QStringLiteral("<b>%1</b> ").arg(lines.takeFirst());
    return first + lines.join(QStringLiteral("<br>"));
}

}  // namespace

FindPane::FindPane(Document& document, QWidget* parent)
    : QWidget(parent),
      m_document(document),
      m_choices(new FindChoices),
      m_progress(new QProgressBar),
      m_count(new QuietLabel),
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
    m_text->setWordWrap(true);
    m_text->setAccessibleName(tr("What to cut"));
    m_text->setTextInteractionFlags(Qt::TextSelectableByMouse);
    connect(m_choices, &FindChoices::refused, m_problem, &ProblemLabel::refuse);
    connect(m_choices, &FindChoices::changed, this, [this] { m_problem->format({}); });
    connect(m_table, &CandidatesTable::taken, this, &FindPane::take);
    connect(m_table, &CandidatesTable::chosenChanged, this, &FindPane::showState);
    auto* const content = new QWidget;
    auto* const column = new QVBoxLayout(content);
    column->setContentsMargins(8, 0, 4, 8);
    column->addWidget(m_choices);
    column->addWidget(makeRun());
    column->addWidget(m_problem);
    column->addWidget(m_text);
    column->addWidget(m_table);
    column->addWidget(makeTaking());
    column->addWidget(makeNotes());
    column->addStretch(1);
    m_scroll = new TallScroll(content);
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 6, 0, 0);
    layout->addWidget(makeHead());
    layout->addWidget(m_scroll, 1);
    connect(&m_document, &Document::setupChanged, this, &FindPane::setupChanged);
    setAccessibleName(tr("Find a tune"));
    if (m_document.hasCraft())
        craftOpened();
    else
        showState();
}

QWidget* FindPane::makeHead()
{
    auto* const head = new QWidget;
    auto* const row = new QHBoxLayout(head);
    row->setContentsMargins(8, 0, 8, 0);
    auto* const title = new QLabel(tr("Find a tune"));
    QFont bold = title->font();
    bold.setBold(true);
    title->setFont(bold);
    row->addWidget(title, 1);
    auto* const close = new QToolButton;
    close->setText(QStringLiteral("✕"));
    close->setAccessibleName(tr("Close the search for a tune"));
    close->setToolTip(tr("Closes the search, and stops it (Escape)."));
    close->setAutoRaise(true);
    close->setFocusPolicy(Qt::StrongFocus);
    connect(close, &QToolButton::clicked, this, &FindPane::closed);
    row->addWidget(close);
    return head;
}

void FindPane::open()
{
    show();
    m_find->setFocus();
}

QPushButton* FindPane::makeButton(const QString& text, const QString& meaning,
                                  void (FindPane::*act)())
{
    auto* const button = new QPushButton(text);
    button->setToolTip(meaning);
    button->setAutoDefault(true);  // Enter presses the button that has the focus
    connect(button, &QPushButton::clicked, this, act);
    return button;
}

QWidget* FindPane::makeRun()
{
    m_find = makeButton(tr("Find the best"), tr("Looks through the ranges for what wobbles least."),
                        &FindPane::find);
    QFont bold = font();
    bold.setBold(true);
    m_find->setFont(bold);
    m_stop = makeButton(tr("Stop"), tr("Ends the search without an answer."), &FindPane::stop);
    QPushButton* const look = makeButton(
        tr("How robust is the present tune?"),
        tr("Shows how the present tune holds in builds that differ a little from the plan."),
        &FindPane::lookAtPresent);
    m_progress->setAccessibleName(tr("Progress of the search"));
    m_progress->setTextVisible(false);
    m_progress->setMinimumWidth(40);
    m_count->setAccessibleName(tr("How many were tried"));
    auto* const run = new QWidget;
    auto* const grid = new QGridLayout(run);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->addWidget(m_find, 0, 0);
    grid->addWidget(m_stop, 0, 1);
    grid->addWidget(m_progress, 0, 2);
    grid->addWidget(look, 1, 0, 1, 3);
    grid->addWidget(m_count, 2, 0, 1, 3);
    grid->setColumnStretch(2, 1);
    return run;
}

QWidget* FindPane::makeTaking()
{
    m_take = makeButton(tr("Take this tune"),
                        tr("Makes the chosen tune the present one; one step for undo (Enter)."),
                        &FindPane::take);
    m_keep = makeButton(tr("Keep this tune"),
                        tr("Puts the chosen tune among the kept ones; the craft stays as it is."),
                        &FindPane::keep);
    auto* const taking = new QWidget;
    auto* const row = new QHBoxLayout;
    row->addWidget(m_take);
    row->addWidget(m_keep);
    row->addStretch(1);
    auto* const column = new QVBoxLayout;
    column->addLayout(row);
    column->addWidget(m_done);
    column->setContentsMargins(0, 0, 0, 0);
    taking->setLayout(column);
    return taking;
}

QWidget* FindPane::makeNotes()
{
    return new QuietLabel(tolerancesText(Tolerances{}) + u' ' +
                          tr("All this is a prediction: check the finished tune on the bench, "
                             "propellers off, before you "
                             "fly it."));
}

void FindPane::craftOpened()
{
    stop();
    m_answer.reset();
    m_model->clear();
    m_choices->openCraft(m_document.setup());
    m_problem->format({});
    setupChanged();
}

void FindPane::setupChanged()
{
    if (!m_document.hasCraft())
        return;
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

bool FindPane::isCurrent() const
{
    if (!m_answer)
        return false;
    const Setup& setup = m_document.setup();
    return m_model->has(wholeDesignOf(setup)) &&
           sameForSearch(withDesign(setup, wholeDesignOf(m_answer->setup)), m_answer->setup);
}

void FindPane::find()
{
    const std::optional<SearchSpace> space = m_choices->space();
    if (!space)
        return;  // the reason is to be read first
    if (const QString fault = m_choices->faultOf(*space); !fault.isEmpty())
        m_problem->format(tr("Not started: %1.").arg(fault));
    else
        start(space);
}

void FindPane::lookAtPresent()
{
    start({});
}

void FindPane::start(const std::optional<SearchSpace>& space)
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

void FindPane::stop()
{
    m_job.drop();
    showState();
}

void FindPane::showProgress(int step, int steps)
{
    m_progress->setRange(0, steps);
    m_progress->setValue(step);
    m_count->setText(tr("Designs and builds tried so far: %1").arg(QLocale().toString(step)));
}

void FindPane::deliver(const Result<Recommendation>& answer)
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
    showState();
    if (isVisible())  // who looks elsewhere meanwhile stays there
        m_table->setFocus();
    QTimer::singleShot(0, this, [this] {  // once it is laid out
        m_scroll->verticalScrollBar()->setValue(m_text->geometry().top() - kAbove);
    });
}

void FindPane::write(const QString& text, const std::function<void(Setup&)>& change,
                     const QString& done)
{
    if (m_problem->display(m_document.edit(text, {}, change)))
        m_done->setText(done);
}

void FindPane::take()
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

void FindPane::keep()
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

void FindPane::showState()
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
bool FindPane::event(QEvent* event)
{
    if (event->type() == QEvent::WindowActivate && m_document.hasCraft())
        m_choices->readTubeStock();
    return QWidget::event(event);
}

// Closed, or with the whole window, nobody waits for it; a look at another tab stops nothing.
void FindPane::hideEvent(QHideEvent* event)
{
    QWidget::hideEvent(event);
    if (isHidden() || window()->isHidden())
        stop();
}

void FindPane::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Escape)
        emit closed();
    else
        QWidget::keyPressEvent(event);
}

}  // namespace stillbay::ui
