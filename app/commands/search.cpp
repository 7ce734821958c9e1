// SPDX-License-Identifier: MIT
#include "app/commands/search.h"

#include "app/commands/arguments.h"
#include "app/commands/command.h"
#include "app/commands/search_json.h"
#include "app/commands/search_page.h"
#include "core/base/format.h"
#include "core/search/known.h"

#include <array>
#include <cmath>
#include <optional>
#include <string>
#include <utility>

namespace stillbay {
namespace {

constexpr std::size_t kUsualCells = 41;  // along each side of the map
constexpr double kMostCells = 501;
constexpr double kMostBuilds = 100000;
constexpr double kMostSeed = 9007199254740992.0;  // 2⁵³

struct SearchArguments {
    std::string file;
    bool json = false;
    std::optional<KnobRange> length, stretch, elevation;
    std::vector<StockTube> tubes;
    std::size_t lengths = kUsualCells, stretches = kUsualCells;
    SearchOptions options;
};

std::string takeRange(std::string_view value, Knob knob, std::optional<KnobRange>& range)
{
    const KnobField field = fieldOf(knob);
    const auto given = parseNumbers(value, 2);
    if (!given ||
        !(field.min <= (*given)[0] && (*given)[0] < (*given)[1] && (*given)[1] <= field.max))
        return formatted("wants A:B, rising, between %g and %g", field.min, field.max) +
               (*field.unit ? std::string(" ") + field.unit : std::string());
    range = KnobRange{knob, (*given)[0], (*given)[1]};
    return {};
}

std::string takeTubeOption(std::string_view value, std::vector<StockTube>& tubes)
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
    parsed.lengths = *lengths;
    parsed.stretches = *stretches;
    return {};
}

constexpr CommandWords kWords{
    "search", "stillbay search FILE [OPTION]...",
    "Prints the best tubes within limits for the craft in FILE, how sturdy they are, and the map "
    "of free length and stretch: a page for people, or an object for programs."};

// The exit code after the help or an error has been printed.
tl::expected<SearchArguments, int> parse(std::span<const std::string_view> arguments,
                                         std::ostream& out, std::ostream& err)
{
    SearchArguments parsed;
    const auto range = [](const char* name, const char* meaning, Knob knob,
                          std::optional<KnobRange>& to) {
        return Option{name, "A:B", meaning, [=, &to](std::string_view value) {
                          const std::string wants = takeRange(value, knob, to);
                          return wants.empty() ? wants : std::string(name) + ' ' + wants;
                      }};
    };
    std::size_t seed = parsed.options.seed;
    const std::array<Option, 8> options{{
        range("--free-length",
              "Free lengths from A to B in mm. The default lies around the present one.",
              Knob::FreeLength, parsed.length),
        range("--stretch",
              "Stretches from A to B, a plain ratio: 1.15 is 15 % longer than free. The default is "
              "from 1 to the tube's limit. In a drilled craft, what the mean stretch must stay "
              "within.",
              Knob::Stretch, parsed.stretch),
        range("--elevation", "Search the tubes' elevation too, from A to B in degrees.",
              Knob::Elevation, parsed.elevation),
        {"--tube", "OUTER:BORE:SHORE",
         "A tube to choose from: diameters in mm, hardness in Shore A. May be given several times. "
         "The default is the present tube.",
         [&](std::string_view value) {
             return takeTubeOption(value, parsed.tubes);
         }},
        {"--map", "N:M",
         "How many free lengths and stretches the map has, 2 to 501. The default is 41:41.",
         [&](std::string_view value) {
             return takeCells(value, parsed);
         }},
        {"--builds", "N",
         "How many scattered builds of each candidate are computed, 10 to 100000. The default is "
         "256.",
         [&](std::string_view value) {
             return takeCount(value, "--builds wants a whole number between 10 and 100000", 10,
                              kMostBuilds, parsed.options.robustBuilds);
         }},
        {"--seed", "N",
         "Seed of the scatter, a whole number from 0 to 2^53; the same seed gives the same answer. "
         "The default is 1.",
         [&](std::string_view value) {
             return takeCount(value, "--seed wants a whole number between 0 and 2^53", 0, kMostSeed,
                              seed);
         }},
        {"--json", "", "Print JSON.",
         [&](std::string_view) {
             parsed.json = true;
             return std::string();
         }},
    }};
    auto file = readArguments(kWords, arguments, options, out, err);
    if (!file)
        return tl::unexpected(file.error());
    parsed.file = *std::move(file);
    parsed.options.seed = seed;
    return parsed;
}

// A drilled craft keeps its holes: its stretch is looked at, not turned.
SearchSpace spaceOf(const Setup& setup, const SearchArguments& arguments)
{
    const Design present = designOf(setup);
    const bool isDrilled = setup.mounts.drilled();
    SearchSpace space;
    space.knobs.push_back(arguments.length.value_or(usualRange(present, Knob::FreeLength)));
    if (isDrilled)
        space.kept = arguments.stretch;
    else
        space.knobs.push_back(arguments.stretch.value_or(usualRange(present, Knob::Stretch)));
    if (arguments.elevation)
        space.knobs.push_back(*arguments.elevation);
    space.stock = arguments.tubes;
    return space;
}

Result<DesignMap> mapAround(const Judge& judge, const Design& base, const SearchSpace& space,
                            const SearchArguments& arguments)
{
    const KnobRange& length = space.knobs[0];
    const MapAxis x{Knob::FreeLength, length.from, length.to, arguments.lengths};
    if (!base.mounts.drilled()) {
        const KnobRange& stretch = space.knobs[1];
        return mapDesigns(judge, base, x,
                          {Knob::Stretch, stretch.from, stretch.to, arguments.stretches});
    }
    const double drawn = valueOf(base, Knob::Stretch);
    auto map = mapDesigns(judge, base, x, {Knob::Stretch, drawn, drawn, 1});
    for (std::size_t i = 0; map && space.kept && i < x.count; ++i) {
        const double stretch = valueOf(map->design(base, i, 0), Knob::Stretch);
        if (!(stretch >= space.kept->from && stretch <= space.kept->to))
            map->cells[i] = {Objection::OutsideLimits, {}, {}};
    }
    return map;
}

// The map lies where the best one stands in what it does not turn. Where one of its points beats
// the best, the search goes on from there.
Result<SearchAnswer> answerOf(const Setup& setup, const SearchArguments& arguments)
{
    const SearchSpace space = spaceOf(setup, arguments);
    const Judge judge(setup);
    std::vector<Design> known = knownDesigns(judge, setup, space);
    auto found = findBest(setup, space, arguments.options, known);
    if (!found)
        return tl::unexpected(found.error());
    const Design base = found->best.design;
    const auto map = mapAround(judge, base, space, arguments);
    if (!map)
        return tl::unexpected(map.error());
    if (const auto best = map->best();
        best && map->cells[*best].isBetterThan(found->best.verdict)) {
        known.push_back(map->design(base, *best / map->y.count, *best % map->y.count));
        found = findBest(setup, space, arguments.options, known);
        if (!found)
            return tl::unexpected(found.error());
    }
    const Design present = designOf(setup);
    SearchAnswer answer{*std::move(found), {present, judge.judge(present), {}}, base, *map};
    const auto robust =
        robustness(Judge(setup, {}, Throttles::All), present, setup.limits.faint_px,
                   {.builds = arguments.options.robustBuilds, .seed = arguments.options.seed});
    if (!robust)
        return tl::unexpected(robust.error());
    answer.present.robust = *robust;
    return answer;
}

}  // namespace

int runSearch(std::span<const std::string_view> arguments, std::ostream& out, std::ostream& err)
{
    const auto parsed = parse(arguments, out, err);
    if (!parsed)
        return parsed.error();
    const auto loaded = loadSetup(parsed->file);
    if (!loaded)
        return reportError(err, loaded.error(), parsed->file);
    reportWarnings(err, loaded->warnings, parsed->file);
    const auto answer = answerOf(loaded->setup, *parsed);
    if (!answer)
        return reportError(err, answer.error(), parsed->file);
    return print(out, parsed->json ? searchJson(*answer) : searchPage(loaded->setup, *answer), err);
}

}  // namespace stillbay
