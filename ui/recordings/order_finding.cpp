// SPDX-License-Identifier: MIT
#include "ui/recordings/order_finding.h"

#include "core/assess/texts.h"
#include "core/base/units.h"
#include "core/calibrate/predicted_orders.h"
#include "core/calibrate/shake_recording.h"
#include "core/calibrate/sweep_readings.h"
#include "core/craft/craft.h"
#include "ui/recordings/recording_words.h"
#include "ui/recordings/sensed_axes.h"
#include "ui/recordings/spectrogram_finding.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/plain_number.h"

#include <QObject>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <span>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr double kOrderStep = 0.01;           // of throttle, measured
constexpr std::size_t kPredictedSteps = 160;  // over the throttles that were swept
constexpr std::size_t kMostUnnamed = 3, kMostMoments = 400;
constexpr double kAxisPercent = 100.0;

// From the least to the greatest of the throttle.
std::vector<double> throttlesOver(const Channel& throttle)
{
    const auto [least, most] = std::minmax_element(throttle.values.begin(), throttle.values.end());
    const double from = std::clamp(*least, 0.0, 1.0), to = std::clamp(*most, 0.0, 1.0);
    std::vector<double> throttles;
    for (std::size_t k = 0; k <= kPredictedSteps; ++k)
        throttles.push_back(
            std::lerp(from, to, static_cast<double>(k) / static_cast<double>(kPredictedSteps)));
    return throttles;
}

std::vector<double> inPercent(const std::vector<double>& shares)
{
    std::vector<double> percent;
    for (const double share : shares)
        percent.push_back(kAxisPercent * share);
    return percent;
}

// One chart for each of the orders 1 and blade pass.
MeasuredShown emptyOrderChart(int order, int blades, const Recording& recording)
{
    MeasuredShown shown;
    shown.name = order == 1 ? QObject::tr("Order 1 over the throttle")
                            : QObject::tr("Order B over the throttle");
    shown.across = {QObject::tr("Throttle (%)"), QStringLiteral("throttle_percent")};
    shown.up = {quantityTitle(mainQuantity(recording)), QStringLiteral("amplitude"), true};
    shown.summary = QObject::tr("How strong %1 is at each throttle.", "an order")
                        .arg(displayText(orderName(order, blades)));
    return shown;
}

void addPrediction(std::vector<MeasuredShown>& charts, const std::vector<int>& orders,
                   const FindingQuestion& question, const SensedAxis& axis,
                   const std::vector<double>& throttles)
{
    const auto predicted = predictedOrders(question.setup, axis.point, axis.seat, throttles);
    if (!predicted)
        return;
    for (const PredictedOrder& order : *predicted) {
        const auto chart = std::find(orders.begin(), orders.end(), order.order);
        if (chart == orders.end())
            continue;
        MeasuredCurve curve{QObject::tr("%1, predicted").arg(axisName(axis.axis)),
                            QStringLiteral("predicted_%1").arg(axisKey(axis.axis)),
                            inPercent(throttles), order.amplitude, true};
        curve.hue = axis.axis;
        charts[static_cast<std::size_t>(chart - orders.begin())].curves.push_back(std::move(curve));
    }
}

/// A channel whose orders are drawn.
struct DrawnChannel {
    const Channel* channel;
    QString name, key;
    std::size_t hue;
    const SensedAxis* axis;  // null: it is not known, and nothing is predicted
};

std::vector<DrawnChannel> drawnChannels(const Recording& recording,
                                        const std::vector<SensedAxis>& axes)
{
    std::vector<DrawnChannel> drawn;
    for (const SensedAxis& axis : axes)
        drawn.push_back({axis.channel, axisName(axis.axis), axisKey(axis.axis), axis.axis, &axis});
    if (!drawn.empty())
        return drawn;
    const Quantity quantity = mainQuantity(recording);
    for (const Channel& channel : recording.channels) {
        const QString name = QString::fromStdString(channel.name);
        if (channel.quantity == quantity && drawn.size() < kMostUnnamed)
            drawn.push_back({&channel, name, name, drawn.size(), nullptr});
    }
    return drawn;
}

std::vector<MeasuredShown> orderCharts(const FindingQuestion& question, const SweptSpeed& swept,
                                       const std::vector<SensedAxis>& axes)
{
    const Recording& recording = *question.recording;
    const int blades = question.setup.drive.propeller.blades;
    const std::vector<int> orders{1, blades};
    std::vector<MeasuredShown> charts;
    for (const int order : orders)
        charts.push_back(emptyOrderChart(order, blades, recording));
    const std::vector<double> throttles = throttlesOver(*swept.throttle);
    for (const DrawnChannel& drawn : drawnChannels(recording, axes)) {
        const Result<OrderLines> lines =
            ordersOf(drawn.channel->values, recording.rate, swept.speed,
                     {.orders = {1.0, static_cast<double>(blades)}});
        if (!lines)
            continue;
        const std::vector<double> at =
            meanOverBlocks(*lines, swept.throttle->values, recording.rate);
        const OrderCurve measured = orderCurve(*lines, at, kOrderStep);
        for (std::size_t k = 0; k < charts.size(); ++k) {
            MeasuredCurve curve{QObject::tr("%1, measured").arg(drawn.name),
                                QStringLiteral("measured_%1").arg(drawn.key),
                                inPercent(measured.at), measured.amplitude[k]};
            curve.hue = drawn.hue;
            charts[k].curves.push_back(std::move(curve));
        }
        if (drawn.axis)
            addPrediction(charts, orders, question, *drawn.axis, throttles);
    }
    charts.erase(std::remove_if(charts.begin(), charts.end(),
                                [](const MeasuredShown& chart) { return chart.curves.empty(); }),
                 charts.end());
    return charts;
}

double predictedSpeed(const ExcitedAirframe& craft, double throttle)
{
    return rotorSpeed(craft.drive, std::clamp(throttle, 0.0, 1.0), craft.fullVoltage);
}

MeasuredShown speedChart(const FindingQuestion& question, const SweptSpeed& swept,
                         const std::vector<SteadySpeed>& readings)
{
    MeasuredShown shown;
    shown.name = QObject::tr("Speed over the throttle");
    shown.across = {QObject::tr("Throttle (%)"), QStringLiteral("throttle_percent")};
    shown.up = {QObject::tr("Rotor speed (rpm)"), QStringLiteral("speed_rpm")};
    MeasuredCurve measured{
        QObject::tr("measured"), QStringLiteral("measured_rpm"), {}, {}, false, true};
    for (const SteadySpeed& reading : readings) {
        measured.x.push_back(kAxisPercent * reading.throttle);
        measured.y.push_back(reading.speed / unit::rpm);
    }
    const ExcitedAirframe craft = makeExcitedAirframe(question.setup);
    MeasuredCurve predicted{
        QObject::tr("predicted"), QStringLiteral("predicted_rpm"), {}, {}, true};
    for (const double throttle : throttlesOver(*swept.throttle)) {
        predicted.x.push_back(kAxisPercent * throttle);
        predicted.y.push_back(predictedSpeed(craft, throttle) / unit::rpm);
    }
    shown.curves = {std::move(measured), std::move(predicted)};
    shown.summary = QObject::tr("How fast the rotors turn at each throttle.");
    return shown;
}

// What stands first of a sweep: the middle reading beside what was expected.
QString speedSentence(const FindingQuestion& question, const std::vector<SteadySpeed>& readings)
{
    const SteadySpeed& middle = readings[readings.size() / 2];
    const double predicted =
        predictedSpeed(makeExcitedAirframe(question.setup), middle.throttle) / unit::rpm;
    return QObject::tr("At %1 % throttle the rotors turn at %2 rpm; predicted are %3 rpm.")
        .arg(plainNumber(kAxisPercent * middle.throttle, 3),
             plainNumber(middle.speed / unit::rpm, 4), plainNumber(predicted, 4));
}

void addSpeeds(Finding& finding, const FindingQuestion& question, const SweptSpeed& swept)
{
    const std::vector<SteadySpeed> readings =
        speedReadings(swept.throttle->values, question.recording->rate, swept.heard);
    if (readings.empty())
        return;
    finding.sentence = speedSentence(question, readings);
    finding.charts.push_back(speedChart(question, swept, readings));
    const Result<Correction> correction = speedAtThrottle(question.setup, readings);
    if (correction)
        finding.speeds = Offer{QObject::tr("Speed: %1 throttles of the sweep correct the motors.")
                                   .arg(readings.size()),
                               *correction};
    else
        finding.notes
            << QObject::tr("The speeds correct nothing: %1.").arg(reasonText(correction.error()));
}

void addUnbalance(Finding& finding, const FindingQuestion& question,
                  const std::vector<SensedAxis>& sensed, const std::stop_token& stop)
{
    AirframeColumns columns;
    for (const SensedAxis& axis : sensed) {
        columns.axes.push_back({axis.point.place, axis.point.axis});
        columns.channels.push_back(axis.channel);
    }
    Result<Correction> correction =
        unbalanceOfColumns(question.setup, *question.recording, columns, {}, stop);
    if (!correction) {
        finding.notes
            << QObject::tr("The unbalance cannot be told: %1.").arg(reasonText(correction.error()));
        return;
    }
    if (!question.named.sensor_mm)
        correction->mark = {Quality::Poor,
                            phrase("where the sensor sat is not said: open How it is read")};
    // Of the whole recording, which says it.
    std::erase_if(correction->warnings,
                  [](const Warning& warning) { return warning.code == "order-folds"; });
    finding.unbalance = Offer{
        QObject::tr("Unbalance: by how the airframe shakes once a turn, over the whole sweep."),
        *std::move(correction)};
}

}  // namespace

void addOrders(Finding& finding, const FindingQuestion& question, const SweptSpeed& swept,
               const std::stop_token& stop)
{
    const SensorSeat seat = seatOf(question.named);
    const std::vector<SensedAxis> axes =
        sensedAxes(*question.recording, question.named, seat, question.setup);
    std::vector<MeasuredShown> charts = orderCharts(question, swept, axes);
    std::move(charts.begin(), charts.end(), std::back_inserter(finding.charts));
    addSpeeds(finding, question, swept);
    if (axes.empty())
        finding.notes << QObject::tr(
            "Name the columns by their axes (x, y, z or forward, left, up): then the orders are "
            "shown beside their prediction.");
    else if (!question.named.sensor_mm)
        finding.notes << (seat == SensorSeat::Bay
                              ? QObject::tr("Where the sensor sat is not said: the orders are "
                                            "predicted for the camera's place.")
                              : QObject::tr("Where the sensor sat is not said: the orders are "
                                            "predicted for the middle of the centre plate."));
    if (seat == SensorSeat::Airframe && !axes.empty())
        addUnbalance(finding, question, axes, stop);
}

std::vector<MeasuredCurve> ordersOverTime(const FindingQuestion& question, const SweptSpeed& swept)
{
    if (!swept.throttle)
        return drawnOrders(question, swept.speed.time, swept.speed.speed, false);
    const ExcitedAirframe craft = makeExcitedAirframe(question.setup);
    const std::vector<double>& throttle = swept.throttle->values;
    const std::size_t step = std::max<std::size_t>(throttle.size() / kMostMoments, 1);
    std::vector<double> time, speed;
    for (std::size_t k = 0; k < throttle.size(); k += step) {
        time.push_back(static_cast<double>(k) / question.recording->rate);
        speed.push_back(predictedSpeed(craft, throttle[k]));
    }
    return drawnOrders(question, time, speed, true);
}

}  // namespace stillbay::ui
