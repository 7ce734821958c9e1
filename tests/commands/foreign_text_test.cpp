// SPDX-License-Identifier: MIT
// Names and arguments that would move a terminal's cursor or turn its text round.
#include "app/commands/calibrate.h"
#include "app/commands/command.h"
#include "app/commands/film.h"
#include "app/commands/level.h"
#include "app/commands/report.h"
#include "app/commands/ringdown.h"
#include "app/commands/search.h"
#include "app/commands/spectrum.h"
#include "app/commands/transfer.h"
#include "core/base/printable.h"
#include "tests/commands/changed_sample.h"
#include "tests/commands/output_folder.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

namespace stillbay {
namespace {

// Colours, a forged line, a bell, a turned direction, an 8-bit control sequence.
const std::string kHostile =
    "x\x1b[31m\nstillbay: all is well\a\r\u202Egpj.exe\u2066\xC2\x9B"
    "2J\x7f";

using Arguments = std::vector<std::string_view>;

struct Said {
    int code = 0;
    std::string out, err;
};

template <class Command>
Said said(Command command, const Arguments& arguments)
{
    std::ostringstream out, err;
    const int code = command(arguments, out, err);
    return {code, out.str(), err.str()};
}

// What a terminal takes without doing anything but to show it.
bool isHarmless(const std::string& text)
{
    return printablePage(text) == text;
}

std::size_t linesOf(const std::string& text)
{
    return static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n'));
}

// Oracle: definition; each error is one harmless line, whatever the argument.
TEST(ForeignText, OfArgumentsIsToldInOneLine)
{
    const std::string option = "--" + kHostile, broken =
                                                    "Gr\xF6\xDF"
                                                    "e.stillbay";
    for (const Said& answer :
         {said(runReport, {kHostile}), said(runReport, {kReedbed, option}),
          said(runReport, {kReedbed, "--throttle", kHostile}), said(runReport, {broken}),
          said(runSearch, {kReedbed, "--builds", kHostile}), said(runLevel, {kHostile}),
          said(runSpectrum, {kHostile}), said(runRingDown, {broken}),
          said(runTransfer, {broken, "--input", kHostile, "--output", "b"})}) {
        EXPECT_GT(answer.code, 0);
        EXPECT_EQ(answer.out, "");
        EXPECT_EQ(linesOf(answer.err), 1U) << printable(answer.err);
        EXPECT_TRUE(isHarmless(answer.err)) << printable(answer.err);
    }
    EXPECT_NE(said(runReport, {broken})
                  .err.find("Gr\\xf6\\xdf"
                            "e.stillbay"),
              std::string::npos);
}

// Oracle: the same page of a craft with plain names: as many lines, none of them forged.
TEST(ForeignText, OfACraftIsToldInPagesAndLeavesJsonValid)
{
    const auto named = [](const std::string& name) {
        return [name](nlohmann::ordered_json& json) {
            json["name"] = name;
            json["airframe"]["parts"][0]["name"] = name;
            json["bay"]["parts"][0]["name"] = name;
            json["tunes"] = nlohmann::ordered_json::array(
                {{{"name", name}, {"tube", json["tube"]}, {"mounts", json["mounts"]}}});
            json[name] = 1;  // a key that no version knows
        };
    };
    Said plain, hostile, json, level, levelJson;
    {
        const ChangedSample craft(named("plain"));
        plain = said(runReport, {craft.path()});
    }
    {
        const ChangedSample craft(named(kHostile));
        hostile = said(runReport, {craft.path()});
        json = said(runReport, {craft.path(), "--json"});
        level = said(runLevel, {craft.path()});
        levelJson = said(runLevel, {craft.path(), "--json"});
    }
    ASSERT_EQ(hostile.code, 0) << hostile.err;
    for (const Said& answer : {hostile, json, level, levelJson}) {
        EXPECT_TRUE(isHarmless(answer.out)) << printable(answer.out);
        EXPECT_TRUE(isHarmless(answer.err)) << printable(answer.err);
        EXPECT_EQ(linesOf(answer.err), linesOf(plain.err)) << answer.err;
    }
    EXPECT_EQ(hostile.out.find("\nstillbay:"), std::string::npos);
    EXPECT_TRUE(nlohmann::json::accept(json.out));
    EXPECT_TRUE(nlohmann::json::accept(levelJson.out));
}

// Oracle: the format. What is not UTF-8 has no place in JSON; the rest comes back as it was.
TEST(ForeignText, OfColumnsIsToldAndLeavesJsonValid)
{
    const OutputFolder folder;
    const std::string path = folder.path("log.csv");
    {
        std::ofstream log(path, std::ios::binary);
        log << "time [s],\"ax \x1b[31m\u202E [m/s²]\",\"Gr\xF6\xDF"
               "e\"\n";
        for (int i = 0; i < 4000; ++i)
            log << i * 1e-3 << ',' << (i * 7919 % 101) - 50 << ',' << (i * 104729 % 89) - 44
                << '\n';
    }
    for (const Arguments& arguments :
         {Arguments{path}, Arguments{path, "--json"}, Arguments{path, "--column", "none such"}}) {
        const Said answer = said(runSpectrum, arguments);
        EXPECT_TRUE(isHarmless(answer.out)) << printable(answer.out);
        EXPECT_TRUE(isHarmless(answer.err)) << printable(answer.err);
        EXPECT_EQ(answer.code, arguments.size() == 3 ? 1 : 0) << answer.err;
        EXPECT_TRUE(arguments.size() != 2 || nlohmann::json::accept(answer.out));
    }
    const Said named = said(runSpectrum, {path, "--json", "--column", "Größe"});  // as Latin-1 is
    EXPECT_EQ(named.code, 0) << named.err;
    EXPECT_TRUE(nlohmann::json::accept(named.out)) << printable(named.out);
}

// What the programs that read a film say of it, and its name.
TEST(ForeignText, OfFilmsIsToldInOneLine)
{
    const OutputFolder folder;
    const std::string film = folder.path(("film" + kHostile.substr(1, 5) + ".mp4").c_str());
    std::ofstream(film, std::ios::binary) << "no film";
    for (const char* const program : {"ffprobe", "ffmpeg"}) {
        std::ofstream(folder.path(program))
            << "#!/bin/sh\nprintf '[error] \\033[31mred\\a\\rstillbay: all is well\\302\\233 "
               "2J\\n' >&2\n"
               "exit 1\n";
        std::filesystem::permissions(folder.path(program), std::filesystem::perms::owner_all);
    }
    const std::string craft = STILLBAY_SAMPLES_DIR "/reedbed.stillbay";
    const char* const before = std::getenv("PATH");
    const std::string path = before ? before : "/usr/bin:/bin";
    ::setenv("PATH", (folder.path("") + ":" + path).c_str(), 1);
    const Said read = said(runFilm, {film, "--readout", "16"});
    const Said matched = said(runCalibrate, {craft, "--film", film});
    ::setenv("PATH", path.c_str(), 1);
    for (const Said& answer : {read, matched}) {
        EXPECT_NE(answer.code, 0);
        EXPECT_TRUE(answer.err.starts_with("stillbay: ")) << printable(answer.err);
        EXPECT_EQ(linesOf(answer.err), 1U) << printable(answer.err);
        EXPECT_TRUE(isHarmless(answer.err)) << printable(answer.err);
        EXPECT_TRUE(answer.out.empty());
    }
    EXPECT_NE(read.err.find("red"), std::string::npos) << "what the program said is told";
}

}  // namespace
}  // namespace stillbay
