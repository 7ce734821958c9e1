// SPDX-License-Identifier: MIT
#include "ui/newcraft/new_craft_guide.h"

#include "core/assess/assess.h"
#include "ui/newcraft/guide_verdict.h"
#include "ui/newcraft/question.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/labels.h"
#include "ui/widgets/result_view.h"

#include <QApplication>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QScreen>
#include <QStackedWidget>
#include <QVBoxLayout>

#include <utility>

namespace stillbay::ui {
namespace {

constexpr int kLate_ms = 150;  // without an answer; sooner, fading would only flicker
constexpr QSize kSize(1060, 660);
constexpr double kShareOfScreen = 0.92;

}  // namespace

NewCraftGuide::NewCraftGuide(QWidget* picture, ResultView& view, QWidget* parent)
    : QDialog(parent),
      m_content(guidePages(m_answers, this)),
      m_view(view),
      m_pages(new QStackedWidget(this)),
      m_verdict(new GuideVerdict(this)),
      m_problem(new ProblemLabel(this)),
      m_count(new QLabel(this)),
      m_back(new QPushButton(tr("Bac&k"), this)),
      m_next(new QPushButton(tr("&Next"), this)),
      m_create(new QPushButton(tr("&Create"), this)),
      m_assessment(
          {[this](const Result<Assessment>& assessment) { showAnswer(assessment); }, {}, {}})
{
    setWindowTitle(tr("New craft"));
    for (std::size_t index = 0; index < m_content.size(); ++index)
        m_pages->addWidget(makePage(index));
    m_lateness.setSingleShot(true);
    m_lateness.setInterval(kLate_ms);
    connect(&m_lateness, &QTimer::timeout, this, [this] {
        m_view.setStale(true);
        m_verdict->setStale(true);
    });

    auto* const left = new QVBoxLayout;
    left->addWidget(m_pages, 1);
    left->addWidget(m_problem);
    auto* const top = new QHBoxLayout;
    top->setSpacing(16);
    top->addLayout(left, 2);
    top->addWidget(picture, 3);
    auto* const layout = new QVBoxLayout(this);
    layout->addLayout(top, 1);
    layout->addWidget(makeFoot());

    const QSize screen =
        (parent ? parent->screen() : QApplication::primaryScreen())->availableGeometry().size();
    resize(kSize.boundedTo(kShareOfScreen * screen));
    connect(qApp, &QApplication::focusChanged, this,
            [this](const QWidget*, const QWidget* to) { focusMoved(to); });
    makeCraft();
    showPage(0);
}

// The focus moves once more while the questions are taken down.
NewCraftGuide::~NewCraftGuide()
{
    disconnect(qApp, nullptr, this, nullptr);
}

QWidget* NewCraftGuide::makePage(std::size_t index)
{
    const GuidePage& content = m_content[index];
    auto* const page = new QWidget;
    auto* const title = new QLabel(
        tr("%1 of %2: %3").arg(index + 1).arg(m_content.size()).arg(content.title), page);
    QFont large = title->font();
    large.setPointSizeF(1.25 * large.pointSizeF());
    large.setBold(true);
    title->setFont(large);
    title->setWordWrap(true);
    auto* const purpose = new QLabel(content.purpose, page);
    purpose->setWordWrap(true);
    auto* const grid = new QGridLayout;
    grid->setColumnStretch(1, 1);
    grid->setVerticalSpacing(8);
    for (Question* question : content.questions) {
        question->addTo(*grid);
        connect(question, &Question::changed, this, [this] {
            m_hasRefused = false;
            makeCraft();
        });
        connect(question, &Question::refused, this, &NewCraftGuide::refuse);
    }
    auto* const layout = new QVBoxLayout(page);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(10);
    layout->addWidget(title);
    layout->addWidget(purpose);
    layout->addLayout(grid);
    if (index + 1 == m_content.size())
        layout->addWidget(m_verdict);
    layout->addStretch(1);
    return page;
}

QWidget* NewCraftGuide::makeFoot()
{
    auto* const foot = new QWidget(this);
    auto* const cancel = new QPushButton(tr("Cancel"), foot);
    cancel->setAutoDefault(false);
    connect(cancel, &QPushButton::clicked, this, &QDialog::reject);
    connect(m_back, &QPushButton::clicked, this, [this] { turn(-1); });
    connect(m_next, &QPushButton::clicked, this, [this] { turn(1); });
    connect(m_create, &QPushButton::clicked, this, &NewCraftGuide::create);
    auto* const layout = new QHBoxLayout(foot);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_count, 1);
    for (QPushButton* button : {m_back, m_next, m_create, cancel})
        layout->addWidget(button);
    return foot;
}

int NewCraftGuide::page() const
{
    return m_pages->currentIndex();
}

int NewCraftGuide::answersGiven() const
{
    int given = 0;
    for (const GuidePage& page : m_content)
        for (const Question* question : page.questions)
            given += question->isAnswered() ? 1 : 0;
    return given;
}

void NewCraftGuide::showPage(int page)
{
    const bool isLast = page + 1 == m_pages->count();
    m_pages->setCurrentIndex(page);
    m_problem->format({});
    m_back->setEnabled(page > 0);
    m_next->setHidden(isLast);
    m_create->setVisible(isLast);
    // Enter belongs to going on, wherever one types.
    m_back->setAutoDefault(false);
    (isLast ? m_create : m_next)->setDefault(true);
    m_content[static_cast<std::size_t>(page)].questions.front()->focus();
    if (!m_setup)
        makeCraft();  // says again why there is none
}

void NewCraftGuide::turn(int pages)
{
    if (takeTyped())
        showPage(page() + pages);
}

// False: something was refused, and the reason is to be read first.
bool NewCraftGuide::takeTyped()
{
    for (Question* question : m_content[static_cast<std::size_t>(page())].questions)
        question->commit();
    return !std::exchange(m_hasRefused, false);
}

void NewCraftGuide::makeCraft()
{
    Result<Setup> made = newCraft(m_answers);
    m_create->setEnabled(made.has_value());
    const int given = answersGiven();
    int asked = 0;
    for (const GuidePage& page : m_content)
        asked += static_cast<int>(page.questions.size());
    m_count->setText(tr("%1 of %2 answers are yours, the rest is typical.").arg(given).arg(asked));
    if (!made) {
        m_setup.reset();
        m_assessment.drop();
        m_lateness.start();
        m_problem->refuse(displayText(made.error().what));
        return;
    }
    m_problem->format({});
    m_setup = *std::move(made);
    m_setup->name = tr("New craft").toStdString();
    const CraftChoices choices = choicesOf(m_answers, *m_setup);
    for (const GuidePage& page : m_content)
        for (Question* question : page.questions)
            question->display(*m_setup, choices);
    m_lateness.start();
    m_assessment.want(*m_setup,
                      [setup = *m_setup](const Caller<Assessment>&) { return assess(setup); });
}

void NewCraftGuide::showAnswer(const Result<Assessment>& assessment)
{
    m_lateness.stop();
    m_view.setResult(*m_setup, assessment);
    m_view.setStale(false);
    m_verdict->display(*m_setup, assessment);
    m_verdict->setStale(false);
}

void NewCraftGuide::refuse(const QString& reason)
{
    m_hasRefused = true;
    m_problem->refuse(reason);
}

void NewCraftGuide::focusMoved(const QWidget* to)
{
    for (const GuidePage& page : m_content)
        for (const Question* question : page.questions)
            if (question->editor() == to)
                emit fieldFocused(question->field());
}

void NewCraftGuide::create()
{
    if (!takeTyped() || !m_setup)
        return;
    emit created(*m_setup);
    accept();
}

}  // namespace stillbay::ui
