// SPDX-License-Identifier: MIT
#include "ui/charts/campbell_text.h"

#include "core/assess/texts.h"
#include "core/base/units.h"
#include "core/response/at_throttle.h"
#include "ui/charts/point_text.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/quantity.h"

#include <QCoreApplication>
#include <QLocale>

#include <algorithm>

namespace stillbay::ui {
namespace {

constexpr double kLeast_px = 0.01;  // below, the number tells nothing

struct Texts {
    Q_DECLARE_TR_FUNCTIONS(stillbay::ui::CampbellChart)
};

QString rpm(double speed_rpm)
{
    return QLocale().toString(speed_rpm, 'f', 0);
}

QString pixelNumber(double wobble_px)
{
    return wobble_px < kLeast_px ? Texts::tr("less than %1").arg(QLocale().toString(kLeast_px))
                                 : QLocale().toString(wobble_px, 'g', 2);
}

QString orderOf(int order, const Setup& setup)
{
    return displayText(orderText(order, setup.drive.propeller.blades));
}

}  // namespace

QString hertz(double f_hz)
{
    return QLocale().toString(f_hz, 'f', f_hz < 10.0 ? 1 : 0);
}

QString crossingText(const Crossing& crossing, const Setup& setup)
{
    return Texts::tr("At %1 % throttle (%2 rpm) %3 meets %4 Hz (%5): %6 px, %7.")
        .arg(percentNumber(crossing.throttle), rpm(crossing.speed_rpm),
             orderOf(crossing.order, setup), hertz(crossing.met.frequency_hz),
             displayText(crossing.met.text), pixelNumber(crossing.wobble_px),
             gradeWord(setup.limits, crossing.wobble_px));
}

QString hoverText(const HoverFigures& hover)
{
    if (!hover.throttle_full)
        return Texts::tr("The pack cannot hold this craft in the air.");
    if (!hover.throttle_empty)
        return Texts::tr(
                   "Hover is at %1 rpm: %2 % throttle on a full pack; an empty one cannot hold the "
                   "craft.")
            .arg(rpm(hover.speed_rpm), percentNumber(*hover.throttle_full));
    return Texts::tr("Hover is at %1 rpm: %2 % throttle on a full pack, %3 % on an empty one.")
        .arg(rpm(hover.speed_rpm), percentNumber(*hover.throttle_full),
             percentNumber(*hover.throttle_empty));
}

double worstOf_px(const std::vector<Crossing>& crossings)
{
    double worst_px = 0.0;
    for (const Crossing& crossing : crossings)
        worst_px = std::max(worst_px, crossing.wobble_px);
    return worst_px;
}

QString ringedText(const std::vector<Crossing>& ringed, const Limits& limits)
{
    if (ringed.empty())
        return Texts::tr("No crossing in cruise");
    const QString count = QLocale().toString(static_cast<qulonglong>(ringed.size()));
    const double worst_px = worstOf_px(ringed);
    switch (gradeOf(worst_px, limits.faint_px, limits.bad_px)) {
        case Grade::Clean:
            return Texts::tr("Crossings in cruise: %1, none shows").arg(count);
        case Grade::Faint:
            return Texts::tr("Crossings in cruise: %1, faint up to %2 px")
                .arg(count, pixelNumber(worst_px));
        case Grade::Bad:
            break;
    }
    return Texts::tr("Crossings in cruise: %1, bad up to %2 px").arg(count, pixelNumber(worst_px));
}

QString speedsText(const Setup& setup, const Assessment& assessment,
                   const std::vector<Crossing>& ringed)
{
    QStringList sentences, swings;
    if (!assessment.throttle.empty()) {
        const ThrottlePoint &first = assessment.throttle.front(),
                            &last = assessment.throttle.back();
        for (std::size_t k = 0; k < last.orders.size(); ++k)
            sentences << Texts::tr("The %1 runs from %2 to %3 Hz.")
                             .arg(orderOf(last.orders[k].order, setup),
                                  hertz(first.orders[k].frequency_hz),
                                  hertz(last.orders[k].frequency_hz));
    }
    for (const Resonance& resonance : resonances(assessment))
        swings << Texts::tr("%1 at %2 Hz")
                      .arg(displayText(resonance.text), hertz(resonance.frequency_hz));
    sentences << Texts::tr("What can swing: %1.").arg(swings.join(QStringLiteral("; ")));
    const auto before = sentences.size();
    for (const Crossing& crossing : ringed)
        sentences << crossingText(crossing, setup);
    if (sentences.size() == before)
        sentences << (assessment.cruise
                          ? Texts::tr("No order meets any of them inside the cruise window.")
                          : displayText(outsideCruiseText()) + u'.');
    sentences << hoverText(assessment.hover);
    return sentences.join(u' ');
}

QStringList pointText(const Setup& setup, const ThrottlePoint& point)
{
    QStringList lines{
        Texts::tr("%1 % throttle, %2 rpm")
            .arg(QLocale().toString(kPercent * point.throttle, 'f', 1), rpm(point.speed_rpm))};
    for (const OrderPoint& order : point.orders)
        lines << Texts::tr("%1: %2 Hz, %3 px, %4")
                     .arg(orderOf(order.order, setup), hertz(order.frequency_hz),
                          pixelNumber(order.wobble_px), gradeWord(setup.limits, order.wobble_px));
    return lines;
}

}  // namespace stillbay::ui
