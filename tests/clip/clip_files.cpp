// SPDX-License-Identifier: MIT
#include "tests/clip/clip_files.h"

#include "core/clip/child_process.h"

#include <gtest/gtest.h>

#include <cerrno>
#include <cmath>
#include <fstream>
#include <sys/wait.h>
#include <utility>

namespace stillbay {

namespace {

// What went wrong; empty: nothing did.
std::string runEncoder(const std::filesystem::path& file, std::vector<std::string> arguments)
{
    const auto tools = findDecoderTools();
    if (!tools)
        return complaint(tools);
    arguments.insert(arguments.begin(), {"-nostdin", "-loglevel", "level+error", "-y"});
    arguments.push_back("file:" + file.string());
    auto child = ChildProcess::start(tools->ffmpeg, arguments, errorsOnly);
    if (!child)
        return complaint(child);
    const auto ending = child->finish(patienceOf(600, {}));
    if (!ending)
        return complaint(ending);
    return ending->isGood() ? std::string() : "ffmpeg failed: " + child->lastWords();
}

}  // namespace

void makeClip(const std::filesystem::path& file, std::vector<std::string> arguments)
{
    const std::string wrong = runEncoder(file, std::move(arguments));
    ASSERT_TRUE(wrong.empty()) << wrong;
}

bool encodeFilm(const FilmGenerator& film, const std::filesystem::path& path, int crf)
{
    const FilmRecipe& r = film.recipe();
    const std::filesystem::path raw = path.string() + ".raw";
    if (!film.write(raw))
        return false;
    const std::string size = std::to_string(r.width) + "x" + std::to_string(r.height);
    const std::string rate = std::to_string(std::lround(1000 * r.frameRate_hz)) + "/1000";
    const std::string wrong = runEncoder(path, {"-f",          "rawvideo",
                                                "-pix_fmt",    "gray",
                                                "-video_size", size,
                                                "-framerate",  rate,
                                                "-i",          "file:" + raw.string(),
                                                "-c:v",        "libx264",
                                                "-preset",     "medium",
                                                "-bf",         "0",
                                                "-crf",        std::to_string(crf),
                                                "-pix_fmt",    "yuv420p"});
    std::filesystem::remove(raw);
    EXPECT_EQ(wrong, "");
    return wrong.empty();
}

std::filesystem::path makeScript(const std::filesystem::path& file, const std::string& lines)
{
    std::ofstream(file) << "#!/bin/sh\n" << lines << '\n';
    std::filesystem::permissions(file, std::filesystem::perms::owner_all);
    return file;
}

WholeClip wholeClip(const std::filesystem::path& file, const ClipFacts& facts,
                    const ClipOptions& options)
{
    WholeClip clip;
    auto stream = FrameStream::open(file, facts, options);
    if (!stream) {
        clip.error = stream.error();
        return clip;
    }
    for (;;) {
        const auto frame = stream->next();
        if (!frame) {
            clip.error = frame.error();
            break;
        }
        if (!*frame)
            break;
        clip.time_s.push_back((*frame)->time_s);
        clip.index.push_back((*frame)->index);
        clip.luma.emplace_back((*frame)->luma.begin(), (*frame)->luma.end());
    }
    clip.repeated = stream->repeated();
    clip.warnings = stream->warnings();
    return clip;
}

bool hasChildren()
{
    siginfo_t what = {};
    return ::waitid(P_ALL, 0, &what, WEXITED | WNOHANG | WNOWAIT) == 0 || errno != ECHILD;
}

}  // namespace stillbay
