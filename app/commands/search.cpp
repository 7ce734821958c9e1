// SPDX-License-Identifier: MIT
#include "app/commands/search.h"

#include "app/commands/arguments.h"
#include "app/commands/command.h"
#include "app/commands/save_craft.h"
#include "app/commands/search_json.h"
#include "app/commands/search_page.h"
#include "app/commands/terminal_progress.h"
#include "core/base/format.h"
#include "core/search/recommend.h"

#include <array>
#include <cmath>
#include <optional>
#include <string>
#include <utility>

namespace stillbay {
namespace {

constexpr double kMostCells = 501;
constexpr double kMostBuilds = 10000;             // some 10 s of one core
constexpr double kMostSeed = 9007199254740992.0;  // 2⁵³

struct SearchArguments {
    std::string file;
    std::string output;
    bool json = false, force = false;
    std::optional<bool> level;  // none: a planned craft whose elevation is not searched
    std::array<std::optional<VariableRange>, kVariableCount> ranges;  // by variable
    std::vector<StockTube> tubes;
    RecommendOptions options;

    std::optional<VariableRange>& of(Variable variable)
    {
        return ranges.at(static_cast<std::size_t>(variable));
    }
    const std::optional<VariableRange>& of(Variable variable) const
    {
        return ranges.at(static_cast<std::size_t>(variable));
    }
};

std::string takeRange(std::string_view value, Variable variable,
                      std::optional<VariableRange>& range)
{
    const VariableField field = fieldOf(variable);
    const auto given = parseNumbers(value, 2);
    if (!given ||
        !(field.min <= (*given)[0] && (*given)[0] <= (*given)[1] && (*given)[1] <= field.max))
        return formatted("wants A:B, not falling, between %g and %g", field.min, field.max) +
               (*field.unit ? std::string(" ") + field.unit : std::string());
    range = VariableRange{variable, (*given)[0], (*given)[1]};
    return {};
}

std::string useTubeOption(std::string_view value, std::vector<StockTube>& tubes)
{
    const auto given = parseNumbers(value, 3);
    if (!given)
        return "--tube wants OUTER:BORE:SHORE, diameters in mm";
    tubes.push_back({(*given)[0], (*given)[1], (*given)[2]});
    return {};
}

std::optional<std::size_t> parseCount(double value, double low, double high)
{
    if (!(value >= low && value <= high) || value != std::floor(value))
        return std::nullopt;
    return static_cast<std::size_t>(value);
}

std::string takeCount(std::string_view value, const char* complaint, double low, double high,
                      std::size_t& count)
{
    const auto given = parseNumbers(value, 1);
    const auto whole = given ? parseCount(given->front(), low, high) : std::nullopt;
    count = whole.value_or(count);
    return whole ? std::string() : std::string(complaint);
}

std::string takeCells(std::string_view value, SearchArguments& parsed)
{
    const auto given = parseNumbers(value, 2);
    const auto lengths = given ? parseCount((*given)[0], 2, kMostCells) : std::nullopt;
    const auto stretches = given ? parseCount((*given)[1], 2, kMostCells) : std::nullopt;
    if (!lengths || !stretches)
        return "--map wants N:M, two whole numbers between 2 and 501";
    parsed.options.across = *lengths;
    parsed.options.up = *stretches;
    return {};
}

constexpr CommandTexts kSearchTexts{
    "search", "stillbay search FILE [OPTION]...",
    "Prints the best tubes within limits for the craft in FILE, how robust they are, and the map "
    "of free length and stretch: a page for people, or an object for programs."};

// The exit code after the help or an error has been printed.
tl::expected<SearchArguments, int> parseSearch(std::span<const std::string_view> arguments,
                                               std::ostream& out, std::ostream& err)
{
    SearchArguments parsed;
    const auto range = [&parsed](Variable variable, const char* meaning) {
        const char* const name = rowOf(variable).option;
        return Option{name, "A:B", meaning, [=, &parsed](std::string_view value) {
                          const std::string wants = takeRange(value, variable, parsed.of(variable));
                          return wants.empty() ? wants : std::string(name) + ' ' + wants;
                      }};
    };
    std::size_t seed = parsed.options.search.seed;
    const std::array<Option, 18> options{{
        range(Variable::FreeLength,
              "Free lengths from A to B in mm. The default lies around the present one; A:A keeps "
              "a length, here as in all ranges."),
        range(Variable::Stretch,
              "Stretches from A to B, a plain ratio: 1.15 is 15 % longer than free. The default is "
              "from 1 to the tube's limit. In a drilled craft, what the mean stretch must stay "
              "within."),
        range(Variable::Elevation, "Search the tubes' elevation too, from A to B in degrees."),
        range(Variable::Height,
              "Search the height of the mount points too: all move together, their mean from A to "
              "B in mm above the centre plate's middle."),
        range(Variable::Direction,
              "Search the tubes' direction too, mirrored, from A to B in degrees off the "
              "fore-and-aft axis: 90 is sideways."),
        range(Variable::SpreadX,
              "Search how far the points lie apart fore and aft too: half the distance between "
              "mirrored ones, from A to B in mm."),
        range(Variable::SpreadY, "The same sideways."),
        range(Variable::BalanceX,
              "Search the place of the bay's heaviest part too: its middle from A to B in mm "
              "forward of the centre plate's middle."),
        range(Variable::BalanceZ, "The same upwards."),
        {"--tube", "OUTER:BORE:SHORE",
         "A tube to choose from: diameters in mm, hardness in Shore A. May be given up to 100 "
         "times. "
         "The default is the present tube.",
         [&](std::string_view value) {
             return useTubeOption(value, parsed.tubes);
         }},
        {"--map", "N:M",
         "How many free lengths and stretches the map has, 2 to 501. The default is 41:41.",
         [&](std::string_view value) {
             return takeCells(value, parsed);
         }},
        {"--builds", "N",
         "How many scattered builds of each candidate are computed, 10 to 10000. The default is "
         "256.",
         [&](std::string_view value) {
             return takeCount(value, "--builds wants a whole number between 10 and 10000", 10,
                              kMostBuilds, parsed.options.search.robustSamples);
         }},
        {"--seed", "N",
         "Seed of the scatter, a whole number from 0 to 2^53; the same seed gives the same answer. "
         "The default is 1.",
         [&](std::string_view value) {
             return takeCount(value, "--seed wants a whole number between 0 and 2^53", 0, kMostSeed,
                              seed);
         }},
        {"--level", "",
         "Hang every tune so that the bay rests where it is drawn: the default of a planned craft "
         "whose elevation is not searched.",
         [&](std::string_view) {
             parsed.level = true;
             return std::string();
         }},
        {"--no-level", "", "Leave the elevations as they are.",
         [&](std::string_view) {
             parsed.level = false;
             return std::string();
         }},
        outputOption("Write the craft with the most robust tune found to this file.",
                     parsed.output),
        forceOption(parsed.force),
        jsonOption(parsed.json),
    }};
    auto file = readArguments(kSearchTexts, arguments, options, out, err);
    if (!file)
        return tl::unexpected(file.error());
    parsed.file = *std::move(file);
    parsed.options.search.seed = seed;
    if (parsed.of(Variable::Elevation) && parsed.level.value_or(false))
        return tl::unexpected(usageError(
            err, "--level decides the elevation, which cannot be searched then", "--elevation"));
    return parsed;
}

// A drilled craft keeps its holes: its stretch is looked at, not set.
SearchSpace spaceOf(const Setup& setup, const SearchArguments& arguments)
{
    const bool isDrilled = setup.mounts.drilled();
    SearchSpace space;
    for (const Variable variable : kVariables) {
        const bool isUsual = variable == Variable::FreeLength || variable == Variable::Stretch;
        const std::optional<VariableRange>& given = arguments.of(variable);
        if (variable == Variable::Stretch && isDrilled)
            space.kept = given;
        else if (given || isUsual)
            space.variables.push_back(given.value_or(usualRange(setup, variable)));
    }
    space.stock = arguments.tubes;
    space.level = arguments.level.value_or(!isDrilled && !arguments.of(Variable::Elevation));
    return space;
}

}  // namespace

int runSearch(std::span<const std::string_view> arguments, std::ostream& out, std::ostream& err)
{
    const auto parsed = parseSearch(arguments, out, err);
    if (!parsed)
        return parsed.error();
    if (!parsed->output.empty() && !parsed->force && isThere(parsed->output))
        return reportError(err, alreadyThere(), parsed->output);
    const auto loaded = loadSetup(parsed->file);
    if (!loaded)
        return reportError(err, loaded.error(), parsed->file);
    reportWarnings(err, loaded->warnings, parsed->file);
    TerminalProgress terminal(err);
    const auto answer = recommend({loaded->setup, spaceOf(loaded->setup, *parsed)}, parsed->options,
                                  {}, terminal.of("seeking the best tune"));
    terminal.clear();
    if (!answer)
        return reportError(err, answer.error(), parsed->file);
    if (!parsed->output.empty()) {
        const std::vector<Candidate> rows = rowsOf(*answer);
        const Setup best = withDesign(loaded->setup, rows[mostRobustOf(rows)].design);
        if (const auto saved = saveCraft(best, parsed->output, parsed->force); !saved)
            return reportError(err, saved.error(), parsed->output);
    }
    return print(out, parsed->json ? searchJson(*answer) : searchPage(*answer), err);
}

}  // namespace stillbay
