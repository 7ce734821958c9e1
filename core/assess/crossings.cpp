// SPDX-License-Identifier: MIT
#include "core/assess/crossings.h"

#include "core/response/cruise.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace stillbay {
namespace {

// A stretch of the grid owns its far end, and its near end too when it is the first one: so a
// crossing on a point of the grid counts once.
bool crosses(double near_hz, double far_hz, double f_hz, bool first)
{
    return (near_hz < f_hz && f_hz <= far_hz) || (near_hz > f_hz && f_hz >= far_hz) ||
           (first && near_hz == f_hz && far_hz != f_hz);
}

}  // namespace

std::vector<Resonance> resonances(const Assessment& assessment)
{
    std::vector<Resonance> all;
    for (const ModeFigures& mode : assessment.flight)
        all.push_back({mode.frequency_hz, mode.text, false});
    if (assessment.arm_vertical_hz == assessment.arm_horizontal_hz) {
        all.push_back({assessment.arm_vertical_hz, phrase("arms swing"), true});
        return all;
    }
    all.push_back({assessment.arm_vertical_hz, phrase("arms swing up and down"), true});
    all.push_back({assessment.arm_horizontal_hz, phrase("arms swing sideways"), true});
    return all;
}

std::vector<Crossing> crossings(const Setup& setup, const Assessment& assessment)
{
    const CruiseWindow cruise(setup.flight);
    const std::vector<Resonance> met = resonances(assessment);
    std::vector<Crossing> found;
    for (std::size_t i = 1; i < assessment.throttle.size(); ++i) {
        const ThrottlePoint &a = assessment.throttle[i - 1], &b = assessment.throttle[i];
        for (std::size_t k = 0; k < a.orders.size(); ++k)
            for (const Resonance& resonance : met) {
                const OrderPoint &near = a.orders[k], &far = b.orders[k];
                const double f_hz = resonance.frequency_hz;
                if (!crosses(near.frequency_hz, far.frequency_hz, f_hz, i == 1))
                    continue;
                const double share =
                    (f_hz - near.frequency_hz) / (far.frequency_hz - near.frequency_hz);
                const double throttle = std::lerp(a.throttle, b.throttle, share);
                found.push_back(
                    {near.order, resonance, throttle, std::lerp(a.speed_rpm, b.speed_rpm, share),
                     std::lerp(near.wobble_px, far.wobble_px, share), cruise.contains(throttle)});
            }
    }
    std::stable_sort(found.begin(), found.end(),
                     [](const Crossing& a, const Crossing& b) { return a.throttle < b.throttle; });
    return found;
}

}  // namespace stillbay
