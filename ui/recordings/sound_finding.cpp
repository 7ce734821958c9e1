// SPDX-License-Identifier: MIT
#include "core/recording/orders.h"
#include "core/recording/rotor_speed.h"
#include "ui/recordings/finding.h"
#include "ui/recordings/spectrogram_finding.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/plain_number.h"

#include <QObject>

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr double kPerMinute = 60.0;      // rev/s to rpm
constexpr double kLeastTurns = 8.5;      // in the window that a speed is found in
constexpr double kTurns = 0.3;           // quality below which nothing turns
constexpr std::size_t kMostSteady = 12;  // named in the sentence

// The throttle at which the craft is computed to turn so fast; not a number: at none.
double throttleAt(const Assessment& assessment, double speed_rpm)
{
    const auto& points = assessment.throttle;
    for (std::size_t k = 1; k < points.size(); ++k)
        if (points[k - 1].speed_rpm <= speed_rpm && speed_rpm <= points[k].speed_rpm) {
            const double share = (speed_rpm - points[k - 1].speed_rpm) /
                                 std::max(points[k].speed_rpm - points[k - 1].speed_rpm, 1e-9);
            return std::lerp(points[k - 1].throttle, points[k].throttle, share);
        }
    return std::numeric_limits<double>::quiet_NaN();
}

MeasuredShown speedShown(const RotorSpeedTrack& track, const FindingQuestion& question)
{
    MeasuredShown shown;
    shown.name = QObject::tr("Rotor speed");
    shown.across = {QObject::tr("Time (s)"), QStringLiteral("time_s")};
    shown.up = {QObject::tr("Rotor speed (rpm)"), QStringLiteral("speed_rpm")};
    MeasuredCurve curve{QObject::tr("followed through the recording"),
                        QStringLiteral("followed_rpm"),
                        track.time,
                        {}};
    for (std::size_t k = 0; k < track.time.size(); ++k)
        curve.y.push_back(track.quality[k] >= kTurns ? kPerMinute * track.speed[k]
                                                     : std::numeric_limits<double>::quiet_NaN());
    shown.curves.push_back(std::move(curve));
    if (question.prediction && question.prediction->hover.speed_rpm > 0.0 && !track.time.empty()) {
        const double hover = question.prediction->hover.speed_rpm;
        shown.curves.push_back({QObject::tr("hover, predicted"),
                                QStringLiteral("hover_rpm"),
                                {track.time.front(), track.time.back()},
                                {hover, hover},
                                true,
                                false,
                                1});
    }
    return shown;
}

}  // namespace

RotorSpeedOptions speedOptions(const FindingQuestion& question, bool isSound)
{
    RotorSpeedOptions options;
    options.isSound = isSound;
    options.blades = static_cast<std::size_t>(question.setup.drive.propeller.blades);
    const double most = question.recording->rate / (2.2 * static_cast<double>(options.blades));
    if (question.prediction && !question.prediction->throttle.empty()) {
        const auto& points = question.prediction->throttle;
        options.slowest = std::max(5.0, 0.4 * points.front().speed_rpm / kPerMinute);
        options.fastest = 1.3 * points.back().speed_rpm / kPerMinute;
    }
    options.fastest = std::min(options.fastest, most);
    options.slowest = std::min(options.slowest, 0.5 * options.fastest);
    options.slowest = std::max(options.slowest, kLeastTurns / options.window);
    return options;
}

Result<Finding> soundFinding(const FindingQuestion& question, const std::stop_token& stop)
{
    Finding finding;
    const Quantity quantity = mainQuantity(*question.recording);
    Result<MeasuredShown> spectrum = spectrumShown(question, quantity);
    if (!spectrum)
        return tl::unexpected<Error>(spectrum.error());
    const auto& channels = question.recording->channels;
    const auto heard = std::find_if(channels.begin(), channels.end(), [&](const Channel& channel) {
        return channel.quantity == quantity;
    });
    const Result<RotorSpeedTrack> track =
        followRotorSpeed(heard->values, question.recording->rate,
                         speedOptions(question, quantity == Quantity::Sound), stop);
    if (stop.stop_requested())
        return tl::unexpected(stoppedOnRequest());
    if (!track) {
        finding.sentence = spectrum->summary;
        finding.notes << QObject::tr("The rotors' speed cannot be followed: %1.")
                             .arg(displayText(track.error().what));
        finding.charts.push_back(*std::move(spectrum));
        if (auto shown = spectrogramShown(question, quantity, {}, stop))
            finding.charts.push_back(*std::move(shown));
        return finding;
    }
    MeasuredShown speed = speedShown(*track, question);
    QStringList steady;
    for (const SteadyStretch& stretch : steadyStretches(*track)) {
        if (static_cast<std::size_t>(steady.size()) == kMostSteady)
            break;
        finding.steady.push_back(stretch);
        const double rpm = kPerMinute * stretch.speed;
        const double throttle = question.prediction ? throttleAt(*question.prediction, rpm)
                                                    : std::numeric_limits<double>::quiet_NaN();
        const QString from = plainNumber(stretch.from, 3), to = plainNumber(stretch.to, 3);
        steady << (std::isfinite(throttle)
                       ? QObject::tr("%1 to %2 s: %3 rpm, computed for %4 % throttle")
                             .arg(from, to, plainNumber(rpm, 4), plainNumber(100.0 * throttle, 3))
                       : QObject::tr("%1 to %2 s: %3 rpm").arg(from, to, plainNumber(rpm, 4)));
    }
    finding.sentence = steady.isEmpty()
                           ? QObject::tr(
                                 "The rotors' speed was followed; it was never steady for "
                                 "as long as a throttle needs.")
                           : QObject::tr("The rotors turned steadily %1 times.").arg(steady.size());
    if (!steady.isEmpty())
        finding.notes << steady.join(u'\n');
    if (track->margin < 0.1)
        finding.mark = QualityMark{
            Quality::Fair, phrase("A multiple or a fraction of this speed explains the recording "
                                  "nearly as well.")};
    else
        finding.mark = QualityMark{Quality::Good,
                                   phrase("No multiple and no fraction of this speed explains the "
                                          "recording as well.")};
    speed.summary = finding.sentence;
    finding.charts = {std::move(speed), *std::move(spectrum)};
    const SpeedOverTime turning = speedOf(*track);
    if (auto shown = spectrogramShown(
            question, quantity, drawnOrders(question, turning.time, turning.speed, false), stop))
        finding.charts.push_back(*std::move(shown));
    return finding;
}

}  // namespace stillbay::ui
