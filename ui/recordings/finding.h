// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/base/result.h"
#include "core/calibrate/correction.h"
#include "core/recording/recording.h"
#include "core/recording/rotor_speed.h"
#include "core/setup/setup.h"
#include "ui/charts/measured_chart.h"

#include <QString>
#include <QStringList>

#include <cstddef>
#include <memory>
#include <optional>
#include <stop_token>
#include <vector>

/// From a recording and the craft to what the tab shows of it, a function for each kind but films
/// (film_finding.h). They run in the background.
namespace stillbay::ui {

struct FindingQuestion {
    Setup setup;
    std::shared_ptr<const Assessment> prediction;  ///< of the setup; null: there is none
    NamedRecording named;
    std::shared_ptr<const Recording> recording;  ///< the part that is used
    /// The craft's other recording of the same sweep, by a recorder of its own.
    std::optional<NamedRecording> partner = {};
    /// By hand, of a pluck: which of the bay's six each mode found is; empty: by the numbers.
    std::vector<std::optional<std::size_t>> matching = {};
};

/// A mode found in a pluck, and which of the bay's it is; none: no mode of the bay.
struct ModeMatch {
    double frequency_hz = 0.0;
    std::optional<std::size_t> mode;

    bool operator==(const ModeMatch&) const = default;
};

/// A correction of its own beside the recording's first.
struct Offer {
    QString sentence;
    Correction correction;
};

struct Finding {
    std::vector<MeasuredShown> charts;  ///< the first is shown first
    QString sentence;
    std::optional<QualityMark> mark;
    std::optional<Correction> correction;
    std::optional<Offer> speeds;     ///< of a sweep
    std::optional<Offer> unbalance;  ///< of a sweep, or of films
    std::optional<Offer> readout;    ///< of a film
    QStringList notes;
    std::vector<ModeMatch> matches;     ///< of a pluck
    std::vector<double> modes_hz;       ///< of the bay as it was plucked, that they can be
    std::vector<SteadyStretch> steady;  ///< of a sound
};

Result<Finding> findingOf(const FindingQuestion& question, const std::stop_token& stop);

Result<Finding> pluckFinding(const FindingQuestion& question, const std::stop_token& stop);
Result<Finding> tapFinding(const FindingQuestion& question, const std::stop_token& stop);
Result<Finding> sweepFinding(const FindingQuestion& question, const std::stop_token& stop);
Result<Finding> soundFinding(const FindingQuestion& question, const std::stop_token& stop);

/// The spectrum of its channels of one quantity, with the craft's excitation over the cruise
/// window.
Result<MeasuredShown> spectrumShown(const FindingQuestion& question, Quantity quantity);

/// The quantity that such a recording is about: acceleration before turn rate before sound.
Quantity mainQuantity(const Recording& recording);

std::vector<MeasuredShown::Band> excitationBands(const FindingQuestion& question);

/// How the rotors of this craft are listened for.
RotorSpeedOptions speedOptions(const FindingQuestion& question, bool isSound);

/// "5.8, 8.1 and 12.3"
QString frequencyList(const std::vector<double>& frequency_hz);

}  // namespace stillbay::ui
