// SPDX-License-Identifier: MIT
#include "app/commands/level.h"

#include "app/commands/arguments.h"
#include "app/commands/command.h"
#include "app/commands/level_json.h"
#include "app/commands/level_page.h"
#include "app/commands/save_craft.h"
#include "core/craft/craft.h"

#include <array>
#include <optional>
#include <string>
#include <utility>

namespace stillbay {
namespace {

struct LevelArguments {
    std::string file, output;
    bool json = false;
    bool force = false;  // replace what is there
};

constexpr CommandTexts kLevelTexts{
    "level", "stillbay level FILE [OPTION]...",
    "Prints how each tube must be hung so that the bay rests where it is drawn, to within 0.1 mm "
    "and 0.1°: while planning the elevation and the stretch of each tube, the mean stretch kept; "
    "in a drilled craft the free length of each. Where nothing makes it rest there, the nearest is "
    "printed, with what stays and why, and the exit code is 3."};

// The exit code after the help or an error has been printed.
tl::expected<LevelArguments, int> parseLevel(std::span<const std::string_view> arguments,
                                             std::ostream& out, std::ostream& err)
{
    LevelArguments parsed;
    const std::array<Option, 3> options{{
        jsonOption(parsed.json),
        outputOption(
            "Write the craft hung like that to this file, the nearest where nothing is level.",
            parsed.output),
        forceOption(parsed.force),
    }};
    auto file = readArguments(kLevelTexts, arguments, options, out, err);
    if (!file)
        return tl::unexpected(file.error());
    parsed.file = *std::move(file);
    return parsed;
}

std::optional<Pose> presentRest(const Setup& setup)
{
    const auto mounted = makeMountedBay(setup);
    const auto pose =
        mounted ? restPose(mounted->suspension, 1.0) : tl::unexpected(mounted.error());
    return pose ? std::optional(*pose) : std::nullopt;
}

}  // namespace

int runLevel(std::span<const std::string_view> arguments, std::ostream& out, std::ostream& err)
{
    const auto parsed = parseLevel(arguments, out, err);
    if (!parsed)
        return parsed.error();
    if (!parsed->output.empty() && !parsed->force && isThere(parsed->output))
        return reportError(err, alreadyThere(), parsed->output);
    auto loaded = loadSetup(parsed->file);
    if (!loaded)
        return reportError(err, loaded.error(), parsed->file);
    reportWarnings(err, loaded->warnings, parsed->file);
    Setup& setup = loaded->setup;
    auto levelled = level(setup);
    if (!levelled)
        return reportError(err, levelled.error(), parsed->file);
    const LevelAnswer answer{setup.name, presentRest(setup), *std::move(levelled)};
    if (!parsed->output.empty()) {
        setup.mounts = answer.levelled.mounts;
        if (const auto saved = saveCraft(setup, parsed->output, parsed->force); !saved)
            return reportError(err, saved.error(), parsed->output);
    }
    const int code = print(out, parsed->json ? levelJson(answer) : levelPage(answer), err);
    return code == kExitDone && answer.levelled.why ? kExitNoAnswer : code;
}

}  // namespace stillbay
