// SPDX-License-Identifier: MIT
#include "ui/recordings/finding.h"

#include "core/assess/texts.h"
#include "core/calibrate/alias_warning.h"
#include "core/recording/part.h"
#include "core/recording/spectrum.h"
#include "core/response/at_throttle.h"
#include "ui/recordings/recording_words.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/plain_number.h"

#include <QLocale>
#include <QObject>

#include <algorithm>
#include <bit>
#include <cmath>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr double kSpectrumStep_hz = 0.5;
constexpr std::size_t kLeastSegment = 64;
constexpr std::size_t kMostChannelsShown = 6;
constexpr double kHighestShown_hz = 1000.0;

std::size_t segmentFor(std::size_t samples, double rate)
{
    const auto wanted = static_cast<std::size_t>(std::max(rate / kSpectrumStep_hz, 1.0));
    return std::bit_floor(std::max(std::min(wanted, samples / 2), kLeastSegment));
}

Result<Finding> findingOfKind(const FindingQuestion& asked, const std::stop_token& stop)
{
    switch (asked.named.kind) {
        case RecordingKind::Pluck:
            return pluckFinding(asked, stop);
        case RecordingKind::Tap:
            return tapFinding(asked, stop);
        case RecordingKind::Sweep:
            return sweepFinding(asked, stop);
        case RecordingKind::Sound:
            return soundFinding(asked, stop);
        case RecordingKind::Film:
            break;
    }
    return fail(Errc::Internal, phrase("a film has no samples"));
}

bool areMotorsRunning(RecordingKind kind)
{
    return kind == RecordingKind::Sweep || kind == RecordingKind::Sound;
}

// Orders above half the rate stand in the charts where nothing shakes.
void addAliasWarning(Finding& finding, const FindingQuestion& question)
{
    std::optional<double> fastest;
    for (const Channel& channel : question.recording->channels)
        if (channel.quantity == Quantity::Throttle && !channel.values.empty())
            fastest = *std::max_element(channel.values.begin(), channel.values.end());
    if (const auto warning = aliasWarning(question.setup, question.recording->rate, fastest))
        finding.notes.prepend(QObject::tr("%1.").arg(displayText(warning->text)));
}

}  // namespace

Result<Finding> findingOf(const FindingQuestion& question, const std::stop_token& stop)
{
    FindingQuestion asked = question;
    if (question.named.from_s || question.named.to_s) {
        Result<Recording> part =
            partOf(*question.recording, question.named.from_s, question.named.to_s);
        if (!part)
            return tl::unexpected<Error>(part.error());
        asked.recording = std::make_shared<const Recording>(*std::move(part));
    }
    Result<Finding> finding = findingOfKind(asked, stop);
    if (finding && areMotorsRunning(asked.named.kind))
        addAliasWarning(*finding, asked);
    return finding;
}

Quantity mainQuantity(const Recording& recording)
{
    for (const Quantity quantity :
         {Quantity::Acceleration, Quantity::AngularRate, Quantity::Sound, Quantity::Other})
        if (std::any_of(recording.channels.begin(), recording.channels.end(),
                        [&](const Channel& channel) { return channel.quantity == quantity; }))
            return quantity;
    return recording.channels.front().quantity;
}

std::vector<MeasuredShown::Band> excitationBands(const FindingQuestion& question)
{
    std::vector<MeasuredShown::Band> bands;
    if (!question.prediction)
        return bands;
    const auto& cruise = question.setup.flight.cruise_throttle;
    const ThrottlePoint* const from = pointAt(question.prediction->throttle, cruise[0]);
    const ThrottlePoint* const to = pointAt(question.prediction->throttle, cruise[1]);
    if (!from || !to)
        return bands;
    const int blades = question.setup.drive.propeller.blades;
    for (std::size_t k = 0; k < std::min(from->orders.size(), to->orders.size()); ++k)
        bands.push_back({from->orders[k].frequency_hz, to->orders[k].frequency_hz,
                         displayText(orderName(from->orders[k].order, blades))});
    return bands;
}

Result<MeasuredShown> spectrumShown(const FindingQuestion& question, Quantity quantity)
{
    const Recording& recording = *question.recording;
    const std::size_t segment = segmentFor(recording.samples(), recording.rate);
    MeasuredShown shown;
    shown.name = QObject::tr("Spectrum");
    shown.across = {QObject::tr("Frequency (Hz)"), QStringLiteral("frequency_hz"), true};
    const QString unit = quantityUnit(quantity);
    shown.up = {unit.isEmpty() || quantity == Quantity::Sound
                    ? QObject::tr("Density (1/Hz)")
                    : QObject::tr("Density ((%1)²/Hz)").arg(unit),
                QStringLiteral("density"), true};
    QStringList strongest;
    for (const Channel& channel : recording.channels) {
        if (channel.quantity != quantity || shown.curves.size() == kMostChannelsShown)
            continue;
        const Result<Spectrum> spectrum =
            welch(channel.values, recording.rate, {.segment = segment});
        if (!spectrum)
            continue;  // a channel that stands still has none
        const QString name = QString::fromStdString(channel.name);
        MeasuredCurve curve{name, QStringLiteral("density_%1").arg(name), {}, {}};
        for (std::size_t k = 1; k < spectrum->frequency_hz.size(); ++k) {
            curve.x.push_back(spectrum->frequency_hz[k]);
            curve.y.push_back(spectrum->density[k]);
        }
        curve.hue = shown.curves.size();
        shown.curves.push_back(std::move(curve));
        const std::vector<SpectrumPeak> peaks = strongestPeaks(*spectrum, 1);
        if (!peaks.empty())
            strongest << QObject::tr("%1 is strongest at %2 Hz")
                             .arg(name, plainNumber(peaks.front().frequency_hz, 4));
    }
    if (shown.curves.empty())
        return fail(Errc::NoAnswer,
                    phrase("no channel of the chosen part moves, or the part is too short"));
    shown.across.range = Span{std::max(shown.curves.front().x.front(), 1.0),
                              std::min(shown.curves.front().x.back(), kHighestShown_hz)};
    if (!(shown.across.range->from < shown.across.range->to))
        shown.across.range.reset();
    shown.bands = excitationBands(question);
    shown.summary = QObject::tr("%1.").arg(strongest.join(QStringLiteral("; ")));
    return shown;
}

QString frequencyList(const std::vector<double>& frequency_hz)
{
    std::vector<Phrase> phrases;
    for (const double frequency : frequency_hz)
        phrases.push_back(verbatim(plainNumber(frequency, 3).toStdString()));
    return displayText(listOf(std::move(phrases)));
}

}  // namespace stillbay::ui
