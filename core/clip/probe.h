// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/clip/decoder_tools.h"
#include "core/clip/even_times.h"

#include <cstdint>
#include <filesystem>
#include <limits>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

namespace stillbay {

/// Which part of a film is read, and how.
struct ClipOptions {
    double from_s = 0.0;                                    ///< since the film's first frame
    double to_s = std::numeric_limits<double>::infinity();  ///< not itself in the part
    /// How long a program may take for its next answer, for kLeastFrames frames, or for all of a
    /// part's sound; for a list of all frames ten times that.
    double silence_s = 60.0;
    std::optional<DecoderTools> tools;  ///< none: from PATH
};

/// What is known of a film before a frame of it has been decoded.
struct ClipFacts {
    std::size_t stream = 0;          ///< number of the film among the file's streams
    unsigned width = 0, height = 0;  ///< as the sensor's rows lie, before it is turned for display
    int rotation_deg = 0;            ///< for display, counter-clockwise, 0 to 359
    unsigned bitDepth = 8;           ///< of one colour
    bool isHighRange = false;        ///< a curve for high dynamic range: rising, so shifts stand
    bool hasSound = false;
    std::string codec;
    double tick_s = 0.0;              ///< step of the stamps
    double firstStamp_s = 0.0;        ///< of the film's first frame
    std::vector<double> frameTime_s;  ///< of the part's frames as listed, since time zero; rising
    std::optional<EvenTimes> evenTimes;  ///< where the stamps are such times, rounded
    double frameRate_hz = 0.0;           ///< of even times, or by the middle one of the distances;
                                         ///< what repeats is known once frames are read
    double duration_s = 0.0;  ///< of the whole film, as the file states it; 0: it does not
    /// Of the part's frames that are coded upon others; 0: there are none, or it is not known.
    double bitsPerPixel = 0.0;
    std::vector<Warning> warnings;
};

inline constexpr unsigned kFewestPixelsASide = 64;
inline constexpr unsigned kMostPixelsASide = 8192;
inline constexpr std::size_t kMostPixels = std::size_t{8192} * 4608;
inline constexpr std::size_t kMostFrames = 500'000;
inline constexpr double kLongestPart_s = 60.0;  // the time that lines take grows with its square

/// Asks ffprobe for a film's form and the times of its frames.
///
/// @param file  an ordinary file
/// @param stop  heeded within a few hundredths of a second
/// @error BadInput  no such file, a folder or pipe, empty; a program is missing, dies or stays
///                  silent; no film in the file (a picture, sound alone, a text); interlaced; too
///                  small, too large, too many frames; fewer than two frames in the part; a part
///                  above kLongestPart_s, which is asked before the frames are listed where the
///                  file states its length.
/// @error NoAnswer  stopped.
Result<ClipFacts> probeClip(const std::filesystem::path& file, const ClipOptions& options = {},
                            const std::stop_token& stop = {});

/// The time of a stamp, straightened where the times are even.
///
/// @param stamp_s  as the file has it, [s]
/// @return [s] since the film's first frame
double timeOfStamp(const ClipFacts& facts, double stamp_s);

/// Whether a frame of this time belongs to the part; what a stamp may be rounded by counts as none.
bool isInPart(const ClipFacts& facts, const ClipOptions& options, double time_s);

/// Why such films are refused.
Error interlacedFilm();
Error filmWithoutTimes();

}  // namespace stillbay
