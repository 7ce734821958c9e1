// SPDX-License-Identifier: MIT
#include "core/calibrate/film_sound.h"

#include "core/base/quantile.h"
#include "core/base/units.h"
#include "core/calibrate/rotors_heard.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace stillbay {
namespace {

constexpr double kLeastHeard = 0.5;    // of all windows
constexpr double kMost = 0.95;         // share of the windows below the upper end
constexpr double kSoundSpread = 5e-3;  // of the speed: louder motors count more
constexpr double kSureMargin = 0.1;    // below it a multiple may be meant

Number rpmNumber(double speed)
{
    return fixed(speed / unit::rpm, 0);
}

}  // namespace

Result<SpeedOfRotors> rotorsOnFilm(const Setup& setup, const SoundTrack& sound,
                                   const std::stop_token& stop)
{
    const auto track = followRotorSpeed(sound.samples, sound.rate_hz,
                                        rotorSpeedOptions(setup, sound.rate_hz, true), stop);
    if (!track)
        return tl::unexpected(track.error());
    std::vector<double> speeds, widths;
    for (std::size_t n = 0; n < track->speed.size(); ++n)
        if (track->quality[n] >= kTurningQuality) {
            speeds.push_back(track->speed[n]);
            widths.push_back(track->width[n]);
        }
    if (static_cast<double>(speeds.size()) <
        std::max(1.0, kLeastHeard * static_cast<double>(track->speed.size())))
        return fail(Errc::NoAnswer, phrase("no rotor is heard for half of the film"));
    const double middle = median(speeds);
    const double low = *quantile(speeds, 1 - kMost), high = *quantile(speeds, kMost);
    if (high - low > 2 * kOrderWidth * middle)
        return fail(Errc::NoAnswer, phrase("the rotors are heard to turn at %1 to %2 rpm: name a "
                                           "part in which they turn steadily",
                                           rpmNumber(low), rpmNumber(high)));
    if (track->margin < kSureMargin)
        return fail(Errc::NoAnswer, phrase("a multiple or a fraction of %1 rpm explains the sound "
                                           "nearly as well",
                                           rpmNumber(middle)));
    return SpeedOfRotors{
        middle, std::max({kSoundSpread * middle, high - middle, middle - low, median(widths)})};
}

Result<HeardOnFilm> heardOnFilm(const Setup& setup, const Result<SoundTrack>& sound,
                                const std::stop_token& stop)
{
    const auto speed =
        sound.and_then([&](const SoundTrack& track) { return rotorsOnFilm(setup, track, stop); });
    if (stop.stop_requested())
        return tl::unexpected(stoppedOnRequest());
    if (speed)
        return HeardOnFilm{*speed, {}};
    return HeardOnFilm{
        {}, Warning{"film_sound", phrase("the sound settles no speed: %1", speed.error().what)}};
}

}  // namespace stillbay
