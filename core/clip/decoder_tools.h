// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/clip/child_process.h"

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

/// The programs that know the many forms a film has.
namespace stillbay {

struct DecoderTools {
    std::filesystem::path ffprobe, ffmpeg;

    bool operator==(const DecoderTools&) const = default;
};

/// Both programs, from the folders of PATH.
///
/// @error BadInput  one is missing; the sentence names the package.
Result<DecoderTools> findDecoderTools();

/// The same from a list of folders with colons between them; a folder without a leading slash is
/// left out, so that no program comes from where a film lies.
Result<DecoderTools> findDecoderTools(std::string_view folders);

/// What names a film to both programs, "-i" and the file last: only as a file of this machine,
/// whatever its name looks like, only in forms that hold a film or sound themselves and no lists
/// of further files.
std::vector<std::string> inputArguments(const std::filesystem::path& file);

/// What both programs say at "-loglevel level+info": errors are remembered.
LineUse errorsOnly(std::string_view line);

/// What a line of theirs says, without what it stands behind: part, level, name of the file.
std::string plainWords(std::string_view line, const std::filesystem::path& file);

}  // namespace stillbay
