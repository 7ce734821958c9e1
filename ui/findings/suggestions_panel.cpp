// SPDX-License-Identifier: MIT
#include "ui/findings/suggestions_panel.h"

#include "core/assess/texts.h"
#include "core/base/check.h"
#include "ui/findings/step_text.h"
#include "ui/findings/suggestion_delegate.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/labels.h"
#include "ui/widgets/thin_progress.h"

#include <QEvent>
#include <QListWidget>
#include <QLocale>
#include <QVBoxLayout>

#include <algorithm>

namespace stillbay::ui {
namespace {

constexpr std::chrono::milliseconds kQuiet(400);  // after the last edit
constexpr int kProgressHeight = 3;
constexpr int kMostHeight_lines = 16;  // that the rows are sure of

QString toolTipOf(const Suggestion& suggestion)
{
    QStringList lines{displayText(suggestion.step.text)};
    for (const Warning& warning : suggestion.newWarnings)
        lines << displayText(warning.text);
    lines << QObject::tr("Click, or press Enter, to take this step; undo takes it back.");
    return lines.join(u'\n');
}

QListWidgetItem* rowOf(const Suggestion& suggestion, double before_px)
{
    const QString text = displayText(suggestion.step.text);
    const QString numbers = stepWobbleText(suggestion, before_px);
    const QString gain = stepGainText(suggestion, before_px);
    const QString danger = stepDangerText(suggestion);
    auto* const row = new QListWidgetItem(text);
    row->setData(NumbersRole, numbers);
    row->setData(GainRole, gain);
    row->setData(ShareRole, suggestion.after_px / before_px);
    row->setData(DangerRole, danger);
    row->setToolTip(toolTipOf(suggestion));
    row->setData(Qt::AccessibleTextRole, QStringList{text, gain, numbers, danger}.join(u", "));
    return row;
}

}  // namespace

SuggestionsPanel::SuggestionsPanel(Document& document, QWidget* parent)
    : QWidget(parent),
      m_document(document),
      m_progress(new ThinProgress(tr("Progress of trying the steps"), kProgressHeight, this)),
      m_list(new QListWidget(this)),
      m_painter(new SuggestionDelegate(m_list)),
      m_text(new QuietLabel({}, this)),
      m_job({.done = [this](const Result<Suggestions>& suggestions) { deliver(suggestions); },
             .advanced =
                 [this](int step, int steps) {
                     m_progress->advance(step, steps);
                 }},
            kQuiet)
{
    m_list->setAccessibleName(tr("Suggested steps"));
    m_list->setItemDelegate(m_painter);
    m_list->setFrameShape(QFrame::NoFrame);
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_list->setMouseTracking(true);
    m_list->viewport()->setCursor(Qt::PointingHandCursor);
    QPalette plain = m_list->palette();
    plain.setColor(QPalette::Base, Qt::transparent);
    m_list->setPalette(plain);
    const auto takeItem = [this](QListWidgetItem* item) {
        takeRow(m_list->row(item));
    };
    connect(m_list, &QListWidget::itemClicked, this, takeItem);
    connect(m_list, &QListWidget::itemActivated, this, takeItem);

    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(8, 6, 8, 4);
    layout->addWidget(m_progress);
    layout->addWidget(m_list);
    layout->addWidget(m_text);
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Maximum);

    connect(&m_document, &Document::setupChanged, this, &SuggestionsPanel::setupChanged);
    display(tr("Tried as soon as a craft is open."));
}

void SuggestionsPanel::setupChanged()
{
    m_progress->hide();
    setStale(true);
    m_next.reset();
    m_before_px.reset();
    m_job.want(m_document.setup(), [setup = m_document.setup()](const Caller<Suggestions>& caller) {
        return findSuggestions(setup, {}, caller.stop, caller.progress);
    });
    emit nextChanged();
}

// Not by disabling the list, which would take the keyboard away from it.
void SuggestionsPanel::setStale(bool stale)
{
    if (stale == m_painter->isStale())
        return;
    m_painter->setStale(stale);
    m_list->viewport()->update();
}

void SuggestionsPanel::deliver(const Result<Suggestions>& suggestions)
{
    m_progress->hide();
    m_steps.clear();
    setStale(false);
    m_next = suggestions ? suggestions->next() : std::nullopt;
    m_before_px = suggestions ? suggestions->before_px : std::nullopt;
    if (suggestions)
        showSteps(*suggestions);
    else
        display(suggestions.error().code == Errc::Internal
                    ? displayText(suggestions.error().what)
                    : tr("The craft has no answer, so there is nothing to compare a step with."));
    emit nextChanged();
}

void SuggestionsPanel::showSteps(const Suggestions& suggestions)
{
    m_steps = suggestions.best(kShownSuggestions);
    if (m_steps.empty()) {
        display(suggestions.before_px ? tr("No single practical step lowers the wobble in cruise.")
                                      : displayText(outsideCruiseText()) + u'.');
        return;
    }
    const int row = m_list->currentRow();
    m_list->clear();
    for (const Suggestion& suggestion : m_steps)
        m_list->addItem(rowOf(suggestion, *suggestions.before_px));
    m_list->setCurrentRow(std::min(row, m_list->count() - 1), QItemSelectionModel::NoUpdate);
    m_list->show();
    m_text->hide();
    fitHeight();
}

void SuggestionsPanel::display(const QString& text)
{
    m_list->clear();
    m_list->hide();
    m_text->setText(text);
    m_text->show();
}

void SuggestionsPanel::takeRow(int row)
{
    if (isCurrent())  // else the craft has moved on since these steps were tried
        take(m_steps.at(static_cast<std::size_t>(row)).step);
}

void SuggestionsPanel::takeNext()
{
    if (m_next)
        take(PracticalStep(m_next->step));  // a copy: taking it drops what is next
}

void SuggestionsPanel::take(const PracticalStep& step)
{
    const Result<void> taken = m_document.edit(tr("take the step “%1”").arg(displayText(step.text)),
                                               {}, [&step](Setup& setup) { setup = step.setup; });
    check(taken.has_value(), "a practical step that the setup's rules refuse");
}

// No higher than its rows: what stands below has the rest of the height.
void SuggestionsPanel::fitHeight()
{
    int height = 2 * m_list->frameWidth();
    for (int row = 0; row < m_list->count(); ++row)
        height += m_list->sizeHintForRow(row);
    m_list->setMinimumHeight(std::min(height, kMostHeight_lines * fontMetrics().lineSpacing()));
    m_list->setMaximumHeight(height);
}

void SuggestionsPanel::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange && m_list->count() > 0)
        fitHeight();
}

}  // namespace stillbay::ui
