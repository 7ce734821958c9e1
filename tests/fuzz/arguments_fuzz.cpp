// SPDX-License-Identifier: MIT
#include "app/commands/calibrate.h"
#include "app/commands/command.h"
#include "app/commands/film.h"
#include "app/commands/level.h"
#include "app/commands/report.h"
#include "app/commands/ringdown.h"
#include "app/commands/search.h"
#include "app/commands/sheet.h"
#include "app/commands/spectrum.h"
#include "app/commands/transfer.h"
#include "core/base/printable.h"
#include "tests/fuzz/demand.h"
#include "tests/fuzz/fuzz_folder.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <numbers>
#include <span>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

namespace {

using namespace stillbay;

using Arguments = std::vector<std::string>;
using Views = std::span<const std::string_view>;

int sheetWithoutPaper(Views arguments, std::ostream& out, std::ostream& err)
{
    const auto draw = [](const SheetOrder& order) -> Result<void> {
        demand(!order.output.empty() && std::isfinite(order.grip_mm), "a sheet that can be drawn");
        return {};
    };
    return runSheet(arguments, draw, out, err);
}

/// A command, and options before all others, which keep the default from computing for long.
struct Command {
    std::string_view name;
    int (*run)(Views arguments, std::ostream& out, std::ostream& err);
    Arguments before = {};
};

const std::array<Command, 9> kCommands{{
    {"report", runReport, {"--throttle", "0.3:0.5:0.1", "--frequency", "10:100:30"}},
    {"search",
     runSearch,
     {"--builds", "10", "--map", "2:2", "--free-length", "60:60", "--stretch", "1.1:1.1"}},
    {"level", runLevel},
    {"calibrate", runCalibrate},
    {"spectrum", runSpectrum},
    {"ringdown", runRingDown},
    {"transfer", runTransfer},
    {"film", runFilm},
    {"sheet", sheetWithoutPaper},
}};

// A recording of a decay, so short that it is read at once.
std::string shortLog()
{
    std::ostringstream text;
    text << "time (s),x (m/s2),y (m/s2),z (m/s2),throttle (%)\n";
    for (int k = 0; k < 400; ++k) {
        const double t = 0.005 * k, fall = std::exp(-2 * t);
        const double turn = 2 * std::numbers::pi * t;
        text << t << ',' << fall * std::cos(17 * turn) << ',' << 0.5 * fall * std::sin(23 * turn)
             << ',' << 9.8 + 0.3 * fall * std::cos(31 * turn) << ',' << 40 + k / 100 << '\n';
    }
    return text.str();
}

// A craft that no tube carries: its searches end soon.
std::string tooHeavy(const std::string& craft)
{
    auto json = nlohmann::ordered_json::parse(craft);
    json["bay"]["parts"][0]["mass_g"] = 20000;
    return json.dump();
}

FuzzFolder& folder()
{
    static const std::string craft = contentOfFile(STILLBAY_SAMPLES_DIR "/reedbed.stillbay");
    static FuzzFolder folder({{"craft.stillbay", craft},
                              {"heavy.stillbay", tooHeavy(craft)},
                              {"bare.stillbay", R"({"format":"stillbay-setup","version":1})"},
                              {"log.csv", shortLog()},
                              {"film.mp4", "no film"}});
    return folder;
}

// Up to each NUL, as the system hands a program its arguments. Without strokes they name nothing
// outside of the folder.
Arguments argumentsIn(std::string_view bytes)
{
    Arguments arguments;
    while (!bytes.empty()) {
        const std::size_t end = std::min(bytes.find('\0'), bytes.size());
        arguments.emplace_back(bytes.substr(0, end));
        std::ranges::replace(arguments.back(), '/', '_');
        bytes.remove_prefix(std::min(end + 1, bytes.size()));
    }
    return arguments;
}

// How many numbers "A:B:STEP" asks for.
double countIn(std::string_view grid)
{
    const auto given = parseNumbers(grid, 3, Percent::Allowed);
    return given ? ((*given)[1] - (*given)[0]) / (*given)[2] : 0;
}

bool isWide(std::string_view range)
{
    const auto given = parseNumbers(range, 2);
    return given && (*given)[0] < (*given)[1];
}

bool has(const Arguments& arguments, std::string_view word)
{
    return std::ranges::find(arguments, word) != arguments.end();
}

// Whether an answer would take a second or more, which teaches nothing about arguments.
bool takesLong(const Arguments& arguments)
{
    int wide = 0;
    for (std::size_t k = 1; k + 1 < arguments.size(); ++k) {
        const std::string &option = arguments[k], &value = arguments[k + 1];
        if ((option == "--throttle" || option == "--frequency") && countIn(value) > 50)
            return true;
        wide += option.starts_with("--") && isWide(value) ? 1 : 0;
    }
    return (arguments[0] == "search" && wide > 1) || has(arguments, "--builds") ||
           has(arguments, "--map") || has(arguments, "--uncertainty");
}

#if defined STILLBAY_IS_FUZZER || defined __SANITIZE_ADDRESS__ || defined __SANITIZE_THREAD__
// What takes long where a sanitizer makes all fifty times as slow.
bool takesLonger(const Arguments& arguments)
{
    const std::string& command = arguments[0];
    const bool isOfHeavy = has(arguments, "heavy.stillbay");
    const bool isWide = std::ranges::any_of(arguments, ::isWide);
    return (command == "report" && !has(arguments, "--json") && !has(arguments, "bare.stillbay")) ||
           (command == "search" && (isWide || !isOfHeavy)) || (command == "level" && isOfHeavy) ||
           has(arguments, "--tap-free") || (has(arguments, "--pluck") && has(arguments, "log.csv"));
}
#else
bool takesLonger(const Arguments& /*arguments*/)
{
    return false;
}
#endif

void demandSaid(int code, const std::string& out, const std::string& err)
{
    demand(code >= kExitDone && code <= kExitNoAnswer, "an exit code that is documented");
    demand(printablePage(out) == out && printablePage(err) == err, "no control characters");
    std::size_t lines = 0;
    std::istringstream text(err);
    for (std::string line; std::getline(text, line); ++lines)
        demand(line.starts_with("stillbay: "), "each error is one line");
    if (code == kExitUsage)
        demand(lines == 1 && out.empty(), "wrong usage is told in one line");
    if (code == kExitBadInput)
        demand(lines >= 1 && out.empty(), "bad input is told and nothing printed");
    if (out.starts_with('{'))
        demand(nlohmann::json::accept(out), "JSON that can be read");
}

// What was written is a whole craft that saves unchanged; after wrong usage nothing was.
void demandWritten(int code)
{
    for (const std::string& name : folder().changed()) {
        demand(code == kExitDone || code == kExitNoAnswer, "nothing is written after an error");
        const auto craft = loadSetup(name);
        demand(craft.has_value(), "a written craft can be read");
        demand(writeSetup(craft->setup) == contentOfFile(name), "a written craft saves unchanged");
    }
}

}  // namespace

/// Arguments with a NUL behind each, the first the command's word, in a folder with a craft, a bare
/// setup and a recording: an exit code that is documented, errors of one line each, and nothing
/// written but whole crafts.
// The name that libFuzzer calls.
// NOLINTNEXTLINE(readability-identifier-naming)
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    const Arguments given =
        argumentsIn({reinterpret_cast<const char*>(data), size});  // bytes as text
    const auto command = std::ranges::find_if(
        kCommands, [&](const Command& c) { return !given.empty() && c.name == given[0]; });
    if (command == kCommands.end() || takesLong(given) || takesLonger(given))
        return -1;  // not to be kept
    folder().enter();
    std::vector<std::string_view> arguments(command->before.begin(), command->before.end());
    arguments.insert(arguments.end(), given.begin() + 1, given.end());
    std::ostringstream out, err;
    const int code = command->run(arguments, out, err);
    demandSaid(code, out.str(), err.str());
    demandWritten(code);
    folder().restore();
    return 0;
}
