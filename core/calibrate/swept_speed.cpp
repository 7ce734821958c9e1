// SPDX-License-Identifier: MIT
#include "core/calibrate/swept_speed.h"

#include "core/calibrate/rotors_heard.h"
#include "core/craft/craft.h"

#include <algorithm>
#include <utility>
#include <vector>

namespace stillbay {
namespace {

constexpr std::size_t kMostFollowed = 3;
constexpr double kLeastSpeed = 17.0;  // [rev/s] that a window of half a second tells
constexpr double kSlowestOfComputed = 0.5, kFastestOfComputed = 1.35;

double computedSpeed(const ExcitedAirframe& craft, double throttle)
{
    return rotorSpeed(craft.drive, std::clamp(throttle, 0.0, 1.0), craft.fullVoltage);
}

// Not far from where the throttle puts the rotors.
RotorSpeedOptions optionsBy(const Setup& setup, const ExcitedAirframe& craft, double rate,
                            bool isSound, const Channel* throttle)
{
    RotorSpeedOptions options = rotorSpeedOptions(setup, rate, isSound);
    if (!throttle)
        return options;
    const auto [least, most] =
        std::minmax_element(throttle->values.begin(), throttle->values.end());
    const double fastest = kFastestOfComputed * computedSpeed(craft, *most);
    if (fastest > 2.0 * options.slowest)
        options.fastest = std::min(options.fastest, fastest);
    options.slowest =
        std::clamp(kSlowestOfComputed * computedSpeed(craft, *least),
                   std::min(kLeastSpeed, 0.5 * options.fastest), 0.5 * options.fastest);
    return options;
}

}  // namespace

std::optional<SweptSpeed> sweptSpeed(const Setup& setup, const Recording& recording,
                                     Quantity quantity, const std::stop_token& stop)
{
    SweptSpeed swept;
    swept.throttle = throttleColumn(recording);
    if (!speedColumns(recording).empty()) {
        const auto track = rotorsHeard(setup, recording, stop);
        if (!track)
            return {};
        swept.speed = swept.heard = speedOf(*track);
        return swept;
    }
    const ExcitedAirframe craft = makeExcitedAirframe(setup);
    const RotorSpeedOptions options =
        optionsBy(setup, craft, recording.rate, quantity == Quantity::Sound, swept.throttle);
    std::vector<RotorSpeedTrack> tracks;
    for (const Channel& channel : recording.channels)
        if (channel.quantity == quantity && tracks.size() < kMostFollowed)
            if (auto track = followRotorSpeed(channel.values, recording.rate, options, stop))
                tracks.push_back(*std::move(track));
    if (tracks.empty())
        return {};
    if (!swept.throttle) {
        swept.speed = swept.heard = speedOf(tracks.front());
        return swept;
    }
    auto heard = heardSpeed(tracks, swept.throttle->values, recording.rate,
                            [&](double throttle) { return computedSpeed(craft, throttle); });
    if (!heard)
        return {};
    swept.speed = std::move(heard->followed);
    swept.heard = std::move(heard->heard);
    return swept;
}

}  // namespace stillbay
