// SPDX-License-Identifier: MIT
#pragma once

#include "core/clip/decoder_tools.h"
#include "core/clip/frames.h"
#include "core/clip/probe.h"
#include "tests/clip/film_generator.h"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace stillbay {

/// A film made by ffmpeg itself, with these arguments and the file behind them.
void makeClip(const std::filesystem::path& file, std::vector<std::string> arguments);

/// The film as H.264 in an MP4 file at the path. As cameras code: each frame from those before it
/// alone. Frames coded between two others take half the motion of each, which leaves a vibration of
/// a pixel as little as half of itself.
///
/// @param crf 0 … 51, small is fine; 20 to 28 is what cameras and people use
/// @return false where there is no encoder or it failed
bool encodeFilm(const FilmGenerator& film, const std::filesystem::path& path, int crf);

/// A program of a few lines of sh.
std::filesystem::path makeScript(const std::filesystem::path& file, const std::string& lines);

/// All frames of a part, copied.
struct WholeClip {
    std::vector<double> time_s;
    std::vector<std::vector<std::uint8_t>> luma;
    std::vector<std::size_t> index;
    std::size_t repeated = 0;
    std::vector<Warning> warnings;
    std::optional<Error> error;  // what ended it
};
WholeClip wholeClip(const std::filesystem::path& file, const ClipFacts& facts,
                    const ClipOptions& options = {});

/// Whether this process has children, ended or not.
bool hasChildren();

/// The error's sentence in English; empty where there is a value.
template <class T>
std::string complaint(const Result<T>& result)
{
    return result ? std::string() : english(result.error().what);
}

}  // namespace stillbay
