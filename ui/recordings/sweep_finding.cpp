// SPDX-License-Identifier: MIT
#include "core/assess/texts.h"
#include "core/calibrate/named_reading.h"
#include "core/calibrate/predicted_transfer.h"
#include "core/recording/common_clock.h"
#include "core/recording/orders.h"
#include "core/recording/read_recording.h"
#include "core/recording/transfer.h"
#include "ui/recordings/finding.h"
#include "ui/recordings/recording_words.h"
#include "ui/recordings/sensor_name.h"
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
constexpr double kThrottleStep = 0.01;
constexpr std::size_t kMostThrottles = 800;  // of them a prediction is made
constexpr double kLeastCoherence = 0.6;      // below it the curve is no transfer and is left out

std::string nameOf(const NamedRecording& named)
{
    return std::filesystem::path(named.file).filename().string();
}

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

QString axisName(std::size_t axis)
{
    return axis == 0   ? QObject::tr("fore and aft (x)")
           : axis == 1 ? QObject::tr("sideways (y)")
                       : QObject::tr("up and down (z)");
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
    if (bay && sensorNameOf(nameOf(question.named)).place == SensorName::Place::Bay)
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
        const QString axis(QStringLiteral("xyz")[static_cast<qsizetype>(pair.axis)]);
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
    const bool isBay = sensorNameOf(nameOf(question.named)).place == SensorName::Place::Bay;
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

// The amplitude of the rotors' orders over the throttle column.
std::optional<MeasuredShown> ordersShown(const FindingQuestion& question,
                                         const std::stop_token& stop)
{
    const Recording& recording = *question.recording;
    const auto ofQuantity = [&](Quantity quantity) {
        return std::find_if(recording.channels.begin(), recording.channels.end(),
                            [&](const Channel& channel) { return channel.quantity == quantity; });
    };
    const auto throttle = ofQuantity(Quantity::Throttle);
    const Quantity quantity = mainQuantity(recording);
    if (throttle == recording.channels.end())
        return {};
    MeasuredShown shown;
    shown.name = QObject::tr("Orders over the throttle");
    shown.across = {QObject::tr("Throttle (%)"), QStringLiteral("throttle_percent")};
    shown.up = {quantityTitle(quantity), QStringLiteral("amplitude"), true};
    const int blades = question.setup.drive.propeller.blades;
    std::optional<SpeedOverTime> speed;
    if (const auto column = ofQuantity(Quantity::RotorSpeed); column != recording.channels.end())
        speed = speedOf(column->values, recording.rate);
    for (const Channel& channel : recording.channels) {
        if (channel.quantity != quantity || stop.stop_requested())
            continue;
        if (!speed) {
            const Result<RotorSpeedTrack> track =
                followRotorSpeed(channel.values, recording.rate,
                                 speedOptions(question, quantity == Quantity::Sound), stop);
            if (!track)
                return {};
            speed = speedOf(*track);
        }
        const Result<OrderLines> lines = ordersOf(channel.values, recording.rate, *speed,
                                                  {.orders = {1.0, static_cast<double>(blades)}});
        if (!lines)
            continue;
        const std::vector<double> at = meanOverBlocks(*lines, throttle->values, recording.rate);
        const OrderCurve curve = orderCurve(*lines, at, kThrottleStep);
        for (std::size_t k = 0; k < curve.amplitude.size(); ++k) {
            const int order = k == 0 ? 1 : blades;
            const QString name = QString::fromStdString(channel.name);
            MeasuredCurve drawn{QObject::tr("%1, %2", "channel and order")
                                    .arg(name, displayText(orderName(order, blades))),
                                QStringLiteral("%1_order_%2").arg(name).arg(order),
                                {},
                                curve.amplitude[k]};
            for (const double middle : curve.at)
                drawn.x.push_back(100.0 * middle);
            drawn.hue = shown.curves.size();
            drawn.isOfPoints = k == 1;
            shown.curves.push_back(std::move(drawn));
        }
    }
    if (shown.curves.empty())
        return {};
    shown.summary = QObject::tr("How strongly the rotors' orders vibrate at each throttle.");
    return shown;
}

}  // namespace

Result<Finding> sweepFinding(const FindingQuestion& question, const std::stop_token& stop)
{
    Finding finding;
    FindingQuestion asked = question;
    std::vector<SensorPair> pairs = pairsIn(*question.recording);
    if (pairs.empty() && question.partner) {
        Result<Recording> both = together(question, stop);
        const QString partner = QString::fromStdString(nameOf(*question.partner));
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
        finding.sentence = shown->summary;
        finding.charts.push_back(*std::move(shown));
    } else {
        finding.notes << QObject::tr(
            "Two sensors would give the transfer from airframe to bay: two sweeps whose names say "
            "airframe and bay, or columns whose names do.");
    }
    if (std::optional<MeasuredShown> orders = ordersShown(question, stop)) {
        if (finding.sentence.isEmpty())
            finding.sentence = orders->summary;
        finding.charts.push_back(*std::move(orders));
    }
    if (stop.stop_requested())
        return tl::unexpected(stoppedOnRequest());
    Result<MeasuredShown> spectrum = spectrumShown(question, mainQuantity(*question.recording));
    if (!spectrum)
        return tl::unexpected<Error>(spectrum.error());
    if (finding.sentence.isEmpty())
        finding.sentence = spectrum->summary;
    finding.charts.push_back(*std::move(spectrum));
    return finding;
}

}  // namespace stillbay::ui
