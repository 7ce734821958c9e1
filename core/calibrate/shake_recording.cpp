// SPDX-License-Identifier: MIT
#include "core/calibrate/shake_recording.h"

#include "core/base/quantile.h"
#include "core/base/units.h"
#include "core/calibrate/alias_warning.h"
#include "core/calibrate/motor_lines.h"
#include "core/calibrate/rotors_heard.h"
#include "core/calibrate/sweep_readings.h"
#include "core/calibrate/swept_speed.h"
#include "core/craft/craft.h"
#include "core/recording/orders.h"
#include "core/setup/sources.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <span>
#include <string>

namespace stillbay {
namespace {

constexpr double kAboveNoise = 4.0;     // power of a block that is used
constexpr double kShortestHeld = 2.0;   // [s]
constexpr double kLeastApart = 0.001;   // of the speed: motors are never more alike
constexpr double kMostApart = 0.02;     // what a comb makes of a speed that moves is no width
constexpr double kBeatsPerWidth = 3.5;  // independent moments a second, over the motors' spread
constexpr std::size_t kBlockTurns = 16;
constexpr double kPercents = 100;
constexpr double kMostHeld = 0.9;                         // of the record
constexpr double kLeastSwept = 0.05;                      // of throttle
constexpr double kModelItself = 0.1, kUnmeasured = 0.16;  // of the shake; for arms, and for tubes

bool isNumberMeasured(const Setup& setup, const char* key)
{
    const Source* const source = sourceOf(setup, key);
    return source && source->from == Origin::Measured;
}

/// The rotors through the record.
struct Rotors {
    std::optional<RotorSpeedTrack> track;  // none: computed from the throttle
    SpeedOverTime speed;
};

Result<Rotors> rotorsOf(const Setup& setup, const Recording& recording,
                        std::optional<double> throttle, const std::stop_token& stop)
{
    auto track = rotorsHeard(setup, recording, stop);
    if (track)
        return Rotors{*track, speedOf(*track)};
    if (stop.stop_requested())
        return tl::unexpected(track.error());
    const ExcitedAirframe craft = makeExcitedAirframe(setup);
    const auto speedAt = [&craft](double stick) {
        return rotorSpeed(craft.drive, std::clamp(stick, 0.0, 1.0), craft.fullVoltage);
    };
    if (const Channel* const column = throttleColumn(recording))
        return Rotors{{}, speedOf(column->values, recording.rate, speedAt)};
    if (!throttle)
        return tl::unexpected(track.error());
    return Rotors{{}, {{0, recording.duration()}, {speedAt(*throttle), speedAt(*throttle)}}};
}

// The throttle between two times; as stated where there is no column, and 0 where nothing is known.
double throttleBetween(const Recording& recording, std::optional<double> stated, double from_s,
                       double to_s)
{
    const Channel* const column = throttleColumn(recording);
    if (!column)
        return stated.value_or(0.0);
    const std::size_t last = column->values.size() - 1;
    const auto from = std::min(last, static_cast<std::size_t>(from_s * recording.rate));
    const auto to = std::min(last, static_cast<std::size_t>(to_s * recording.rate));
    double sum = 0;
    for (std::size_t k = from; k <= to; ++k)
        sum += column->values[k];
    return std::clamp(sum / static_cast<double>(to - from + 1), 0.0, 1.0);
}

// [rev/s] How unlike the motors turn, about.
double motorsApart(const Rotors& rotors, double time_s, double speed)
{
    const double least = kLeastApart * speed;
    if (!rotors.track)
        return least;
    const auto& times = rotors.track->time;
    const auto after = std::lower_bound(times.begin(), times.end(), time_s);
    return after == times.end()
               ? least
               : std::clamp(rotors.track->width[static_cast<std::size_t>(after - times.begin())],
                            least, kMostApart * speed);
}

// Of each motor where every steady stretch that tells them does; empty: none does.
Result<void> takeMotorLines(ShakeRecord& record, const Setup& setup, const Recording& recording,
                            const AirframeColumns& columns, const Rotors& rotors,
                            std::optional<double> throttle)
{
    RecordedAxes recorded{record.axes, {}, recording.rate};
    for (const Channel* const channel : columns.channels)
        recorded.values.emplace_back(channel->values);
    auto ofMotors = speedColumns(recording);
    if (ofMotors.size() != setup.airframe.arms.size())
        ofMotors.clear();
    for (const SteadyStretch& stretch : steadyStretches(*rotors.track, kShortestHeld)) {
        std::vector<double> speeds;
        for (const Channel* const column : ofMotors) {
            const std::span<const double> values(column->values);
            const auto from = static_cast<std::size_t>(stretch.from * recording.rate);
            const auto to =
                std::min(values.size(), static_cast<std::size_t>(stretch.to * recording.rate));
            double sum = 0;
            for (const double value : values.subspan(from, to - from))
                sum += value;
            speeds.push_back(sum / static_cast<double>(to - from));
        }
        const auto told =
            motorLines(setup, recorded, stretch, speeds,
                       throttleBetween(recording, throttle, stretch.from, stretch.to));
        if (!told)
            return tl::unexpected(told.error());
        if (!*told)
            continue;
        record.lines.insert(record.lines.end(), (*told)->begin(), (*told)->end());
        record.seconds += stretch.to - stretch.from;
    }
    return {};
}

// Blocks of all motors together.
Result<void> takeBlocks(ShakeRecord& record, const Setup& setup, const Recording& recording,
                        const AirframeColumns& columns, const Rotors& rotors,
                        std::optional<double> throttle)
{
    std::vector<OrderLines> felt;
    for (const Channel* const channel : columns.channels) {
        // Half a turn and one and a half hold nothing that turns: noise.
        auto lines = ordersOf(channel->values, recording.rate, rotors.speed,
                              {.orders = {1.0, 0.5, 1.5}, .turns = kBlockTurns});
        if (!lines) {
            lines.error().where = channel->name;
            return tl::unexpected(lines.error());
        }
        felt.push_back(*std::move(lines));
    }
    const auto count = static_cast<double>(felt.size());
    double apart = 0;
    for (std::size_t block = 0; block < felt[0].speed.size(); ++block) {
        double power = 0, noise = 0;
        for (const OrderLines& axis : felt) {
            power += std::pow(axis.lines[0].amplitude[block], 2);
            noise += 0.5 * (std::pow(axis.lines[1].amplitude[block], 2) +
                            std::pow(axis.lines[2].amplitude[block], 2));
        }
        if (!(power > kAboveNoise * noise))
            continue;
        const double from = felt[0].from[block], to = felt[0].to[block],
                     speed = felt[0].speed[block];
        ShakeLine line{.throttle = throttleBetween(recording, throttle, from, to),
                       .speed = speed,
                       .motor = {},
                       .acceleration = {},
                       .noise = std::sqrt(noise / 2 / count)};
        for (const OrderLines& axis : felt)
            line.acceleration.push_back(
                std::polar(axis.lines[0].amplitude[block], axis.lines[0].phase[block]));
        record.lines.push_back(std::move(line));
        record.seconds += (to - from) / 2;
        apart += motorsApart(rotors, from, speed);
    }
    if (record.lines.empty())
        return fail(Errc::NoAnswer, phrase("one tone a turn does not stand out of the noise"));
    record.options.arePhasesKnown = columns.axes.size() >= setup.airframe.arms.size();
    record.options.moments = std::max(
        1.0, kBeatsPerWidth * record.seconds * apart / static_cast<double>(record.lines.size()));
    return {};
}

bool isSwept(const Recording& recording)
{
    const Channel* const throttle = throttleColumn(recording);
    if (!throttle || throttle->values.empty())
        return false;
    // Where it turns the rotors, and not by how it gets there and back.
    std::vector<double> turning;
    std::ranges::copy_if(throttle->values, std::back_inserter(turning),
                         [](double value) { return value > kLeastSwept; });
    if (turning.empty())
        return false;
    const auto most = quantile(turning, kMostHeld), least = quantile(turning, 1 - kMostHeld);
    return *most - *least > kLeastSwept;
}

// All motors together at each per cent of the throttle, away from what the craft itself rings at;
// false: the rotors are not heard to follow the throttle.
Result<bool> takeSweep(ShakeRecord& record, const Setup& setup, const Recording& recording,
                       const AirframeColumns& columns, const Rotors& rotors,
                       const std::stop_token& stop)
{
    const auto swept = sweptSpeed(setup, recording, Quantity::Acceleration, stop);
    if (!swept)
        return false;
    std::vector<std::span<const double>> values;
    for (const Channel* const channel : columns.channels)
        values.emplace_back(channel->values);
    const auto lines = shakeReadings(values, swept->throttle->values, recording.rate, swept->speed);
    if (!lines)
        return tl::unexpected(lines.error());
    auto kept = awayFromTones(setup, columns.axes, *lines);
    if (!kept)
        return tl::unexpected(kept.error());
    record.read = lines->size();
    record.lines = *std::move(kept);
    const SpeedOverTime& speed = swept->speed;
    double turns = 0, apart = 0;
    for (std::size_t k = 0; k < speed.time.size(); ++k)
        if (speed.speed[k] > 0) {
            turns += 1;
            apart += motorsApart(rotors, speed.time[k], speed.speed[k]);
        }
    const double all_s = speed.time.empty() ? 0.0 : speed.time.back() - speed.time.front();
    record.seconds = all_s * turns / std::max<double>(1, static_cast<double>(speed.time.size()));
    const bool areArmsKnown = isNumberMeasured(setup, "airframe.arm.youngs_modulus_gpa"),
               areTubesKnown = isNumberMeasured(setup, "tube.youngs_modulus_mpa");
    record.areModesMeasured = areArmsKnown && areTubesKnown;
    record.options.arePhasesKnown = false;
    record.options.modelSpread = std::hypot(kModelItself, areArmsKnown ? 0.0 : kUnmeasured,
                                            areTubesKnown ? 0.0 : kUnmeasured);
    record.options.moments =
        std::max(1.0, kBeatsPerWidth * record.seconds * apart / std::max(turns, 1.0));
    return true;
}

Phrase recordText(const ShakeRecord& record)
{
    return phrase("airframe's vibration, %1 s", rounded(record.seconds, 2));
}

Warning modesNotMeasured()
{
    return {"shake-tones", phrase("The arms' and tubes' modes are not measured: hang test and "
                                  "tap test first make this more certain.")};
}

Warning speedFromThrottle()
{
    return {"speed-from-throttle",
            phrase("The rotors' speed cannot be followed in this recording: it is the craft's at "
                   "the recorded throttle. Correct the speed first.")};
}

}  // namespace

Result<ShakeRecord> shakeRecord(const Setup& setup, const Recording& recording,
                                const AirframeColumns& columns, std::optional<double> throttle,
                                const std::stop_token& stop)
{
    if (throttle && !(*throttle >= 0 && *throttle <= 1))
        return fail(Errc::BadInput, phrase("A throttle is %1 %, must be from 0 to 100 %",
                                           rounded(kPercents * *throttle, 4)));
    const auto rotors = rotorsOf(setup, recording, throttle, stop);
    if (!rotors)
        return tl::unexpected(rotors.error());
    ShakeRecord record;
    record.axes = columns.axes;
    record.isSpeedMeasured = rotors->track.has_value();
    record.fastest = throttle;
    if (const Channel* const column = throttleColumn(recording))
        record.fastest =
            std::clamp(*std::max_element(column->values.begin(), column->values.end()), 0.0, 1.0);
    if (rotors->track)
        if (const auto taken = takeMotorLines(record, setup, recording, columns, *rotors, throttle);
            !taken)
            return tl::unexpected(taken.error());
    if (record.lines.empty() && isSwept(recording)) {
        const auto taken = takeSweep(record, setup, recording, columns, *rotors, stop);
        if (!taken)
            return tl::unexpected(taken.error());
        record.isSpeedMeasured = record.isSpeedMeasured || *taken;
    }
    if (record.lines.empty())
        if (const auto taken = takeBlocks(record, setup, recording, columns, *rotors, throttle);
            !taken)
            return tl::unexpected(taken.error());
    return record;
}

Result<Correction> unbalanceOfColumns(const Setup& setup, const Recording& recording,
                                      const AirframeColumns& columns,
                                      std::optional<double> throttle, const std::stop_token& stop)
{
    const auto record = shakeRecord(setup, recording, columns, throttle, stop);
    if (!record)
        return tl::unexpected(record.error());
    auto correction = unbalanceTest(setup, record->axes, record->lines, record->options);
    if (!correction)
        return correction;
    correction->measurement = recordText(*record);
    if (!record->areModesMeasured)
        correction->warnings.insert(correction->warnings.begin(), modesNotMeasured());
    if (!record->isSpeedMeasured)
        correction->warnings.push_back(speedFromThrottle());
    if (auto folds = aliasWarning(setup, recording.rate, record->fastest))
        correction->warnings.push_back(*std::move(folds));
    if (2 * record->lines.size() < record->read)
        correction->mark = {
            Quality::Poor,
            phrase("only %1 of %2 readings agree with the craft's modes: do the tap and pluck "
                   "tests first",
                   whole(record->lines.size()), whole(record->read))};
    return correction;
}

Result<Correction> unbalanceOfRecording(const Setup& setup, const Recording& recording,
                                        const AirframeSensor& sensor,
                                        std::optional<double> throttle, const std::stop_token& stop)
{
    return airframeColumns(recording, sensor).and_then([&](const AirframeColumns& columns) {
        return unbalanceOfColumns(setup, recording, columns, throttle, stop);
    });
}

}  // namespace stillbay
