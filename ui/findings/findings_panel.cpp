// SPDX-License-Identifier: MIT
#include "ui/findings/findings_panel.h"

#include "core/assess/texts.h"
#include "ui/findings/cruise_window_text.h"
#include "ui/findings/html.h"
#include "ui/findings/word_page.h"

#include <QApplication>
#include <QLocale>
#include <QUrl>
#include <QVBoxLayout>

#include <cmath>

namespace stillbay::ui {
namespace {

const QString kFlight = QStringLiteral("flight"), kBench = QStringLiteral("bench");  // of links

// Each mode is a link that shows it swinging in the bay view.
QString modesTable(const std::array<ModeFigures, 6>& modes, const QString& kind)
{
    const QLocale locale;
    int number = 0;
    QString html = QStringLiteral("<table cellspacing='0' cellpadding='1'>");
    for (const ModeFigures& mode : modes)
        html += QStringLiteral(
                    "<tr><td align='right' style='padding-right:8px'>%1&nbsp;Hz</td>"
                    "<td><a href='%3:%4' style='color:%5'>%2</a></td></tr>")
                    .arg(locale.toString(mode.frequency_hz, 'f', 1), escaped(mode.text), kind)
                    .arg(number++)
                    .arg(QApplication::palette().color(QPalette::Text).name());
    return html + QStringLiteral("</table>");
}

QString cell(const QString& text, bool heavy = false)
{
    return QStringLiteral("<td align='right' style='padding-left:6px'>%1</td>")
        .arg(heavy ? QStringLiteral("<b>%1</b>").arg(text) : text);
}

// The shares of the motions in each bench mode's energy, the largest of a mode in bold.
QString energyTable(const std::array<ModeFigures, 6>& modes)
{
    const QLocale locale;
    const QStringList motions{
        QObject::tr("surge", "narrow column"), QObject::tr("sway", "narrow column"),
        QObject::tr("heave", "narrow column"), QObject::tr("roll", "narrow column"),
        QObject::tr("pitch", "narrow column"), QObject::tr("yaw", "narrow column")};
    QString html =
        QStringLiteral("<table cellspacing='0' cellpadding='1'><tr>") + cell(QStringLiteral("Hz"));
    for (const QString& motion : motions)
        html += cell(motion);
    for (const ModeFigures& mode : modes) {
        html += QStringLiteral("</tr><tr>") + cell(locale.toString(mode.frequency_hz, 'f', 1));
        Eigen::Index largest = 0;
        mode.energy.maxCoeff(&largest);
        for (Eigen::Index motion = 0; motion < 6; ++motion)
            html +=
                cell(locale.toString(std::lround(100.0 * mode.energy[motion])), motion == largest);
    }
    return html + QStringLiteral("</tr></table>");
}

// Where the tubes hold the bay, and what that makes of its modes.
QString turningPart(const Assessment& assessment)
{
    QString html = headingHtml(QObject::tr("Why the bay turns"));
    for (const Phrase& sentence : turningTexts(assessment.elastic_centre))
        html += paragraphHtml(escaped(sentence));
    html += paragraphHtml(escaped(decouplingText(assessment.bench_decoupling)));
    html += paragraphHtml(QObject::tr("Energy of the bench modes by motion, %:"));
    return html + energyTable(assessment.bench);
}

QString stateWord(TubeState state)
{
    switch (state) {
        case TubeState::Slack:
            return QObject::tr("slack");
        case TubeState::Buckled:
            return QObject::tr("buckled");
        case TubeState::Taut:
            break;
    }
    return QObject::tr("taut");
}

QString tubesTable(const std::vector<TubeAtRest>& tubes)
{
    const QLocale locale;
    QString html = QStringLiteral("<table cellspacing='0' cellpadding='1'>");
    for (std::size_t k = 0; k < tubes.size(); ++k)
        html += QObject::tr(
                    "<tr><td>Tube %1&nbsp;&nbsp;</td><td align='right'>%2&nbsp;N&nbsp;&nbsp;"
                    "</td><td align='right'>stretch %3&nbsp;%&nbsp;&nbsp;</td>"
                    "<td>%4</td></tr>")
                    .arg(k + 1)
                    .arg(locale.toString(tubes[k].tension, 'f', 1),
                         locale.toString(100.0 * (tubes[k].stretch - 1.0), 'f', 0),
                         stateWord(tubes[k].state));
    return html + QStringLiteral("</table>");
}

QString pageOf(const Setup& setup, const Assessment& assessment)
{
    QString html;
    for (const Phrase& sentence : findings(setup, assessment))
        html += paragraphHtml(escaped(sentence));
    html += paragraphHtml(cruiseWindowText(setup));
    html += headingHtml(QObject::tr("Modes in flight")) + modesTable(assessment.flight, kFlight);
    html += headingHtml(QObject::tr("Modes on the bench, airframe held")) +
            modesTable(assessment.bench, kBench);
    html += turningPart(assessment);
    html += headingHtml(QObject::tr("At rest")) + paragraphHtml(escaped(restText(assessment.rest)));
    html += tubesTable(assessment.rest.tubes);
    return html;
}

}  // namespace

FindingsPanel::FindingsPanel(QWidget* parent)
    : QWidget(parent), m_page(new WordPage(tr("Findings"), this))
{
    connect(m_page, &QTextBrowser::anchorClicked, this, [this](const QUrl& link) {
        if (link.scheme() == kFlight || link.scheme() == kBench)
            emit modeWanted(link.scheme() == kFlight, link.path().toInt());
        else
            emit fieldWanted(link.toString(QUrl::FullyDecoded));
    });
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(8, 4, 8, 4);
    layout->addWidget(m_page);
}

void FindingsPanel::setAssessment(const Setup& setup, const Assessment& assessment)
{
    m_page->say([setup, assessment] { return pageOf(setup, assessment); });
}

void FindingsPanel::setFailure(const Error& error)
{
    const QString where = escaped(error.where);
    QString html = error.where.empty()
                       ? paragraphHtml(escaped(error.what) + u'.')
                       : paragraphHtml(QStringLiteral("%1. <a href='%2'>%3</a>")
                                           .arg(escaped(error.what), where,
                                                tr("Show the field").toHtmlEscaped()));
    html += paragraphHtml(tr("Undo the last step, or change the tubes, mounts or bay."));
    m_page->say([html] { return html; });
}

void FindingsPanel::setStale(bool stale)
{
    m_page->setEnabled(!stale);
}

void FindingsPanel::goToTop()
{
    m_page->goToTop();
}

bool FindingsPanel::isCurrent() const
{
    return m_page->isCurrent();
}

QString FindingsPanel::text() const
{
    return m_page->toPlainText();
}

}  // namespace stillbay::ui
