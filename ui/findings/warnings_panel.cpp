// SPDX-License-Identifier: MIT
#include "ui/findings/warnings_panel.h"

#include "core/assess/texts.h"
#include "ui/findings/html.h"
#include "ui/findings/word_page.h"

#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace stillbay::ui {
namespace {

bool isViolated(const Status& status, const Warning& warning)
{
    return std::any_of(status.violated.begin(), status.violated.end(),
                       [&](const Warning& violated) { return violated.code == warning.code; });
}

QString safetyHtml()
{
    QStringList items;
    for (const Phrase& warning : safetyWarnings())
        items << escaped(warning);
    return headingHtml(QObject::tr("Before bench work and flight")) + listHtml(items);
}

QString warningsHtml(const Status& status, const std::vector<Warning>& warnings)
{
    QStringList violated, others;
    for (const Warning& warning : warnings)
        (isViolated(status, warning) ? violated : others) << escaped(warning.text);
    QString html;
    if (!violated.isEmpty())
        html += headingHtml(status.flyable ? QObject::tr("Not about this flight")
                                           : QObject::tr("Do not fly")) +
                listHtml(violated);
    if (!others.isEmpty())
        html += headingHtml(QObject::tr("To watch out for")) + listHtml(others);
    if (html.isEmpty())
        html = paragraphHtml(QObject::tr("No warnings for this craft."));
    return html + safetyHtml();
}

}  // namespace

WarningsPanel::WarningsPanel(QWidget* parent)
    : QWidget(parent), m_page(new WordPage(tr("Warnings"), this))
{
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(8, 4, 8, 4);
    layout->addWidget(m_page);
}

void WarningsPanel::setAssessment(const Assessment& assessment)
{
    setCount(static_cast<int>(assessment.warnings.size()));
    m_page->say([status = assessment.status, warnings = assessment.warnings] {
        return warningsHtml(status, warnings);
    });
}

void WarningsPanel::clearAssessment()
{
    setCount(0);
    m_page->say([] { return safetyHtml(); });
}

void WarningsPanel::setCount(int count)
{
    if (std::exchange(m_count, count) != count)
        emit counted(count);
}

void WarningsPanel::setStale(bool stale)
{
    m_page->setEnabled(!stale);
}

void WarningsPanel::goToTop()
{
    m_page->goToTop();
}

bool WarningsPanel::isCurrent() const
{
    return m_page->isCurrent();
}

QString WarningsPanel::text() const
{
    return m_page->toPlainText();
}

}  // namespace stillbay::ui
