// SPDX-License-Identifier: MIT
#include "core/calibrate/rotors_heard.h"

#include "core/base/units.h"
#include "core/calibrate/sweep_readings.h"
#include "core/craft/craft.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace stillbay {
namespace {

constexpr double kTurnsInWindow = 8.5;
constexpr double kSlowestThrottle = 0.1, kSlower = 0.4, kFaster = 1.3;
constexpr double kColumnStep = 0.1;       // [s]
constexpr double kTurns = 1.0;            // [rev/s]; below it a rotor stands
constexpr double kAmbiguousMargin = 0.1;  // margin over a multiple of the speed
constexpr std::size_t kFewestHeld = 3;
constexpr double kFastestSweep = 0.05;  // [1/s] of the throttle
constexpr double kRotorLag = 0.1;       // [s] until a rotor has come to speed, about

double meanBetween(const Channel& channel, double rate, double from_s, double to_s)
{
    const std::size_t last = channel.values.size() - 1;
    const auto from = std::min(last, static_cast<std::size_t>(std::max(0.0, from_s) * rate));
    const auto to = std::min(last, static_cast<std::size_t>(std::max(0.0, to_s) * rate));
    double sum = 0;
    for (std::size_t k = from; k <= to; ++k)
        sum += channel.values[k];
    return sum / static_cast<double>(to - from + 1);
}

RotorSpeedTrack trackOfColumns(const std::vector<const Channel*>& columns, double rate)
{
    RotorSpeedTrack track;
    track.margin = 1;
    const double duration = static_cast<double>(columns[0]->values.size()) / rate;
    for (double from = 0; from + kColumnStep <= duration; from += kColumnStep) {
        double sum = 0, squares = 0;
        for (const Channel* const column : columns) {
            const double speed = meanBetween(*column, rate, from, from + kColumnStep);
            sum += speed;
            squares += speed * speed;
        }
        const auto count = static_cast<double>(columns.size());
        const double mean = sum / count;
        track.time.push_back(from + kColumnStep / 2);
        track.speed.push_back(mean);
        track.width.push_back(std::sqrt(std::max(0.0, squares / count - mean * mean)));
        track.quality.push_back(mean >= kTurns ? 1.0 : 0.0);
    }
    return track;
}

// The sound; else the acceleration that changes the most from one sample to the next.
const Channel* loudest(const Recording& recording)
{
    const Channel* best = nullptr;
    double most = 0;
    for (const Channel& channel : recording.channels) {
        if (channel.quantity == Quantity::Sound)
            return &channel;
        if (channel.quantity != Quantity::Acceleration)
            continue;
        double squares = 0;
        for (std::size_t k = 1; k < channel.values.size(); ++k)
            squares += std::pow(channel.values[k] - channel.values[k - 1], 2);
        if (!best || squares > most) {
            best = &channel;
            most = squares;
        }
    }
    return best;
}

Phrase stretchesText(const std::vector<SteadyStretch>& stretches)
{
    std::vector<Phrase> each;
    for (const SteadyStretch& stretch : stretches)
        each.push_back(phrase("%1 to %2 s at %3 rpm", rounded(stretch.from, 3),
                              rounded(stretch.to, 3), rounded(stretch.speed / unit::rpm, 4)));
    return listOf(std::move(each));
}

Warning speedMultiple()
{
    return {"speed-multiple",
            phrase("A multiple or a fraction of these speeds explains the recording nearly as "
                   "well: compare one with a counter, or with the speed at which the craft "
                   "hovers.")};
}

// How far a stretch's speed may be off: motors unlike each other, of which the louder counts more.
double speedSpreadOf(const std::vector<SteadyStretch>& stretches, double least)
{
    double most = least;
    for (const SteadyStretch& stretch : stretches)
        most = std::max(most, 0.5 * stretch.width / stretch.speed);
    return most;
}

// [1/s] the mean of how fast the throttle moves.
double pace(const Channel& throttle, double rate)
{
    const auto step = static_cast<std::size_t>(std::max(1.0, rate));
    double moved = 0;
    for (std::size_t k = step; k < throttle.values.size(); k += step)
        moved += std::abs(throttle.values[k] - throttle.values[k - step]);
    const double seconds = static_cast<double>((throttle.values.size() - 1) / step * step) / rate;
    return seconds > 0 ? moved / seconds : 0.0;
}

Result<void> takeHeld(HeldSpeeds& found, const std::vector<SteadyStretch>& stretches,
                      std::span<const HeldThrottle> held)
{
    if (held.size() != stretches.size())
        return fail(Errc::BadInput,
                    phrase("%1 throttles are given, but the speed was steady %2 times: %3",
                           whole(held.size()), whole(stretches.size()), stretchesText(stretches)));
    for (std::size_t k = 0; k < held.size(); ++k)
        if (held[k].throttle)
            found.readings.push_back({*held[k].throttle, stretches[k].speed, held[k].voltage});
    return {};
}

}  // namespace

RotorSpeedOptions rotorSpeedOptions(const Setup& setup, double rate, bool isSound)
{
    const ExcitedAirframe craft = makeExcitedAirframe(setup);
    RotorSpeedOptions options;
    options.isSound = isSound;
    options.blades = static_cast<std::size_t>(craft.blades);
    options.fastest = std::min(kFaster * rotorSpeed(craft.drive, 1.0, craft.fullVoltage),
                               rate / (2.2 * static_cast<double>(options.blades)));
    options.slowest =
        std::max(kTurnsInWindow / options.window,
                 kSlower * rotorSpeed(craft.drive, kSlowestThrottle, craft.fullVoltage));
    options.slowest = std::min(options.slowest, 0.5 * options.fastest);
    return options;
}

std::vector<const Channel*> speedColumns(const Recording& recording)
{
    std::vector<const Channel*> columns;
    for (const Channel& channel : recording.channels)
        if (channel.quantity == Quantity::RotorSpeed)
            columns.push_back(&channel);
    return columns;
}

const Channel* throttleColumn(const Recording& recording)
{
    const auto found =
        std::find_if(recording.channels.begin(), recording.channels.end(),
                     [](const Channel& channel) { return channel.quantity == Quantity::Throttle; });
    return found == recording.channels.end() ? nullptr : &*found;
}

Result<RotorSpeedTrack> rotorsHeard(const Setup& setup, const Recording& recording,
                                    const std::stop_token& stop)
{
    if (const auto columns = speedColumns(recording); !columns.empty()) {
        RotorSpeedTrack track = trackOfColumns(columns, recording.rate);
        if (std::none_of(track.quality.begin(), track.quality.end(),
                         [](double quality) { return quality > 0; }))
            return fail(Errc::NoAnswer, phrase("no rotor turns in this record"));
        return track;
    }
    const Channel* const channel = loudest(recording);
    if (!channel)
        return fail(Errc::BadInput, phrase("has no sound, acceleration or rotor speed"));
    return followRotorSpeed(
        channel->values, recording.rate,
        rotorSpeedOptions(setup, recording.rate, channel->quantity == Quantity::Sound), stop);
}

Result<HeldSpeeds> heldSpeeds(const Setup& setup, const Recording& recording,
                              std::span<const HeldThrottle> held, const std::stop_token& stop)
{
    const auto track = rotorsHeard(setup, recording, stop);
    if (!track)
        return tl::unexpected(track.error());
    const std::vector<SteadyStretch> stretches = steadyStretches(*track);
    const Channel* const throttle = throttleColumn(recording);
    HeldSpeeds found;
    if (stretches.empty() && (!held.empty() || !throttle))
        return fail(Errc::BadInput, phrase("The speed is never steady for as long as a throttle "
                                           "needs, one and a half seconds"));
    if (!held.empty()) {
        if (const auto taken = takeHeld(found, stretches, held); !taken)
            return tl::unexpected(taken.error());
    } else if (!throttle) {
        return fail(Errc::BadInput,
                    phrase("has no throttle column: say which throttle was held while the speed "
                           "was steady, %1",
                           stretchesText(stretches)));
    } else if (const double sweep = pace(*throttle, recording.rate);
               stretches.size() < kFewestHeld && sweep > 0 && sweep < kFastestSweep) {
        found.readings = speedReadings(throttle->values, recording.rate, speedOf(*track));
        found.options.throttleSpread = std::hypot(found.options.throttleSpread, kRotorLag * sweep);
    } else {
        for (const SteadyStretch& stretch : stretches)
            found.readings.push_back(
                {meanBetween(*throttle, recording.rate, stretch.from, stretch.to),
                 stretch.speed,
                 {}});
    }
    found.options.speedSpread = speedSpreadOf(stretches, found.options.speedSpread);
    if (track->margin < kAmbiguousMargin)
        found.warnings.push_back(speedMultiple());
    return found;
}

Result<Correction> speedOfRecording(const Setup& setup, const Recording& recording,
                                    std::span<const HeldThrottle> held, const std::stop_token& stop)
{
    const auto found = heldSpeeds(setup, recording, held, stop);
    if (!found)
        return tl::unexpected(found.error());
    auto correction = speedAtThrottle(setup, found->readings, found->options);
    if (!correction)
        return correction;
    correction->warnings.insert(correction->warnings.end(), found->warnings.begin(),
                                found->warnings.end());
    if (!found->warnings.empty() && correction->mark.quality == Quality::Good)
        correction->mark = {Quality::Fair,
                            phrase("a multiple of these speeds is nearly as likely")};
    return correction;
}

}  // namespace stillbay
