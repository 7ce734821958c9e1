// SPDX-License-Identifier: MIT
#include "ui/charts/campbell_words.h"

#include "core/assess/words.h"
#include "ui/charts/point_words.h"
#include "ui/widgets/in_words.h"

#include <QCoreApplication>
#include <QLocale>

#include <algorithm>

namespace stillbay::ui {
namespace {

constexpr double kPercent = 100.0;
constexpr double kLeast_px = 0.01;  // below, the number tells nothing

struct Words {
    Q_DECLARE_TR_FUNCTIONS(stillbay::ui::CampbellChart)
};

QString percent(double throttle)
{
    return QLocale().toString(kPercent * throttle, 'f', 0);
}

QString rpm(double speed_rpm)
{
    return QLocale().toString(speed_rpm, 'f', 0);
}

QString pixels(double wobble_px)
{
    return wobble_px < kLeast_px ? Words::tr("less than %1").arg(QLocale().toString(kLeast_px))
                                 : QLocale().toString(wobble_px, 'g', 2);
}

QString orderName(int order, const Setup& setup)
{
    return inWords(orderInWords(order, setup.drive.propeller.blades));
}

}  // namespace

QString hertz(double f_hz)
{
    return QLocale().toString(f_hz, 'f', f_hz < 10.0 ? 1 : 0);
}

QString crossingInWords(const Crossing& crossing, const Setup& setup)
{
    return Words::tr("At %1 % throttle (%2 rpm) the %3 meets %4 Hz, where the %5: %6 px, %7.")
        .arg(percent(crossing.throttle), rpm(crossing.speed_rpm), orderName(crossing.order, setup),
             hertz(crossing.met.frequency_hz), inWords(crossing.met.words),
             pixels(crossing.wobble_px), gradeWord(setup.limits, crossing.wobble_px));
}

QString hoverInWords(const HoverFigures& hover)
{
    if (!hover.throttle_full)
        return Words::tr("The pack cannot hold this craft in the air.");
    if (!hover.throttle_empty)
        return Words::tr(
                   "Hover is at %1 rpm: %2 % throttle on a full pack; an empty one cannot hold the "
                   "craft.")
            .arg(rpm(hover.speed_rpm), percent(*hover.throttle_full));
    return Words::tr("Hover is at %1 rpm: %2 % throttle on a full pack, %3 % on an empty one.")
        .arg(rpm(hover.speed_rpm), percent(*hover.throttle_full), percent(*hover.throttle_empty));
}

QString speedsInWords(const Setup& setup, const Assessment& assessment,
                      const std::vector<Crossing>& crossings)
{
    QStringList sentences, swings;
    if (!assessment.throttle.empty()) {
        const ThrottlePoint &first = assessment.throttle.front(),
                            &last = assessment.throttle.back();
        for (std::size_t k = 0; k < last.orders.size(); ++k)
            sentences << Words::tr("The %1 runs from %2 to %3 Hz.")
                             .arg(orderName(last.orders[k].order, setup),
                                  hertz(first.orders[k].frequency_hz),
                                  hertz(last.orders[k].frequency_hz));
    }
    for (const Resonance& resonance : resonances(assessment))
        swings << Words::tr("%1 at %2 Hz")
                      .arg(inWords(resonance.words), hertz(resonance.frequency_hz));
    sentences << Words::tr("What can swing: %1.").arg(swings.join(QStringLiteral("; ")));
    const auto before = sentences.size();
    for (const Crossing& crossing : crossings)
        if (crossing.inCruise)
            sentences << crossingInWords(crossing, setup);
    if (sentences.size() == before)
        sentences << (assessment.cruise
                          ? Words::tr("No shake meets any of them inside the cruise window.")
                          : inWords(outsideCruiseInWords()) + u'.');
    sentences << hoverInWords(assessment.hover);
    return sentences.join(u' ');
}

QStringList pointInWords(const Setup& setup, const ThrottlePoint& point)
{
    QStringList lines{
        Words::tr("%1 % throttle, %2 rpm")
            .arg(QLocale().toString(kPercent * point.throttle, 'f', 1), rpm(point.speed_rpm))};
    for (const OrderPoint& order : point.orders)
        lines << Words::tr("%1: %2 Hz, %3 px, %4")
                     .arg(orderName(order.order, setup), hertz(order.frequency_hz),
                          pixels(order.wobble_px), gradeWord(setup.limits, order.wobble_px));
    return lines;
}

}  // namespace stillbay::ui
