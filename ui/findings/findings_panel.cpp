// SPDX-License-Identifier: MIT
#include "ui/findings/findings_panel.h"

#include "core/assess/texts.h"
#include "core/response/at_throttle.h"
#include "ui/widgets/display_text.h"

#include <QApplication>
#include <QLocale>
#include <QScrollBar>
#include <QTextBrowser>
#include <QUrl>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>
#include <utility>

namespace stillbay::ui {
namespace {

QString escaped(const std::string& text)
{
    return QString::fromStdString(text).toHtmlEscaped();
}

QString escaped(const Phrase& phrase)
{
    return displayText(phrase).toHtmlEscaped();
}

constexpr int kLinesInSight = 9;
const QString kFlight = QStringLiteral("flight"), kBench = QStringLiteral("bench");  // of links

QString heading(const QString& text)
{
    return QStringLiteral("<p style='margin-top:12px;margin-bottom:2px'><b>%1</b></p>").arg(text);
}

QString paragraph(const QString& text)
{
    return QStringLiteral("<p style='margin-top:2px;margin-bottom:5px'>%1</p>").arg(text);
}

QString list(const QStringList& items)
{
    QString html = QStringLiteral("<ul style='margin-left:14px;-qt-list-indent:0'>");
    for (const QString& item : items)
        html += QStringLiteral("<li style='margin-bottom:4px'>%1</li>").arg(item);
    return html + QStringLiteral("</ul>");
}

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
    QString html = heading(QObject::tr("Why the bay turns"));
    for (const Phrase& sentence : turningTexts(assessment.elastic_centre))
        html += paragraph(escaped(sentence));
    html += paragraph(escaped(decouplingText(assessment.bench_decoupling)));
    html += paragraph(QObject::tr("Energy of the bench modes by motion, %:"));
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

QString windowText(const Setup& setup)
{
    const QLocale locale;
    return QObject::tr("Cruise is %1 to %2 % throttle; faint from %3 px, bad from %4 px.")
        .arg(locale.toString(100.0 * setup.flight.cruise_throttle[0], 'g', 3),
             locale.toString(100.0 * setup.flight.cruise_throttle[1], 'g', 3),
             locale.toString(setup.limits.faint_px, 'g', 3),
             locale.toString(setup.limits.bad_px, 'g', 3));
}

// All that is said below the verdict.
QString pageOf(const Setup& setup, const Assessment& assessment)
{
    QString html;
    for (const Phrase& sentence : findings(setup, assessment))
        html += paragraph(escaped(sentence));
    if (!assessment.warnings.empty()) {
        QStringList warnings;
        for (const Warning& warning : assessment.warnings)
            warnings << escaped(warning.text);
        html += heading(QObject::tr("Warnings")) + list(warnings);
    }
    html += heading(QObject::tr("Modes in flight")) + modesTable(assessment.flight, kFlight);
    html += heading(QObject::tr("Modes on the bench, airframe held")) +
            modesTable(assessment.bench, kBench);
    html += turningPart(assessment);
    html += heading(QObject::tr("At rest")) + paragraph(escaped(restText(assessment.rest)));
    html += tubesTable(assessment.rest.tubes);
    QStringList warningsOf;
    for (const Phrase& warning : safetyWarnings())
        warningsOf << escaped(warning);
    html += heading(QObject::tr("Before bench work and flight")) + list(warningsOf);
    return html;
}

}  // namespace

FindingsPanel::FindingsPanel(QWidget* parent)
    : QWidget(parent),
      m_verdict(new Verdict(this)),
      m_text(new QTextBrowser(this)),
      m_answer(Paced::Pace::TenASecond, [this] { writeVerdict(); }),
      m_page(Paced::Pace::AtRest, [this] { writeText(); })
{
    m_text->setAccessibleName(tr("Findings"));
    m_text->setMinimumHeight(kLinesInSight * fontMetrics().lineSpacing());
    m_text->setFrameShape(QFrame::NoFrame);
    m_text->setAcceptDrops(false);
    m_text->setOpenLinks(false);
    connect(m_text, &QTextBrowser::anchorClicked, this, [this](const QUrl& link) {
        if (link.scheme() == kFlight || link.scheme() == kBench)
            emit modeWanted(link.scheme() == kFlight, link.path().toInt());
        else
            emit fieldWanted(link.toString(QUrl::FullyDecoded));
    });
    QPalette plain = m_text->palette();
    plain.setColor(QPalette::Base, Qt::transparent);
    m_text->setPalette(plain);
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(8, 8, 8, 4);
    layout->addWidget(m_verdict);
    layout->addWidget(m_text, 1);
}

void FindingsPanel::setAssessment(const Setup& setup, const Assessment& assessment)
{
    const QString window = windowText(setup);
    say({Verdict::kindOf(assessment.status), displayText(verdictText(assessment)),
         assessment.cruise ? displayText(packsText(*assessment.cruise)) : window, window,
         [setup, assessment] {
             return pageOf(setup, assessment);
         }});
}

void FindingsPanel::setFailure(const Error& error)
{
    const QString where = escaped(error.where);
    QString html =
        error.where.empty()
            ? paragraph(escaped(error.what) + u'.')
            : paragraph(QStringLiteral("<a href='%1'>%1</a>: %2.").arg(where, escaped(error.what)));
    html += paragraph(tr("Undo the last step, or change the tubes, mounts or bay."));
    say({Verdict::Kind::Failure,
         tr("No answer for this craft"),
         tr("The charts show the last craft that had one."),
         {},
         [html] {
             return html;
         }});
}

void FindingsPanel::say(Words words)
{
    m_newest = std::move(words);
    m_answer.ask();
    m_page.ask();
}

bool FindingsPanel::isCurrent() const
{
    return !m_answer.isDue() && !m_page.isDue();
}

void FindingsPanel::writeVerdict()
{
    m_verdict->display(m_newest.kind, m_newest.headline, m_newest.detail);
    m_verdict->setToolTip(m_newest.toolTip);
}

void FindingsPanel::writeText()
{
    QString html = m_newest.page();
    if (m_written == html)
        return;
    m_written = std::move(html);
    const int place = m_text->verticalScrollBar()->value();  // a drag must not scroll the reader
    m_text->setHtml(m_written);
    m_text->verticalScrollBar()->setValue(place);
}

void FindingsPanel::setStale(bool stale)
{
    m_verdict->setStale(stale);
    m_text->setEnabled(!stale);
}

void FindingsPanel::addBelow(QWidget* widget)
{
    layout()->addWidget(widget);
}

QString FindingsPanel::text() const
{
    return m_verdict->text() + u'\n' + m_text->toPlainText();
}

}  // namespace stillbay::ui
