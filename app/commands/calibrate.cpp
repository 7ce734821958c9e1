// SPDX-License-Identifier: MIT
#include "app/commands/calibrate.h"

#include "app/commands/arguments.h"
#include "app/commands/calibrate_json.h"
#include "app/commands/calibrate_page.h"
#include "app/commands/command.h"
#include "app/commands/film_clips.h"
#include "app/commands/motor_recordings.h"
#include "app/commands/recordings.h"
#include "app/commands/save_craft.h"
#include "core/assess/assess.h"
#include "core/base/format.h"
#include "core/base/units.h"
#include "core/calibrate/film_unbalance.h"
#include "core/calibrate/flight_notes.h"
#include "core/calibrate/hang.h"
#include "core/calibrate/pluck.h"
#include "core/calibrate/speed_at_throttle.h"
#include "core/calibrate/tap.h"
#include "core/setup/fields.h"

#include <algorithm>
#include <array>
#include <chrono>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

namespace stillbay {
namespace {

struct CalibrateArguments {
    std::string file, output;
    bool json = false;
    bool force = false;
    std::vector<HungMass> hung;
    std::string plucked;               // empty: no pluck
    std::vector<std::string> columns;  // empty: the usual
    std::optional<double> rate_hz;
    BaySensor sensor;
    std::optional<TappedArm> tapped;
    std::vector<SteadySpeed> speeds;
    MotorRecordings motors;
    std::vector<FilmClip> films;
    std::vector<FlightNote> notes;
};

constexpr CommandTexts kCalibrateTexts{
    "calibrate", "stillbay calibrate FILE [OPTION]...",
    "Prints which numbers of the craft in FILE a measurement corrects: before, after, how far each "
    "may still be off (one standard deviation), what stays unexplained, and how far the "
    "measurement can be relied on. Where it is not to be relied on, nothing is written and the "
    "exit code is 3."};

std::string takeHung(std::string_view value, std::vector<HungMass>& hung)
{
    const auto given = parseNumbers(value, 3);
    if (!given)
        return "--hang wants MASS_G:FREE_MM:LENGTH_MM, three numbers";
    hung.push_back({(*given)[0], (*given)[1], (*given)[2]});
    return {};
}

std::string takePhone(std::string_view value, BaySensor& sensor)
{
    const auto given = parseNumbers(value, 4);
    if (!given || (*given)[0] < 0)
        return "--phone wants MASS_G:X:Y:Z, its mass in g and its middle in mm";
    sensor.mass_g = (*given)[0];
    sensor.centre_mm = {(*given)[1], (*given)[2], (*given)[3]};
    return {};
}

std::string takePhoneSize(std::string_view value, BaySensor& sensor)
{
    const auto given = parseNumbers(value, 3);
    if (!given || !((*given)[0] > 0 && (*given)[1] > 0 && (*given)[2] > 0))
        return "--phone-size wants X:Y:Z in mm, each above 0";
    sensor.size_mm = {(*given)[0], (*given)[1], (*given)[2]};
    return {};
}

std::string takeAxes(std::string_view value, BaySensor& sensor)
{
    sensor.axes = axesFromText(value);
    return sensor.axes ? std::string()
                       : "--axes wants where x, y and z of the sensor point, such as x:y:z or "
                         "-y:x:z, right-handed";
}

std::string takeTap(std::string_view value, std::optional<TappedArm>& tapped)
{
    const auto given = parseNumbers(value, 3);
    if (!given)
        return "--tap wants VERTICAL_HZ:HORIZONTAL_HZ:LOSS, three numbers, 0 for what is not known";
    const auto mode = [&](double frequency_hz) {
        const double loss = (*given)[2];
        return frequency_hz == 0
                   ? std::nullopt
                   : std::optional(
                         TappedMode{frequency_hz, loss == 0 ? std::nullopt : std::optional(loss)});
    };
    tapped = TappedArm{0, mode((*given)[0]), mode((*given)[1])};
    return {};
}

std::string takeSpeed(std::string_view value, std::vector<SteadySpeed>& speeds)
{
    const std::string wanted =
        "--speed wants THROTTLE:RPM, or THROTTLE:RPM:VOLT, like 50%:5200:15.4";
    const auto parts = splitAtColons(value);
    if (parts.size() < 2 || parts.size() > 3)
        return wanted;
    const auto throttle = takeThrottle(parts[0]);
    const auto rpm = parseNumbers(parts[1], 1);
    const auto volt = parts.size() == 3 ? parseNumbers(parts[2], 1) : std::nullopt;
    if (!throttle || !rpm || (parts.size() == 3 && !volt))
        return wanted;
    speeds.push_back(
        {*throttle, rpm->front() * unit::rpm, volt ? std::optional(volt->front()) : std::nullopt});
    return {};
}

std::string takeNote(std::string_view value, std::vector<FlightNote>& notes)
{
    const std::string wanted = "--note wants FROM:TO:GRADE, clean, faint or bad, like 40%:47%:bad";
    const auto parts = splitAtColons(value);
    if (parts.size() != 3)
        return wanted;
    const auto from = takeThrottle(parts[0]), to = takeThrottle(parts[1]);
    const auto words = choiceOf<Seen>().words;
    const auto word = std::find(words.begin(), words.end(), parts[2]);
    if (!from || !to || word == words.end())
        return wanted;
    notes.push_back({.from = *from,
                     .to = *to,
                     .seen = static_cast<Seen>(word - words.begin()),
                     .note = {},
                     .extras = {}});
    return {};
}

// What the craft's flight notes say of its limits; without a number where there is nothing to move.
Result<Correction> notedLimits(const Setup& craft)
{
    const auto assessment = assess(craft);
    if (!assessment)
        return tl::unexpected(assessment.error());
    FlightNotesCheck check = checkFlightNotes(craft, assessment->curve);
    Correction correction = check.correction ? *std::move(check.correction) : Correction{};
    correction.measurement = phrase("flight notes");
    correction.mark = {Quality::Fair, flightNotesText(check)};
    for (const NoteCheck& note : check.notes)
        correction.warnings.push_back(
            {note.agrees ? "note-agrees" : "note-disagrees", noteText(note)});
    return correction;
}

// The exit code after the help or an error has been printed.
tl::expected<CalibrateArguments, int> parseCalibrate(std::span<const std::string_view> arguments,
                                                     std::ostream& out, std::ostream& err)
{
    CalibrateArguments parsed;
    std::vector<Option> options{
        {"--hang", "MASS_G:FREE_MM:LENGTH_MM",
         "A mass in g that hung on one tube, and the distance of two marks on the tube in mm, "
         "without and with it; once for each mass, at most five times. Corrects "
         "tube.youngs_modulus_mpa.",
         [&](std::string_view value) {
             return takeHung(value, parsed.hung);
         }},
        {"--pluck", "RECORDING",
         "What a sensor on the bay recorded while the bay was pushed and let go, the airframe "
         "clamped. Corrects tube.dynamic_ratio and tube.loss_factor, after the masses.",
         [&](std::string_view value) {
             parsed.plucked = value;
             return value.empty() ? std::string("--pluck wants the name of a file") : std::string();
         }},
        {"--column", "NAME",
         "A column of it to use, once for each. The default is every acceleration.",
         [&](std::string_view value) {
             parsed.columns.emplace_back(value);
             return std::string();
         }},
        rateOption(parsed.rate_hz),
        {"--phone", "MASS_G:X:Y:Z",
         "What recorded lay on the bay: its mass in g, its middle in mm in the craft's axes. The "
         "default is a sensor without mass.",
         [&](std::string_view value) {
             return takePhone(value, parsed.sensor);
         }},
        {"--phone-size", "X:Y:Z",
         "Its size in mm along the craft's axes. The default is a phone's, 70:150:8 along its own.",
         [&](std::string_view value) {
             return takePhoneSize(value, parsed.sensor);
         }},
        {"--axes", "X:Y:Z",
         "Where its own x, y and z point: x:y:z as the craft's, -y:x:z with its x to the right. "
         "Three columns of one kind are then taken as x, y and z. The default is not to read "
         "directions.",
         [&](std::string_view value) {
             return takeAxes(value, parsed.sensor);
         }},
        {"--tap", "VERTICAL_HZ:HORIZONTAL_HZ:LOSS",
         "First frequencies in Hz and loss factor of the first arm, tapped with its motor on and "
         "held by its root; 0 for what is not known. Corrects airframe.arm.",
         [&](std::string_view value) {
             return takeTap(value, parsed.tapped);
         }},
        {"--tap-free", "", "The craft was free while its arm was tapped.",
         [&](std::string_view) {
             parsed.motors.isTappedFree = true;
             return std::string();
         }},
        {"--speed", "THROTTLE:RPM[:VOLT]",
         "Rotor speed in rpm at a steady throttle, and the voltage under load; once for each "
         "throttle, three at least. Corrects KV and resistances, or drive.throttle_curve.",
         [&](std::string_view value) {
             return takeSpeed(value, parsed.speeds);
         }},
        {"--note", "FROM:TO:GRADE",
         "How the film looked between two throttles: clean, faint or bad; as often as you like. "
         "Joins flight.notes; corrects limits.",
         [&](std::string_view value) {
             return takeNote(value, parsed.notes);
         }},
    };
    for (Option& option : motorOptions(parsed.motors))
        options.push_back(std::move(option));
    options.push_back(filmOption(parsed.films));
    options.push_back(jsonOption(parsed.json));
    options.push_back(
        outputOption("Write the craft with the corrected numbers to this file; its "
                     "sources say where they come from.",
                     parsed.output));
    options.push_back(forceOption(parsed.force));
    auto file = readArguments(kCalibrateTexts, arguments, options, out, err);
    if (!file)
        return tl::unexpected(file.error());
    if (parsed.hung.empty() && parsed.plucked.empty() && !parsed.tapped && parsed.speeds.empty() &&
        parsed.notes.empty() && parsed.films.empty() && !parsed.motors.areAny())
        return tl::unexpected(usageError(err, "no measurement is given, see --help", "calibrate"));
    if (!parsed.films.empty() && parsed.films.size() < kFewestFilms)
        return tl::unexpected(usageError(
            err, "films at three throttles or more are needed, --film once for each", "--film"));
    parsed.file = *std::move(file);
    return parsed;
}

// The date in Greenwich, ISO 8601.
std::string today()
{
    using namespace std::chrono;
    const year_month_day date(floor<days>(system_clock::now()));
    return formatted("%04d-%02u-%02u", static_cast<int>(date.year()),
                     static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()));
}

// The pluck's columns, as indices.
Result<std::vector<std::size_t>> columnsOf(const Recording& recording,
                                           const std::vector<std::string>& names)
{
    std::vector<std::size_t> columns;
    for (const std::string& name : names) {
        const auto channel = chosenChannel(recording, name);
        if (!channel)
            return tl::unexpected(channel.error());
        columns.push_back(static_cast<std::size_t>(*channel - recording.channels.data()));
    }
    return columns;
}

/// What is to be printed.
struct Calibrated {
    Setup craft;  // corrected by all that is not poor
    std::vector<Correction> corrections;
    std::optional<PluckAnswer> pluck;
};

Result<void> take(Calibrated& calibrated, const Correction& correction)
{
    calibrated.corrections.push_back(correction);
    if (correction.mark.quality == Quality::Poor)
        return {};
    auto corrected = accept(calibrated.craft, correction, today());
    if (!corrected)
        return tl::unexpected(corrected.error());
    calibrated.craft = *std::move(corrected);
    return {};
}

Result<void> takePluck(Calibrated& calibrated, const CalibrateArguments& asked, std::ostream& err)
{
    const auto recording = loadRecording(asked.plucked, asked.rate_hz);
    if (!recording)
        return tl::unexpected(recording.error());
    reportFlaws(err, *recording, asked.plucked);
    auto columns = columnsOf(*recording, asked.columns);
    if (!columns)
        return tl::unexpected(columns.error());
    auto answer = pluckTest(calibrated.craft, *recording,
                            {.sensor = asked.sensor, .channels = *std::move(columns)});
    if (!answer)
        return tl::unexpected(answer.error());
    calibrated.pluck = *std::move(answer);
    return take(calibrated, calibrated.pluck->correction);
}

// Taps and speeds.
Result<void> takeReadings(Calibrated& calibrated, const CalibrateArguments& asked)
{
    const auto taking = [&calibrated](const Correction& correction) {
        return take(calibrated, correction);
    };
    Result<void> done;
    if (asked.tapped)
        done = tapTest(calibrated.craft, std::span(&*asked.tapped, 1),
                       {.isHeld = !asked.motors.isTappedFree})
                   .and_then(taking);
    if (done && !asked.speeds.empty())
        done = speedAtThrottle(calibrated.craft, asked.speeds).and_then(taking);
    return done;
}

Result<void> takeNotes(Calibrated& calibrated, const CalibrateArguments& asked)
{
    std::vector<FlightNote>& notes = calibrated.craft.flight.notes;
    notes.insert(notes.end(), asked.notes.begin(), asked.notes.end());
    const auto correction = notedLimits(calibrated.craft);
    if (!correction)
        return tl::unexpected(correction.error());
    return take(calibrated, *correction);
}

}  // namespace

int runCalibrate(std::span<const std::string_view> arguments, std::ostream& out, std::ostream& err)
{
    const auto parsed = parseCalibrate(arguments, out, err);
    if (!parsed)
        return parsed.error();
    if (!parsed->output.empty() && !parsed->force && isThere(parsed->output))
        return reportError(err, alreadyThere(), parsed->output);
    const auto loaded = loadSetup(parsed->file);
    if (!loaded)
        return reportError(err, loaded.error(), parsed->file);
    reportWarnings(err, loaded->warnings, parsed->file);

    Calibrated calibrated{.craft = loaded->setup};
    if (!parsed->hung.empty()) {
        const auto taken =
            hangTest(calibrated.craft, parsed->hung).and_then([&](const Correction& correction) {
                return take(calibrated, correction);
            });
        if (!taken)
            return reportError(err, taken.error(), parsed->file);
    }
    if (!parsed->plucked.empty())
        if (const auto taken = takePluck(calibrated, *parsed, err); !taken)
            return reportError(err, taken.error(), parsed->plucked);
    if (const auto taken = takeReadings(calibrated, *parsed); !taken)
        return reportError(err, taken.error(), parsed->file);
    if (const auto fault = takeMotorRecordings(
            parsed->motors, parsed->rate_hz, calibrated.craft,
            [&](const Correction& correction) { return take(calibrated, correction); }, err))
        return reportError(err, fault->error, fault->file);
    if (const auto fault = takeFilms(
            parsed->films, calibrated.craft, parsed->file,
            [&](const Correction& correction) { return take(calibrated, correction); }, err))
        return reportError(err, fault->error, fault->file);
    if (!parsed->notes.empty())
        if (const auto taken = takeNotes(calibrated, *parsed); !taken)
            return reportError(err, taken.error(), parsed->file);

    const auto poor = std::ranges::find_if(
        calibrated.corrections,
        [](const Correction& correction) { return correction.mark.quality == Quality::Poor; });
    const bool isPoor = poor != calibrated.corrections.end();
    if (!parsed->output.empty() && !isPoor)
        if (const auto saved = saveCraft(calibrated.craft, parsed->output, parsed->force); !saved)
            return reportError(err, saved.error(), parsed->output);
    const PluckAnswer* const pluck = calibrated.pluck ? &*calibrated.pluck : nullptr;
    const int code =
        print(out,
              parsed->json ? calibrateJson(calibrated.corrections, pluck)
                           : calibratePage(loaded->setup.name, calibrated.corrections, pluck),
              err);
    if (code != kExitDone)
        return code;
    return isPoor ? reportError(err, {Errc::NoAnswer, poor->mark.reason, {}}, parsed->file)
                  : kExitDone;
}

}  // namespace stillbay
