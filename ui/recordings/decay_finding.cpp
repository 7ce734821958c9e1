// SPDX-License-Identifier: MIT
#include "core/calibrate/decay_curve.h"
#include "core/calibrate/pluck.h"
#include "core/calibrate/tap.h"
#include "core/recording/ring_down.h"
#include "ui/recordings/finding.h"
#include "ui/recordings/recording_words.h"
#include "ui/recordings/sensor_name.h"
#include "ui/recordings/spectrogram_finding.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/plain_number.h"

#include <QObject>

#include <algorithm>
#include <array>
#include <cmath>
#include <complex>
#include <optional>
#include <span>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr double kShownLossSpread = 0.01;  // less is below the last digit of two
constexpr double kFarthestMode = 0.4;      // of a predicted frequency, from it
constexpr double kLeastFrequencySpread = 0.001, kLeastLossSpread = 0.03;

std::vector<double> frequenciesOf(const RingDown& ringDown)
{
    std::vector<double> frequencies;
    for (const DecayingMode& mode : ringDown.modes)
        frequencies.push_back(mode.frequency_hz);
    return frequencies;
}

std::vector<MeasuredShown::Place> placesAt(const std::vector<double>& frequency_hz)
{
    std::vector<MeasuredShown::Place> places;
    for (const double frequency : frequency_hz)
        places.push_back({frequency, plainNumber(frequency, 3)});
    return places;
}

// The channel of those used that moves most in a stretch.
std::size_t loudestIn(const Recording& recording, const RingDown& ringDown, const Stretch& stretch)
{
    std::size_t loudest = ringDown.channels.front();
    double most = -1.0;
    for (const std::size_t channel : ringDown.channels) {
        const auto& values = recording.channels[channel].values;
        const auto [low, high] =
            std::minmax_element(values.begin() + static_cast<std::ptrdiff_t>(stretch.from),
                                values.begin() + static_cast<std::ptrdiff_t>(stretch.to));
        if (*high - *low > most) {
            most = *high - *low;
            loudest = channel;
        }
    }
    return loudest;
}

MeasuredShown decayShown(const Recording& recording, const RingDown& ringDown)
{
    MeasuredShown shown;
    shown.name = QObject::tr("Decay");
    if (ringDown.plucks.empty() || ringDown.channels.empty())
        return shown;
    const Stretch& stretch = ringDown.plucks.front();
    const Channel& channel = recording.channels[loudestIn(recording, ringDown, stretch)];
    const std::span<const double> samples =
        std::span(channel.values).subspan(stretch.from, stretch.samples());
    const std::vector<double> fit = decayCurve(samples, recording.rate, ringDown.modes);
    const QString name = QString::fromStdString(channel.name);
    MeasuredCurve measured{
        QObject::tr("%1, measured").arg(name), QStringLiteral("measured"), {}, {}};
    MeasuredCurve fitted{
        QObject::tr("the decaying modes together"), QStringLiteral("modes"), {}, {}, true};
    fitted.hue = 1;
    for (std::size_t k = 0; k < samples.size(); ++k) {
        const double time =
            recording.start + static_cast<double>(stretch.from + k) / recording.rate;
        measured.x.push_back(time);
        measured.y.push_back(samples[k]);
        fitted.x.push_back(time);
        fitted.y.push_back(fit[k]);
    }
    shown.across = {QObject::tr("Time (s)"), QStringLiteral("time_s")};
    shown.up = {quantityTitle(channel.quantity), QStringLiteral("value")};
    shown.curves = {std::move(measured), std::move(fitted)};
    shown.summary =
        QObject::tr("%1 after the first pluck, and the decaying modes through it.").arg(name);
    return shown;
}

struct Decays {
    Finding finding;
    RingDown ringDown;
};

Result<Finding> shownDecays(const FindingQuestion& question, const RingDown& ringDown)
{
    Result<MeasuredShown> spectrum = spectrumShown(question, mainQuantity(*question.recording));
    if (!spectrum)
        return tl::unexpected<Error>(spectrum.error());
    spectrum->bands.clear();  // the rotors stand still
    spectrum->measured = placesAt(frequenciesOf(ringDown));
    spectrum->measuredCaption = QObject::tr("rings at (Hz):");
    Finding finding;
    finding.charts = {*std::move(spectrum), decayShown(*question.recording, ringDown)};
    finding.mark = ringDown.mark;
    return finding;
}

Result<Decays> decaysOf(const FindingQuestion& question, const std::stop_token& stop)
{
    Result<RingDown> ringDown = stillbay::ringDown(*question.recording, {}, stop);
    if (!ringDown)
        return tl::unexpected<Error>(ringDown.error());
    Result<Finding> finding = shownDecays(question, *ringDown);
    if (!finding)
        return tl::unexpected<Error>(finding.error());
    return Decays{*std::move(finding), *std::move(ringDown)};
}

QString lossList(const RingDown& ringDown)
{
    QStringList losses;
    for (const DecayingMode& mode : ringDown.modes) {
        const QString frequency = plainNumber(mode.frequency_hz, 4);
        const QString loss = plainNumber(mode.lossFactor, 2);
        losses << (mode.lossSpread < kShownLossSpread
                       ? QObject::tr("%1 Hz: loss factor %2").arg(frequency, loss)
                       : QObject::tr("%1 Hz: loss factor %2 ± %3")
                             .arg(frequency, loss,
                                  plainNumber(mode.lossSpread * mode.lossFactor, 1)));
    }
    return losses.join(u'\n');
}

PluckOptions pluckOptions(const FindingQuestion& question)
{
    PluckOptions options;
    options.sensor.mass_g = question.named.sensor_mass_g.value_or(0.0);
    options.sensor.centre_mm = question.named.sensor_mm.value_or(question.setup.camera.centre_mm);
    options.sensor.axes = axesFromText(question.named.sensor_axes);
    options.matching = question.matching;
    return options;
}

bool isSensorSaid(const NamedRecording& named)
{
    return named.sensor_mm || named.sensor_mass_g || !named.sensor_axes.empty();
}

void addSpectrogram(Finding& finding, const FindingQuestion& question,
                    const std::vector<double>& predicted_hz, const std::stop_token& stop)
{
    if (auto shown = spectrogramShown(question, mainQuantity(*question.recording),
                                      modeLines(question, predicted_hz), stop))
        finding.charts.push_back(*std::move(shown));
}

// Through the model of the whole bay.
Result<Finding> fittedPluck(const FindingQuestion& question, const PluckAnswer& answer,
                            const std::stop_token& stop)
{
    RingDown ringDown;
    ringDown.channels = usualChannels(*question.recording);
    ringDown.modes = answer.measured;
    ringDown.plucks = answer.used;
    ringDown.mark = answer.correction.mark;
    Result<Finding> shown = shownDecays(question, ringDown);
    if (!shown)
        return shown;
    for (const DecayingMode& mode : answer.measured)
        shown->matches.push_back({mode.frequency_hz, {}});
    std::vector<double> before;
    for (std::size_t k = 0; k < answer.modes.size(); ++k) {
        before.push_back(answer.modes[k].before_hz);
        if (answer.modes[k].measured)
            shown->matches[*answer.modes[k].measured].mode = k;
    }
    shown->modes_hz = before;
    shown->charts.front().predicted = placesAt(before);
    shown->charts.front().predictedCaption = QObject::tr("predicted (Hz):");
    shown->sentence = QObject::tr("The bay rings at %1 Hz; predicted are %2 Hz.")
                          .arg(frequencyList(frequenciesOf(ringDown)), frequencyList(before));
    shown->notes << lossList(ringDown);
    for (const Phrase& pluck : answer.plucksToAdd)
        shown->notes << displayText(pluck);
    if (!question.named.sensor_axes.empty() && !axesFromText(question.named.sensor_axes))
        shown->notes << QObject::tr("The sensor's axes are not understood, and not used.");
    addSpectrogram(*shown, question, before, stop);
    shown->correction = answer.correction;
    if (!isSensorSaid(question.named)) {  // its mass and its lever move every mode
        shown->correction->mark = {
            Quality::Poor,
            phrase("where the sensor sat and what it weighs is not said: open How it is read")};
        shown->mark = shown->correction->mark;
    }
    return shown;
}

// The mode of one direction of the arm: the strongest near its prediction that moves that way most,
// where the channels' names say ways.
std::optional<TappedMode> tappedAlong(const Recording& recording, const RingDown& ringDown,
                                      double predicted_hz, bool isVertical)
{
    const DecayingMode* best = nullptr;
    for (const DecayingMode& mode : ringDown.modes) {
        if (std::abs(mode.frequency_hz / predicted_hz - 1.0) > kFarthestMode)
            continue;
        std::size_t most = 0;
        for (std::size_t k = 1; k < mode.shape.size(); ++k)
            if (std::abs(mode.shape[k]) > std::abs(mode.shape[most]))
                most = k;
        const std::optional<std::size_t> axis =
            sensorNameOf(recording.channels[ringDown.channels[most]].name).axis;
        if (axis && (*axis == 2) != isVertical)
            continue;
        if (!best || mode.share > best->share)
            best = &mode;
    }
    if (!best)
        return {};
    return TappedMode{best->frequency_hz, best->lossFactor,
                      std::max(best->frequencySpread, kLeastFrequencySpread),
                      std::max(best->lossSpread, kLeastLossSpread)};
}

void addTapCorrection(Finding& finding, const FindingQuestion& question, const RingDown& ringDown)
{
    if (!question.prediction)
        return;
    TappedArm tapped;
    tapped.arm = static_cast<std::size_t>(std::max(question.named.arm.value_or(1.0), 1.0)) - 1;
    tapped.vertical =
        tappedAlong(*question.recording, ringDown, question.prediction->arm_vertical_hz, true);
    tapped.horizontal =
        tappedAlong(*question.recording, ringDown, question.prediction->arm_horizontal_hz, false);
    Result<Correction> correction = tapTest(question.setup, std::span(&tapped, 1));
    if (!correction) {
        finding.notes
            << QObject::tr("It corrects nothing: %1.").arg(displayText(correction.error().what));
        return;
    }
    finding.mark = correction->mark;
    finding.correction = *std::move(correction);
}

}  // namespace

Result<Finding> pluckFinding(const FindingQuestion& question, const std::stop_token& stop)
{
    const Result<PluckAnswer> answer =
        pluckTest(question.setup, *question.recording, pluckOptions(question), stop);
    if (answer)
        return fittedPluck(question, *answer, stop);
    Result<Decays> decays = decaysOf(question, stop);
    if (!decays)
        return tl::unexpected<Error>(decays.error());
    Finding finding = std::move(decays->finding);
    finding.sentence =
        QObject::tr("The bay rings at %1 Hz.").arg(frequencyList(frequenciesOf(decays->ringDown)));
    finding.notes << QObject::tr("It corrects nothing: %1.").arg(displayText(answer.error().what))
                  << lossList(decays->ringDown);
    addSpectrogram(finding, question, {}, stop);
    return finding;
}

Result<Finding> tapFinding(const FindingQuestion& question, const std::stop_token& stop)
{
    Result<Decays> decays = decaysOf(question, stop);
    if (!decays)
        return tl::unexpected<Error>(decays.error());
    Finding finding = std::move(decays->finding);
    std::vector<double> predicted;
    if (question.prediction) {
        predicted = {question.prediction->arm_vertical_hz, question.prediction->arm_horizontal_hz};
        std::sort(predicted.begin(), predicted.end());
    }
    finding.charts.front().predicted = placesAt(predicted);
    finding.charts.front().predictedCaption =
        predicted.empty() ? QString() : QObject::tr("predicted (Hz):");
    const QString rings = frequencyList(frequenciesOf(decays->ringDown));
    finding.sentence =
        predicted.empty()
            ? QObject::tr("The arm rings at %1 Hz.").arg(rings)
            : QObject::tr("The arm rings at %1 Hz; predicted are %2 Hz, up and down and sideways.")
                  .arg(rings, frequencyList(predicted));
    finding.notes << lossList(decays->ringDown);
    addSpectrogram(finding, question, predicted, stop);
    addTapCorrection(finding, question, decays->ringDown);
    return finding;
}

}  // namespace stillbay::ui
