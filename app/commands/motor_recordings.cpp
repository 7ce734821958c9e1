// SPDX-License-Identifier: MIT
#include "app/commands/motor_recordings.h"

#include "app/commands/command.h"
#include "app/commands/recordings.h"
#include "core/calibrate/pluck.h"
#include "core/calibrate/shake_recording.h"
#include "core/calibrate/tap_recording.h"

#include <algorithm>
#include <cmath>

namespace stillbay {
namespace {

Option recordingOption(std::string_view name, std::string_view meaning, std::string& file)
{
    return {name, "RECORDING", meaning, [name, &file](std::string_view value) {
                file = value;
                return value.empty() ? std::string(name) + " wants the name of a file"
                                     : std::string();
            }};
}

std::string takeArm(std::string_view value, std::size_t& arm)
{
    const auto given = parseNumbers(value, 1);
    if (!given || given->front() != std::floor(given->front()) ||
        !(given->front() >= 1 && given->front() <= 1000))
        return "--arm wants the number of an arm, from 1";
    arm = static_cast<std::size_t>(given->front()) - 1;
    return {};
}

std::string takeHeld(std::string_view value, std::vector<HeldThrottle>& held)
{
    const auto parts = splitAtColons(value);
    if (value == "-") {
        held.emplace_back();
        return {};
    }
    const auto throttle = takeThrottle(parts[0]);
    const auto volt = parts.size() == 2 ? parseNumbers(parts[1], 1) : std::nullopt;
    if (!throttle || parts.size() > 2 || (parts.size() == 2 && !volt))
        return "--held wants THROTTLE or THROTTLE:VOLT, like 45% or 45%:15.4, or - for a stretch "
               "whose throttle is not known";
    held.push_back({throttle, volt ? std::optional(volt->front()) : std::nullopt});
    return {};
}

std::string takePlace(std::string_view value, Triple& place_mm)
{
    const auto given = parseNumbers(value, 3);
    if (!given)
        return "--sensor wants X:Y:Z, its place in mm";
    std::copy(given->begin(), given->end(), place_mm.begin());
    return {};
}

std::string takeSensorAxes(std::string_view value, std::optional<Matrix3d>& axes)
{
    axes = axesFromText(value);
    return axes ? std::string()
                : "--sensor-axes wants where x, y and z of the sensor point, such as x:y:z or "
                  "-y:x:z, right-handed";
}

}  // namespace

std::optional<double> takeThrottle(std::string_view text)
{
    const auto number = parseNumbers(text, 1, Percent::Allowed);
    return number ? std::optional(number->front()) : std::nullopt;
}

std::vector<std::string_view> splitAtColons(std::string_view text)
{
    std::vector<std::string_view> parts;
    for (std::size_t colon; (colon = text.find(':')) != std::string_view::npos;
         text.remove_prefix(colon + 1))
        parts.push_back(text.substr(0, colon));
    parts.push_back(text);
    return parts;
}

std::vector<Option> motorOptions(MotorRecordings& asked)
{
    return {
        recordingOption("--tap-recording",
                        "What a sensor near an arm's tip recorded while the arm was tapped up and "
                        "down and sideways, its motor on. In place of --tap.",
                        asked.tapped),
        {"--arm", "N", "Which arm it was, from 1. The default is the first.",
         [&asked](std::string_view value) {
             return takeArm(value, asked.arm);
         }},
        recordingOption("--speed-recording",
                        "A sound of the motors, or what a sensor on the airframe recorded, while "
                        "the throttle was held at three places or more, or opened slowly beside a "
                        "column of it. In place of --speed.",
                        asked.heard),
        {"--held", "THROTTLE[:VOLT]",
         "A throttle that was held in that recording, and the voltage under load; once for each "
         "stretch of steady speed, in order of time, - for one that is not known. The default is "
         "the recording's throttle column.",
         [&asked](std::string_view value) {
             return takeHeld(value, asked.held);
         }},
        recordingOption("--unbalance",
                        "What a sensor on the airframe recorded while the motors ran, a throttle "
                        "held or opened slowly. Corrects the unbalance of each motor where the "
                        "recording tells them apart, else the one they have in common; after all "
                        "that is measured besides.",
                        asked.shaken),
        {"--throttle", "THROTTLE", "The throttle of that recording, where it has no column of it.",
         [&asked](std::string_view value) {
             asked.throttle = takeThrottle(value);
             return asked.throttle ? std::string()
                                   : std::string("--throttle wants a throttle, like 40% or 0.4");
         }},
        {"--sensor", "X:Y:Z",
         "Where its sensor sat, in mm in the craft's axes. The default is the datum.",
         [&asked](std::string_view value) {
             return takePlace(value, asked.sensor_mm);
         }},
        {"--sensor-axes", "X:Y:Z",
         "Where the x, y and z of the sensor point that recorded arm or airframe, as for --axes. "
         "The default is what the columns' names say: forward, left, up.",
         [&asked](std::string_view value) {
             return takeSensorAxes(value, asked.axes);
         }},
    };
}

std::optional<RecordingFault> takeMotorRecordings(
    const MotorRecordings& asked, std::optional<double> rate_hz, const Setup& craft,
    const std::function<Result<void>(const Correction&)>& take, std::ostream& err)
{
    const auto taken =
        [&](const std::string& file,
            const std::function<Result<Correction>(const Recording&)>& correct) -> Result<void> {
        if (file.empty())
            return {};
        const auto recording = loadRecording(file, rate_hz);
        if (!recording)
            return tl::unexpected(recording.error());
        reportFlaws(err, *recording, file);
        return correct(*recording).and_then(take);
    };
    if (const auto done = taken(asked.tapped,
                                [&](const Recording& recording) {
                                    return tapOfRecording(craft, recording,
                                                          {.arm = asked.arm, .axes = asked.axes},
                                                          {.isHeld = !asked.isTappedFree});
                                });
        !done)
        return RecordingFault{done.error(), asked.tapped};
    if (const auto done = taken(asked.heard,
                                [&](const Recording& recording) {
                                    return speedOfRecording(craft, recording, asked.held);
                                });
        !done)
        return RecordingFault{done.error(), asked.heard};
    if (const auto done = taken(asked.shaken,
                                [&](const Recording& recording) {
                                    return unbalanceOfRecording(
                                        craft, recording,
                                        {.centre_mm = asked.sensor_mm, .axes = asked.axes},
                                        asked.throttle);
                                });
        !done)
        return RecordingFault{done.error(), asked.shaken};
    return std::nullopt;
}

}  // namespace stillbay
