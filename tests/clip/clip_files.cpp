// SPDX-License-Identifier: MIT
#include "tests/clip/clip_files.h"

#include "core/clip/child_process.h"

#include <gtest/gtest.h>

#include <cerrno>
#include <fstream>
#include <sys/wait.h>

namespace stillbay {

void makeClip(const std::filesystem::path& file, std::vector<std::string> arguments)
{
    const auto tools = findDecoderTools();
    ASSERT_TRUE(tools) << complaint(tools);
    arguments.insert(arguments.begin(), {"-nostdin", "-loglevel", "level+error", "-y"});
    arguments.push_back("file:" + file.string());
    auto child = ChildProcess::start(tools->ffmpeg, arguments, errorsOnly);
    ASSERT_TRUE(child) << complaint(child);
    const auto ending = child->finish(patienceOf(60, {}));
    ASSERT_TRUE(ending && ending->isGood()) << child->lastWords();
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
