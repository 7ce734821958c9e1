// SPDX-License-Identifier: MIT
#include "core/calibrate/named_reading.h"
#include "core/calibrate/predicted_transfer.h"
#include "core/recording/common_clock.h"
#include "core/recording/read_recording.h"
#include "core/recording/transfer.h"
#include "ui/recordings/finding.h"
#include "ui/recordings/order_finding.h"
#include "ui/recordings/recording_words.h"
#include "ui/recordings/sensed_axes.h"
#include "ui/recordings/sensor_name.h"
#include "ui/recordings/spectrogram_finding.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/plain_number.h"

#include <QObject>

#include <algorithm>
#include <array>
#include <bit>
#include <filesystem>
#include <limits>
#include <memory>
#include <optional>
#include <string>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr double kTransferStep_hz = 1.0;
constexpr std::size_t kMostThrottles = 800;  // of them a prediction is made
constexpr double kLeastCoherence = 0.6;      // below it the curve is no transfer and is left out

struct SensorPair {
    const Channel* airframe;
    const Channel* bay;
    std::size_t axis;
};

std::vector<SensorPair> pairsIn(const Recording& recording)
{
    std::array<std::pair<const Channel*, const Channel*>, 3> found{};
    for (const Channel& channel : recording.channels) {
        const SensorName name = sensorNameOf(channel.name);
        if (channel.quantity != Quantity::Acceleration || !name.axis)
            continue;
        if (name.place == SensorName::Place::Airframe && !found[*name.axis].first)
            found[*name.axis].first = &channel;
        if (name.place == SensorName::Place::Bay && !found[*name.axis].second)
            found[*name.axis].second = &channel;
    }
    std::vector<SensorPair> pairs;
    for (std::size_t axis = 0; axis < 3; ++axis)
        if (found[axis].first && found[axis].second)
            pairs.push_back({found[axis].first, found[axis].second, axis});
    return pairs;
}

const std::vector<double>& predictedAlong(const Assessment& assessment, std::size_t axis)
{
    const TransmissibilityCurves& curves = assessment.transmissibility;
    return axis == 0 ? curves.x : axis == 1 ? curves.y : curves.z;
}

// Throttles as the record visited them, evenly in time.
std::vector<double> throttlesOf(const Recording& recording)
{
    std::vector<double> throttles;
    for (const Channel& channel : recording.channels) {
        if (channel.quantity != Quantity::Throttle || !throttles.empty())
            continue;
        const std::size_t step = std::max<std::size_t>(channel.values.size() / kMostThrottles, 1);
        for (std::size_t k = 0; k < channel.values.size(); k += step)
            if (channel.values[k] >= 0.0 && channel.values[k] <= 1.0)
                throttles.push_back(channel.values[k]);
    }
    return throttles;
}

// What the two sensors should show of each other while these motors run; without both places, or
// a throttle, of a frame that is moved as a whole.
MeasuredCurve predictedCurve(const FindingQuestion& question, std::size_t axis, double step_hz)
{
    MeasuredCurve curve{{}, {}, {}, {}, true};
    const NamedRecording* airframe = &question.named;
    const NamedRecording* bay = question.partner ? &*question.partner : nullptr;
    if (bay && seatOf(question.named) == SensorSeat::Bay)
        std::swap(airframe, bay);
    const std::vector<double> throttles = throttlesOf(*question.recording);
    if (bay && bay->sensor_mm && airframe->sensor_mm && !throttles.empty()) {
        const auto pointOf = [axis](const NamedRecording& named) {
            const Triple& place = *named.sensor_mm;
            return SensorPoint{1e-3 * Vector3d(place[0], place[1], place[2]),
                               Vector3d::Unit(static_cast<Eigen::Index>(axis))};
        };
        const Result<PredictedTransfer> predicted = predictedTransfer(
            question.setup, pointOf(*airframe), pointOf(*bay), throttles, step_hz);
        if (predicted) {
            curve.x = predicted->frequency_hz;
            curve.y = predicted->magnitude;
            return curve;
        }
    }
    curve.x = question.prediction->transmissibility.frequency_hz;
    curve.y = predictedAlong(*question.prediction, axis);
    return curve;
}

Result<MeasuredShown> transferShown(const FindingQuestion& question,
                                    const std::vector<SensorPair>& pairs)
{
    const Recording& recording = *question.recording;
    const std::size_t segment = std::bit_floor(std::max<std::size_t>(
        64, std::min(recording.samples() / 8,
                     static_cast<std::size_t>(recording.rate / kTransferStep_hz))));
    MeasuredShown shown;
    shown.name = QObject::tr("Transfer");
    shown.across = {QObject::tr("Frequency (Hz)"), QStringLiteral("frequency_hz"), true};
    shown.up = {QObject::tr("Bay per airframe"), QStringLiteral("transfer"), true};
    std::size_t trusted = 0, all = 0;
    for (const SensorPair& pair : pairs) {
        const Result<Transfer> measured =
            transfer(pair.airframe->values, pair.bay->values, recording.rate, {.segment = segment});
        if (!measured)
            return tl::unexpected<Error>(measured.error());
        const QString axis = axisKey(pair.axis);
        MeasuredCurve curve{QObject::tr("%1, measured").arg(axisName(pair.axis)),
                            axis + QStringLiteral("_measured"),
                            {},
                            {}};
        curve.hue = pair.axis;
        for (std::size_t k = 1; k < measured->frequency_hz.size(); ++k) {
            const bool isTrusted = measured->coherence[k] >= kLeastCoherence;
            trusted += isTrusted;
            ++all;
            curve.x.push_back(measured->frequency_hz[k]);
            curve.y.push_back(isTrusted ? measured->magnitude[k]
                                        : std::numeric_limits<double>::quiet_NaN());
        }
        shown.curves.push_back(std::move(curve));
        if (question.prediction) {
            MeasuredCurve predicted =
                predictedCurve(question, pair.axis, recording.rate / static_cast<double>(segment));
            predicted.name = QObject::tr("%1, predicted").arg(axisName(pair.axis));
            predicted.key = axis + QStringLiteral("_predicted");
            predicted.hue = pair.axis;
            shown.curves.push_back(std::move(predicted));
        }
    }
    shown.across.range =
        Span{std::max(shown.curves.front().x.front(), 1.0),
             question.prediction ? question.prediction->transmissibility.frequency_hz.back()
                                 : shown.curves.front().x.back()};
    shown.bands = excitationBands(question);
    shown.summary = QObject::tr(
                        "The bay's motion over the airframe's, shown where one explains the other: "
                        "%1 % of the frequencies.")
                        .arg(plainNumber(100.0 * static_cast<double>(trusted) /
                                             static_cast<double>(std::max<std::size_t>(all, 1)),
                                         2));
    return shown;
}

// Both recorders' channels on one clock, their names led by where each sat: the file whose name
// says the bay is the bay's.
Result<Recording> together(const FindingQuestion& question, const std::stop_token& stop)
{
    const std::filesystem::path file(question.partner->file);
    const Result<ReadPlan> plan = planReading(file);
    if (!plan)
        return tl::unexpected<Error>(plan.error());
    const Result<Recording> other = readRecording(file, followed(*plan, *question.partner), stop);
    if (!other)
        return tl::unexpected<Error>(other.error());
    const bool isBay = seatOf(question.named) == SensorSeat::Bay;
    const Recording& airframe = isBay ? *other : *question.recording;
    const Recording& bay = isBay ? *question.recording : *other;
    const Result<ClockMatch> match = matchClocks(airframe, bay);
    if (!match)
        return tl::unexpected<Error>(match.error());
    Result<Recording> both = onOneClock(airframe, bay, *match);
    if (!both)
        return tl::unexpected<Error>(both.error());
    for (std::size_t c = 0; c < both->channels.size(); ++c)
        both->channels[c].name.insert(0, c < airframe.channels.size() ? "airframe " : "bay ");
    return both;
}

bool hasThrottle(const Recording& recording)
{
    return std::any_of(recording.channels.begin(), recording.channels.end(),
                       [](const Channel& c) { return c.quantity == Quantity::Throttle; });
}

// What of both recorders is the shown one's, on the clock that the throttle has.
FindingQuestion ownOf(FindingQuestion both)
{
    const bool isBay = seatOf(both.named) == SensorSeat::Bay;
    Recording own = *both.recording;
    own.channels.erase(std::remove_if(own.channels.begin(), own.channels.end(),
                                      [&](const Channel& channel) {
                                          return (sensorNameOf(channel.name).place ==
                                                  SensorName::Place::Bay) != isBay;
                                      }),
                       own.channels.end());
    both.recording = std::make_shared<const Recording>(std::move(own));
    return both;
}

std::optional<MeasuredShown> sweptSpectrogram(const FindingQuestion& question,
                                              const std::optional<SweptSpeed>& swept,
                                              const std::stop_token& stop)
{
    std::vector<MeasuredCurve> lines;
    if (swept)
        lines = ordersOverTime(question, *swept);
    return spectrogramShown(question, mainQuantity(*question.recording), std::move(lines), stop);
}

}  // namespace

Result<Finding> sweepFinding(const FindingQuestion& question, const std::stop_token& stop)
{
    Finding finding;
    FindingQuestion asked = question;
    std::optional<MeasuredShown> transferred;
    std::vector<SensorPair> pairs = pairsIn(*question.recording);
    if (pairs.empty() && question.partner) {
        Result<Recording> both = together(question, stop);
        const QString partner = QString::fromStdString(fileNameOf(*question.partner));
        if (both) {
            asked.recording = std::make_shared<const Recording>(*std::move(both));
            pairs = pairsIn(*asked.recording);
            finding.notes << QObject::tr("Laid on one clock with %1.").arg(partner);
        } else {
            finding.notes << QObject::tr("It cannot be laid on one clock with %1: %2.")
                                 .arg(partner, displayText(both.error().what));
        }
    }
    if (!pairs.empty()) {
        Result<MeasuredShown> shown = transferShown(asked, pairs);
        if (!shown)
            return tl::unexpected<Error>(shown.error());
        transferred = *std::move(shown);
    } else {
        finding.notes << QObject::tr(
            "Two sensors would give the transfer from airframe to bay: two sweeps whose names say "
            "airframe and bay, or columns whose names do.");
    }
    // What this recorder knows of the throttle, else what the other of the same sweep does.
    const bool isOwn = hasThrottle(*question.recording) || !hasThrottle(*asked.recording);
    const FindingQuestion& turning = isOwn ? question : asked;
    const std::optional<SweptSpeed> swept =
        sweptSpeed(turning.setup, *turning.recording, mainQuantity(*turning.recording), stop);
    if (!swept)
        finding.notes << (hasThrottle(*turning.recording)
                              ? QObject::tr("No channel is heard to turn as the throttle says.")
                              : QObject::tr("No channel is heard to turn."));
    else if (!swept->throttle)
        finding.notes << QObject::tr(
            "A column with the throttle would give the orders and the speed over it.");
    else
        addOrders(finding, turning, *swept, stop);
    if (transferred) {  // of the bay it says most
        if (finding.sentence.isEmpty())
            finding.sentence = transferred->summary;
        const bool isBay = seatOf(question.named) == SensorSeat::Bay;
        finding.charts.insert(isBay ? finding.charts.begin() : finding.charts.end(),
                              *std::move(transferred));
    }
    if (stop.stop_requested())
        return tl::unexpected(stoppedOnRequest());
    Result<MeasuredShown> spectrum = spectrumShown(question, mainQuantity(*question.recording));
    if (!spectrum)
        return tl::unexpected<Error>(spectrum.error());
    if (finding.sentence.isEmpty())
        finding.sentence = spectrum->summary;
    finding.charts.push_back(*std::move(spectrum));
    if (auto shown = sweptSpectrogram(isOwn ? question : ownOf(asked), swept, stop))
        finding.charts.push_back(*std::move(shown));
    return finding;
}

}  // namespace stillbay::ui
