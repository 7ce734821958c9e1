// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/progress.h"
#include "core/base/result.h"
#include "core/clip/child_process.h"
#include "core/clip/frame.h"
#include "core/clip/frame_line.h"
#include "core/clip/probe.h"

#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <optional>
#include <stop_token>
#include <vector>

namespace stillbay {

/// So many frames a decoder has to show in the time that it may be silent.
inline constexpr std::size_t kLeastFrames = 30;

/// The frames of a part of a film, one after the other; two of them are kept.
class FrameStream final {
public:
    /// Starts ffmpeg on the file.
    ///
    /// @param facts     of this file and these options, by probeClip()
    /// @param stop      heeded within a few hundredths of a second
    /// @param progress  steps are frames
    /// @error BadInput  a program is missing or does not start.
    static Result<FrameStream> open(const std::filesystem::path& file, const ClipFacts& facts,
                                    const ClipOptions& options = {}, std::stop_token stop = {},
                                    Progress progress = {});

    /// The next frame, which lasts until the next call; none at the end of the part. A frame that
    /// repeats the one before to the bit, or is no later, is dropped.
    ///
    /// @error BadInput  ffmpeg cannot decode the film, dies, stays silent or crawls (fewer than
    ///                  kLeastFrames frames in the time it may be silent), shows far more frames
    ///                  than are listed, or says what is not understood; the film changes its size,
    ///                  or is interlaced.
    /// @error NoAnswer  stopped.
    Result<std::optional<Frame>> next();

    std::size_t frames() const { return m_handedOut; }
    /// That were dropped because they repeat the one before.
    std::size_t repeated() const { return m_repeated; }
    /// Of what has been read, complete at the end.
    const std::vector<Warning>& warnings() const { return m_warnings; }

private:
    FrameStream(const ClipFacts& facts, const ClipOptions& options, std::filesystem::path file,
                ChildProcess decoder, std::stop_token stop, Progress progress);

    enum class Taken { Shown, Dropped, PartEnds };

    Result<std::optional<ShownPicture>> nextPicture(const Patience& patience);
    tl::expected<void, Error> readLuma(const ShownPicture& picture, const Patience& patience);
    Taken take(double time_s);
    Result<Taken> takeNext(const Patience& patience);
    tl::expected<void, Error> endOfFilm(const Patience& patience);
    tl::expected<void, Error> endOfPart();

    ClipFacts m_facts;
    ClipOptions m_options;
    std::filesystem::path m_file;
    ChildProcess m_decoder;
    std::stop_token m_stop;
    Progress m_progress;
    double m_tick_s = 0.0;
    std::vector<std::uint8_t> m_luma, m_before, m_wide;
    double m_time_s = 0.0;
    double m_patience_s = 0.0;      // left for the next kLeastFrames frames
    std::size_t m_shownInTime = 0;  // of those below: when that was last filled up
    std::size_t m_shown = 0;        // by ffmpeg, of the part or not
    std::size_t m_decoded = 0, m_handedOut = 0, m_repeated = 0;
    bool m_isAtEnd = false;
    std::vector<Warning> m_warnings;
};

}  // namespace stillbay
