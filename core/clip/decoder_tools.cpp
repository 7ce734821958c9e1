// SPDX-License-Identifier: MIT
#include "core/clip/decoder_tools.h"

#include <cstdlib>
#include <optional>
#include <sys/stat.h>
#include <unistd.h>

namespace stillbay {
namespace {

// Forms that cameras and editors write, and sound alone, so that it can be told apart from what is
// no film at all. Not among them: pictures, play lists, texts, devices.
constexpr const char* kForms =
    "mov,mp4,m4a,3gp,3g2,mj2,matroska,webm,avi,mpegts,mpeg,mxf,asf,flv,ogg,nut,ivf,h264,hevc,m4v,"
    "wav,flac,mp3,aac";

std::optional<std::filesystem::path> programIn(std::string_view folders, const char* name)
{
    while (!folders.empty()) {
        const std::size_t end = std::min(folders.find(':'), folders.size());
        const std::string_view folder = folders.substr(0, end);
        folders.remove_prefix(std::min(end + 1, folders.size()));
        if (!folder.starts_with('/'))
            continue;
        std::filesystem::path program = std::filesystem::path(folder) / name;
        struct stat what = {};
        if (::stat(program.c_str(), &what) == 0 && S_ISREG(what.st_mode) &&
            ::access(program.c_str(), X_OK) == 0)
            return program;
    }
    return {};
}

tl::unexpected<Error> toolsMissing()
{
    return fail(Errc::BadInput,
                phrase("a film is read with the programs ffprobe and ffmpeg: install the package "
                       "ffmpeg, then try again"));
}

}  // namespace

Result<DecoderTools> findDecoderTools()
{
    const char* const folders = std::getenv("PATH");
    return findDecoderTools(folders == nullptr ? "/usr/bin:/bin" : folders);
}

Result<DecoderTools> findDecoderTools(std::string_view folders)
{
    auto probe = programIn(folders, "ffprobe");
    auto decoder = programIn(folders, "ffmpeg");
    if (!probe || !decoder)
        return toolsMissing();
    return DecoderTools{*std::move(probe), *std::move(decoder)};
}

std::vector<std::string> inputArguments(const std::filesystem::path& file)
{
    return {"-protocol_whitelist",  "file", "-format_whitelist", kForms, "-i",
            "file:" + file.string()};
}

LineUse errorsOnly(std::string_view line)
{
    const bool isError = line.find("[error]") != std::string_view::npos ||
                         line.find("[fatal]") != std::string_view::npos;
    return isError ? LineUse::Remember : LineUse::Ignore;
}

std::string plainWords(std::string_view line, const std::filesystem::path& file)
{
    while (line.starts_with('[')) {
        const std::size_t end = line.find("] ");
        if (end == std::string_view::npos)
            break;
        line.remove_prefix(end + 2);
    }
    const std::string name = "file:" + file.string() + ": ";
    if (line.starts_with(name))
        line.remove_prefix(name.size());
    while (line.ends_with('.') || line.ends_with(' '))
        line.remove_suffix(1);
    return std::string(line);
}

}  // namespace stillbay
