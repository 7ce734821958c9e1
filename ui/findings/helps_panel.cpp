// SPDX-License-Identifier: MIT
#include "ui/findings/helps_panel.h"

#include "core/assess/words.h"
#include "core/base/check.h"
#include "ui/findings/help_delegate.h"
#include "ui/widgets/in_words.h"
#include "ui/widgets/labels.h"
#include "ui/widgets/section.h"

#include <QEvent>
#include <QListWidget>
#include <QLocale>
#include <QProgressBar>
#include <QVBoxLayout>

#include <algorithm>

namespace stillbay::ui {
namespace {

constexpr std::chrono::milliseconds kQuiet(400);  // after the last edit
constexpr int kProgressHeight = 3;

QString pixels(double wobble_px)
{
    return QLocale().toString(wobble_px, 'g', wobble_px < 1.0 ? 2 : 3);
}

QString gainOf(const Help& help, double before_px)
{
    return QObject::tr("−%1 %").arg(
        QLocale().toString(100.0 * (1.0 - help.after_px / before_px), 'f', 0));
}

QStringList dangersOf(const Help& help)
{
    QStringList dangers;
    for (const Warning& warning : help.newWarnings)
        if (const Phrase danger = dangerInWords(warning); !danger.pattern.empty())
            dangers << inWords(danger);
    return dangers;
}

QString toolTipOf(const Help& help)
{
    QStringList lines{inWords(help.step.words)};
    for (const Warning& warning : help.newWarnings)
        lines << inWords(warning.text);
    lines << QObject::tr("Click, or press Enter, to take this step; undo takes it back.");
    return lines.join(u'\n');
}

QListWidgetItem* rowOf(const Help& help, double before_px)
{
    const QString words = inWords(help.step.words);
    const QString numbers = QObject::tr("%1 → %2 px").arg(pixels(before_px), pixels(help.after_px));
    const QString gain = gainOf(help, before_px);
    const QStringList dangers = dangersOf(help);
    auto* const row = new QListWidgetItem(words);
    row->setData(NumbersRole, numbers);
    row->setData(GainRole, gain);
    row->setData(ShareRole, help.after_px / before_px);
    if (!dangers.isEmpty())
        row->setData(DangerRole, QObject::tr("but %1").arg(dangers.join(QObject::tr(", "))));
    row->setToolTip(toolTipOf(help));
    row->setData(Qt::AccessibleTextRole,
                 QStringList{words, gain, numbers, dangers.join(u", ")}.join(u", "));
    return row;
}

}  // namespace

HelpsPanel::HelpsPanel(Document& document, QWidget* parent)
    : QWidget(parent),
      m_document(document),
      m_section(new Section(tr("What helps most"), this)),
      m_progress(new QProgressBar(this)),
      m_list(new QListWidget(this)),
      m_painter(new HelpDelegate(m_list)),
      m_words(new QuietLabel({}, this)),
      m_job({.done = [this](const Result<Helps>& helps) { deliver(helps); },
             .advanced =
                 [this](int step, int steps) {
                     m_progress->setRange(0, steps);
                     m_progress->setValue(step);
                     m_progress->show();
                 }},
            kQuiet)
{
    m_progress->setAccessibleName(tr("Progress of trying the steps"));
    m_progress->setTextVisible(false);
    m_progress->setFixedHeight(kProgressHeight);
    QSizePolicy keepsPlace = m_progress->sizePolicy();
    keepsPlace.setRetainSizeWhenHidden(true);
    m_progress->setSizePolicy(keepsPlace);
    m_progress->hide();

    m_list->setAccessibleName(tr("Steps that help most"));
    m_list->setItemDelegate(m_painter);
    m_list->setFrameShape(QFrame::NoFrame);
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_list->setMouseTracking(true);
    m_list->viewport()->setCursor(Qt::PointingHandCursor);
    QPalette plain = m_list->palette();
    plain.setColor(QPalette::Base, Qt::transparent);
    m_list->setPalette(plain);
    const auto takeRow = [this](QListWidgetItem* item) {
        take(m_list->row(item));
    };
    connect(m_list, &QListWidget::itemClicked, this, takeRow);
    connect(m_list, &QListWidget::itemActivated, this, takeRow);

    m_section->add(m_progress);
    m_section->add(m_list);
    m_section->add(m_words);
    m_section->setOpen(true);
    m_section->rememberAs(QStringLiteral("helps"));
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_section);
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Maximum);

    connect(&m_document, &Document::setupChanged, this, &HelpsPanel::setupChanged);
    tell(tr("Tried as soon as a craft is open."));
}

void HelpsPanel::setupChanged()
{
    m_progress->hide();
    setStale(true);
    m_job.want(m_document.setup(), [setup = m_document.setup()](const Caller<Helps>& caller) {
        return whatHelps(setup, {}, caller.stop, caller.progress);
    });
}

// Not by disabling the list, which would take the keyboard away from it.
void HelpsPanel::setStale(bool stale)
{
    if (stale == m_painter->isStale())
        return;
    m_painter->setStale(stale);
    m_list->viewport()->update();
}

void HelpsPanel::deliver(const Result<Helps>& helps)
{
    m_progress->hide();
    m_steps.clear();
    setStale(false);
    if (helps)
        showSteps(*helps);
    else
        tell(helps.error().code == Errc::Internal
                 ? inWords(helps.error().what)
                 : tr("The craft has no answer, so there is nothing to compare a step with."));
}

void HelpsPanel::showSteps(const Helps& helps)
{
    m_steps = helps.best(kShownHelps);
    if (m_steps.empty()) {
        tell(helps.before_px ? tr("No single practical step lowers the wobble in cruise.")
                             : inWords(outsideCruiseInWords()) + u'.');
        return;
    }
    const int row = m_list->currentRow();
    m_list->clear();
    for (const Help& help : m_steps)
        m_list->addItem(rowOf(help, *helps.before_px));
    m_list->setCurrentRow(std::min(row, m_list->count() - 1), QItemSelectionModel::NoUpdate);
    m_list->show();
    m_words->hide();
    m_section->setSummary(tr("the best: %1").arg(gainOf(m_steps.front(), *helps.before_px)));
    fitHeight();
}

void HelpsPanel::tell(const QString& words)
{
    m_list->clear();
    m_list->hide();
    m_words->setText(words);
    m_words->show();
    m_section->setSummary({});
}

void HelpsPanel::take(int row)
{
    if (!isCurrent())
        return;  // the craft has moved on since these steps were tried
    const PracticalStep& step = m_steps.at(static_cast<std::size_t>(row)).step;
    const Result<void> taken = m_document.edit(tr("take the step “%1”").arg(inWords(step.words)),
                                               {}, [&step](Setup& setup) { setup = step.setup; });
    check(taken.has_value(), "a practical step that the setup's rules refuse");
}

void HelpsPanel::fitHeight()
{
    int height = 2 * m_list->frameWidth();
    for (int row = 0; row < m_list->count(); ++row)
        height += m_list->sizeHintForRow(row);
    // Where the column is short, the sentences above keep their room and the rows scroll.
    m_list->setMinimumHeight(std::min(height, 2 * m_list->sizeHintForRow(0) + 2));
    m_list->setMaximumHeight(height);
}

void HelpsPanel::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange)
        fitHeight();
}

}  // namespace stillbay::ui
