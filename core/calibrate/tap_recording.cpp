// SPDX-License-Identifier: MIT
#include "core/calibrate/tap_recording.h"

#include "core/airframe/tapped_arm.h"
#include "core/calibrate/axis_of_name.h"
#include "core/craft/craft.h"

#include <algorithm>
#include <cmath>

namespace stillbay {
namespace {

constexpr double kFarthestTone = 0.4;  // of a computed frequency, from it
// What even a clean record leaves: the sensor and its lead are on the arm.
constexpr double kLeastFrequencyDoubt = 0.001, kLeastLossDoubt = 0.03;

// Each column's direction, craft axes; none: not known.
std::vector<std::optional<Vector3d>> directionsOf(const Recording& recording,
                                                  const RingDown& ringDown,
                                                  const std::optional<Matrix3d>& axes)
{
    std::vector<std::optional<Vector3d>> directions;
    for (std::size_t k = 0; k < ringDown.channels.size(); ++k) {
        if (axes && ringDown.channels.size() == 3) {
            directions.emplace_back(axes->col(static_cast<Eigen::Index>(k)));
            continue;
        }
        const auto axis = axisOfName(recording.channels[ringDown.channels[k]].name);
        directions.emplace_back();
        if (axis)
            directions.back() = Vector3d::Unit(static_cast<Eigen::Index>(*axis));
    }
    return directions;
}

// Of a mode's motion, the share of its power that goes up and down.
double uprightShare(const DecayingMode& mode,
                    const std::vector<std::optional<Vector3d>>& directions)
{
    double up = 0, all = 0;
    for (std::size_t k = 0; k < directions.size(); ++k) {
        if (!directions[k])
            continue;
        const double power = std::norm(mode.shape[k]);
        all += power;
        up += power * directions[k]->z() * directions[k]->z();
    }
    return all > 0 ? up / all : 0.5;
}

std::optional<TappedMode> toneAlong(const RingDown& ringDown,
                                    const std::vector<std::optional<Vector3d>>& directions,
                                    double computed_hz, bool isVertical)
{
    const DecayingMode* best = nullptr;
    for (const DecayingMode& mode : ringDown.modes)
        if (std::abs(mode.frequency_hz / computed_hz - 1) < kFarthestTone &&
            (uprightShare(mode, directions) > 0.5) == isVertical &&
            (!best || mode.share > best->share))
            best = &mode;
    if (!best)
        return {};
    return TappedMode{best->frequency_hz, best->lossFactor,
                      std::max(best->frequencySpread, kLeastFrequencyDoubt),
                      std::max(best->lossSpread, kLeastLossDoubt)};
}

}  // namespace

Result<TappedArm> tappedArmOf(const Setup& setup, const Recording& recording,
                              const RingDown& ringDown, const TapSensor& sensor, bool isHeld)
{
    if (sensor.arm >= setup.airframe.arms.size())
        return fail(Errc::BadInput,
                    phrase("There is no arm %1, the craft has %2", whole(sensor.arm + 1),
                           whole(setup.airframe.arms.size())));
    const auto directions = directionsOf(recording, ringDown, sensor.axes);
    const auto isUpright = [](const std::optional<Vector3d>& direction) {
        return direction && std::abs(direction->z()) > 0.5;
    };
    const auto isLevel = [](const std::optional<Vector3d>& direction) {
        return direction && std::abs(direction->z()) <= 0.5;
    };
    if (std::none_of(directions.begin(), directions.end(), isUpright) &&
        std::none_of(directions.begin(), directions.end(), isLevel))
        return fail(Errc::BadInput, phrase("nothing says which way its columns measure: name them "
                                           "forward, left and up, or state the sensor's axes"));
    const auto computed =
        tappedFrequencies(makeExcitedAirframe(setup).airframe, sensor.arm, isHeld);
    if (!computed)
        return fail(Errc::NoAnswer, phrase("the arm as the craft has it does not ring"));
    const TappedArm tapped{sensor.arm, toneAlong(ringDown, directions, computed->vertical_hz, true),
                           toneAlong(ringDown, directions, computed->horizontal_hz, false)};
    if (!tapped.vertical && !tapped.horizontal) {
        std::vector<Phrase> heard;
        for (const DecayingMode& mode : ringDown.modes)
            heard.push_back(phrase("%1 Hz", rounded(mode.frequency_hz, 4)));
        return fail(Errc::NoAnswer,
                    phrase("It rings at %1, and the arm is computed to ring at %2 Hz up and down "
                           "and %3 Hz sideways: is it this arm, with its motor on?",
                           listOf(std::move(heard)), rounded(computed->vertical_hz, 4),
                           rounded(computed->horizontal_hz, 4)));
    }
    return tapped;
}

Result<Correction> tapOfRecording(const Setup& setup, const Recording& recording,
                                  const TapSensor& sensor, const TapOptions& options,
                                  const std::stop_token& stop)
{
    const auto rung = ringDown(recording, {.channels = sensor.channels}, stop);
    if (!rung)
        return tl::unexpected(rung.error());
    const auto tapped = tappedArmOf(setup, recording, *rung, sensor, options.isHeld);
    if (!tapped)
        return tl::unexpected(tapped.error());
    return tapTest(setup, std::span(&*tapped, 1), options);
}

}  // namespace stillbay
