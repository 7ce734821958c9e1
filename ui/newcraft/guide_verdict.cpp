// SPDX-License-Identifier: MIT
#include "ui/newcraft/guide_verdict.h"

#include "core/assess/constraints.h"
#include "core/assess/texts.h"
#include "core/newcraft/new_craft.h"
#include "core/response/level.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/labels.h"
#include "ui/widgets/verdict.h"

#include <QVBoxLayout>

#include <initializer_list>

namespace stillbay::ui {

GuideVerdict::GuideVerdict(QWidget* parent)
    : QWidget(parent),
      m_verdict(new Verdict(this)),
      m_hung(new QLabel(this)),
      m_cautions(new ProblemLabel(this)),
      m_warnings(new QuietLabel({}, this))
{
    m_hung->setWordWrap(true);
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_verdict);
    layout->addWidget(m_hung);
    layout->addWidget(m_cautions);
    layout->addWidget(m_warnings);
}

void GuideVerdict::display(const Setup& setup, const Result<Assessment>& assessment)
{
    QStringList cautions;
    if (const auto why = whyNotLevel(setup))
        cautions << displayText(*why);
    if (!assessment) {
        m_verdict->display(Verdict::Kind::Failure, tr("No answer for this craft"),
                           displayText(assessment.error().what));
        m_hung->hide();
        m_warnings->hide();
        m_cautions->format(cautions.join(u'\n'));
        return;
    }
    m_verdict->display(
        Verdict::kindOf(assessment->status), displayText(verdictText(*assessment)),
        displayText(assessment->cruise ? packsText(*assessment->cruise) : outsideCruiseText()));
    const bool level = restsAsDrawn(assessment->rest.shift, assessment->rest.rotation);
    m_hung->setVisible(level);
    m_hung->setText(tr("It hangs level: let go, the bay stays where it is drawn."));
    QStringList others;
    for (const Warning& warning : assessment->warnings) {
        const ConstraintRow* const row = rowOf(warning.code);
        (row && row->forbidsFlight ? cautions : others) << displayText(warning.text);
    }
    m_cautions->format(cautions.join(u'\n'));
    m_warnings->setHidden(others.isEmpty());
    if (!others.isEmpty())
        m_warnings->setText(
            others.size() == 1
                ? others.front()
                : tr("%1 (One of %2 warnings.)").arg(others.front()).arg(others.size()));
}

void GuideVerdict::setStale(bool stale)
{
    m_verdict->setStale(stale);
}

QString GuideVerdict::text() const
{
    QStringList lines{m_verdict->text()};
    if (!m_hung->isHidden())
        lines << m_hung->text();
    for (const QLabel* label : std::initializer_list<const QLabel*>{m_cautions, m_warnings})
        if (!label->isHidden())
            lines << label->text();
    return lines.join(u'\n');
}

}  // namespace stillbay::ui
