// SPDX-License-Identifier: MIT
#pragma once

#include "core/calibrate/correction.h"
#include "core/setup/setup.h"
#include "ui/recordings/finding.h"

#include <QWidget>

#include <optional>
#include <vector>

class QLabel;

namespace stillbay::ui {

class CorrectionPane;
class MatchPane;
class SpeedPane;

/// What a measurement says about the craft, and every correction that it offers: its own, of a
/// sweep those of the speeds and of the unbalance, of films those of the readout and of the
/// unbalance.
class SaidPane final : public QWidget {
    Q_OBJECT
public:
    explicit SaidPane(QWidget* parent = nullptr);

    /// Of what is no recording: hang test and flight notes.
    void display(const QString& sentence, const std::optional<QualityMark>& mark,
                 const std::optional<Correction>& correction, const QStringList& notes = {});
    void say(const QString& sentence) { display(sentence, {}, {}); }
    /// @param setup  what the throttles that are typed beside a sound correct
    void setFinding(const Finding& finding, const Setup& setup);
    void setStale(bool stale);  ///< a newer answer is on its way: nothing can be accepted
    /// How far that is, above what was said last; empty: nothing to say.
    void setWorking(const QString& text);
    CorrectionPane& correction() { return *m_correction; }
    CorrectionPane& speeds() { return *m_speedOffer; }
    CorrectionPane& unbalance() { return *m_unbalanceOffer; }
    CorrectionPane& readout() { return *m_readoutOffer; }

signals:
    void acceptWanted(const stillbay::Correction& correction);
    /// By hand: which mode of the bay each mode found is.
    void matchingWanted(const std::vector<std::optional<std::size_t>>& matching);

private:
    void showFinding();
    void showOffers();

    Finding m_finding;  // without its charts
    Setup m_setup;
    QLabel* m_working;
    CorrectionPane* m_correction;
    CorrectionPane* m_speedOffer;
    CorrectionPane* m_readoutOffer;
    CorrectionPane* m_unbalanceOffer;
    MatchPane* m_match;
    SpeedPane* m_speeds;
};

}  // namespace stillbay::ui
