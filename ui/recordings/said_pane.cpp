// SPDX-License-Identifier: MIT
#include "ui/recordings/said_pane.h"

#include "core/calibrate/speed_at_throttle.h"
#include "ui/recordings/correction_pane.h"
#include "ui/recordings/match_pane.h"
#include "ui/recordings/recording_words.h"
#include "ui/recordings/speed_pane.h"
#include "ui/widgets/labels.h"

#include <QVBoxLayout>

#include <initializer_list>

namespace stillbay::ui {
namespace {

void showOffer(CorrectionPane& pane, const std::optional<Offer>& offer)
{
    pane.setVisible(offer.has_value());
    if (offer)
        pane.display(offer->sentence, offer->correction.mark, offer->correction, {});
    else
        pane.clear({});
}

}  // namespace

SaidPane::SaidPane(QWidget* parent)
    : QWidget(parent),
      m_working(new QuietLabel),
      m_correction(new CorrectionPane(tr("of the measurement"))),
      m_speedOffer(new CorrectionPane(tr("of the speeds"))),
      m_readoutOffer(new CorrectionPane(tr("of the readout"))),
      m_unbalanceOffer(new CorrectionPane(tr("of the unbalance"))),
      m_match(new MatchPane),
      m_speeds(new SpeedPane)
{
    m_correction->addBelow(m_match);
    m_correction->addBelow(m_speeds);
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    m_working->setContentsMargins(8, 8, 8, 0);
    layout->addWidget(m_working);
    for (CorrectionPane* const pane :
         {m_correction, m_speedOffer, m_readoutOffer, m_unbalanceOffer}) {
        layout->addWidget(pane);
        connect(pane, &CorrectionPane::acceptWanted, this, &SaidPane::acceptWanted);
    }
    layout->addStretch(1);
    setWorking({});
    showOffers();
    connect(m_match, &MatchPane::matchingWanted, this, &SaidPane::matchingWanted);
    connect(m_speeds, &SpeedPane::changed, this, &SaidPane::showFinding);
}

void SaidPane::display(const QString& sentence, const std::optional<QualityMark>& mark,
                       const std::optional<Correction>& correction, const QStringList& notes)
{
    m_finding = {};
    setWorking({});
    m_match->setMatches({}, {});
    m_speeds->setStretches({});
    showOffers();
    m_correction->display(sentence, mark, correction, notes);
}

void SaidPane::setFinding(const Finding& finding, const Setup& setup)
{
    m_finding = finding;
    m_finding.charts.clear();
    m_setup = setup;
    setWorking({});
    m_match->setMatches(finding.matches, finding.modes_hz);
    m_speeds->setStretches(finding.steady);
    showFinding();
}

void SaidPane::showOffers()
{
    showOffer(*m_speedOffer, m_finding.speeds);
    showOffer(*m_readoutOffer, m_finding.readout);
    showOffer(*m_unbalanceOffer, m_finding.unbalance);
}

// Of a sound with the throttles that were typed.
void SaidPane::showFinding()
{
    showOffers();
    const std::vector<SteadySpeed> readings = m_speeds->readings();
    if (readings.empty())
        return m_correction->display(m_finding.sentence, m_finding.mark, m_finding.correction,
                                     m_finding.notes);
    const Result<Correction> correction = speedAtThrottle(m_setup, readings);
    if (!correction)
        return m_correction->display(
            m_finding.sentence, m_finding.mark, {},
            m_finding.notes +
                QStringList(tr("It corrects nothing: %1.").arg(reasonText(correction.error()))));
    m_correction->display(m_finding.sentence, correction->mark, *correction, m_finding.notes);
}

// It stands for a sentence that there is not yet.
void SaidPane::setWorking(const QString& text)
{
    m_working->setText(text);
    m_working->setVisible(!text.isEmpty());
    m_correction->setVisible(text.isEmpty() || !m_finding.sentence.isEmpty());
}

void SaidPane::setStale(bool stale)
{
    for (CorrectionPane* const pane :
         {m_correction, m_speedOffer, m_readoutOffer, m_unbalanceOffer})
        pane->setStale(stale);
}

}  // namespace stillbay::ui
