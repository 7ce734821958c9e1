// SPDX-License-Identifier: MIT
#include "app/commands/film.h"

#include "app/commands/arguments.h"
#include "app/commands/command.h"
#include "app/commands/film_text.h"
#include "app/commands/motor_recordings.h"
#include "app/commands/read_film.h"
#include "app/commands/stop_on_interrupt.h"
#include "core/base/units.h"

#include <array>
#include <optional>
#include <string>
#include <utility>

namespace stillbay {
namespace {

constexpr double kLongestReadout_ms = 100;
constexpr double kLongestExposure_ms = 100;

struct FilmArguments {
    std::string file;
    std::optional<std::string> setup;
    std::optional<double> readout_ms, exposure_ms;
    ClipOptions part;
    std::optional<double> throttle;
    bool json = false;
};

constexpr CommandTexts kFilmTexts{
    "film", "stillbay film CLIP [OPTION]...",
    "Prints the vibration read from the rows of a film, each of which was exposed at a time of its "
    "own: the wobble, and the lines it is made of, with what noise alone would give and where the "
    "film is blind. Needs --readout or --setup, and the programs of the package ffmpeg.",
    "CLIP is a film as the camera wrote it, not stabilised, cut to another size or turned by a "
    "program."};

// From 0, or above it, to `high`.
Option numberOption(std::string_view name, std::string_view value, std::string_view meaning,
                    bool isZeroToo, double high, const std::function<void(double)>& take)
{
    return {name, value, meaning, [=](std::string_view text) {
                const auto given = parseNumbers(text, 1);
                const double number = given ? given->front() : -1;
                if (!(number >= 0 && number <= high && (number > 0 || isZeroToo)))
                    return std::string(name) + " wants a number " +
                           (isZeroToo ? "from 0 to " : "above 0 and up to ") +
                           std::to_string(static_cast<int>(high));
                take(number);
                return std::string();
            }};
}

// The exit code after the help or an error has been printed.
tl::expected<FilmArguments, int> parseFilm(std::span<const std::string_view> arguments,
                                           std::ostream& out, std::ostream& err)
{
    FilmArguments parsed;
    constexpr double kLongest_s = 86'400;
    const std::array<Option, 7> options{{
        numberOption("--readout", "MS",
                     "How long the sensor takes from the first row of a frame to the last, in ms. "
                     "The default is the setup's.",
                     false, kLongestReadout_ms, [&](double ms) { parsed.readout_ms = ms; }),
        numberOption("--exposure", "MS",
                     "How long each row was exposed, in ms. The default is the setup's, or else 0, "
                     "which takes fast lines as smaller than they are.",
                     true, kLongestExposure_ms, [&](double ms) { parsed.exposure_ms = ms; }),
        numberOption("--from", "S", "Leaves out what comes before this time, in seconds.", true,
                     kLongest_s, [&](double s) { parsed.part.from_s = s; }),
        numberOption("--to", "S", "Leaves out what comes after it.", true, kLongest_s,
                     [&](double s) { parsed.part.to_s = s; }),
        {"--setup", "FILE",
         "The craft it was filmed from: its camera's readout and exposure, the orders that explain "
         "the lines, and the speed of its rotors in the film's sound.",
         [&](std::string_view value) {
             parsed.setup = value;
             return value.empty() ? std::string("--setup wants a setup file") : std::string();
         }},
        {"--throttle", "THROTTLE", "The throttle it was filmed at, where it is known: 0.4 or 40%.",
         [&](std::string_view value) {
             parsed.throttle = takeThrottle(value);
             return parsed.throttle && *parsed.throttle > 0
                        ? std::string()
                        : std::string("--throttle wants one above 0 and up to 1");
         }},
        jsonOption(parsed.json),
    }};
    auto file = readArguments(kFilmTexts, arguments, options, out, err);
    if (!file)
        return tl::unexpected(file.error());
    parsed.file = *std::move(file);
    if (parsed.file == kStandardInput)
        return tl::unexpected(usageError(err, "a film is no standard input, name a file", "-"));
    if (!(parsed.part.to_s > parsed.part.from_s))
        return tl::unexpected(usageError(err, "--to comes after --from", parsed.file));
    if (parsed.throttle && !parsed.setup)
        return tl::unexpected(usageError(err, "--throttle needs --setup", kFilmTexts.form));
    if (!parsed.setup && !parsed.readout_ms)
        return tl::unexpected(usageError(err, "film wants --readout or --setup", kFilmTexts.form));
    return parsed;
}

}  // namespace

int runFilm(std::span<const std::string_view> arguments, std::ostream& out, std::ostream& err)
{
    const auto parsed = parseFilm(arguments, out, err);
    if (!parsed)
        return parsed.error();
    std::optional<Setup> setup;
    if (parsed->setup) {
        auto loaded = loadSetup(*parsed->setup);
        if (!loaded)
            return reportError(err, loaded.error(), *parsed->setup);
        reportWarnings(err, loaded->warnings, *parsed->setup);
        setup = std::move(loaded->setup);
    }

    FilmAsked asked{.file = parsed->file, .part = parsed->part, .throttle = parsed->throttle};
    asked.options.readout_s =
        parsed->readout_ms.value_or(setup ? setup->camera.readout_ms : 0.0) * unit::ms;
    asked.options.exposure_s =
        parsed->exposure_ms.value_or(setup ? setup->camera.exposure_ms : 0.0) * unit::ms;
    if (setup) {
        asked.setupFile = *parsed->setup;
        asked.setup = &*setup;
    }
    const StopOnInterrupt interrupt;
    const auto film = probeFilmFile(asked, interrupt.token()).and_then([&](ClipFacts facts) {
        return readFilmFile(asked, std::move(facts), interrupt.token(), err);
    });
    if (!film)
        return reportError(err, film.error().error, film.error().file);
    reportWarnings(err, warningsOf(*film), parsed->file);
    const FilmText text{*film, asked.options, setup ? setup->drive.propeller.blades : 0};
    return print(out, parsed->json ? filmJson(text) : filmPage(text), err);
}

}  // namespace stillbay
