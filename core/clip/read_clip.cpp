// SPDX-License-Identifier: MIT
#include "core/clip/read_clip.h"

#include "core/clip/frames.h"
#include "core/clip/row_shift_reader.h"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

namespace stillbay {
namespace {

Warning leftOut(const UnusableStretch& stretch)
{
    return {"film_unusable", phrase("%1\u00A0s to %2\u00A0s left out: %3", fixed(stretch.from_s, 2),
                                    fixed(stretch.to_s, 2), stretch.reason)};
}

bool isLossless(std::string_view codec)
{
    constexpr std::array<std::string_view, 6> kLossless{"rawvideo", "ffv1",    "huffyuv",
                                                        "ffvhuff",  "utvideo", "png"};
    return std::find(kLossless.begin(), kLossless.end(), codec) != kLossless.end();
}

}  // namespace

Result<void> readoutFits(const ClipFacts& facts, double readout_s)
{
    if (!(readout_s > 0))
        return fail(Errc::BadInput, phrase("a readout of %1\u00A0ms is none: it must be above 0",
                                           rounded(1e3 * readout_s, 3)));
    if (readout_s * facts.frameRate_hz > 1)
        return fail(
            Errc::BadInput,
            phrase("a readout of %1\u00A0ms is longer than a frame lasts at %2 frames a second",
                   rounded(1e3 * readout_s, 3), rounded(facts.frameRate_hz, 4)));
    return {};
}

Result<ClipShifts> readShifts(const std::filesystem::path& file, ClipFacts facts,
                              const ClipOptions& part, const std::stop_token& stop,
                              const Progress& progress, const FrameSeen& seen)
{
    const double part_s = facts.frameTime_s.back() - facts.frameTime_s.front();
    if (part_s > kLongestPart_s)
        return fail(Errc::BadInput,
                    phrase("%1\u00A0s of film are more than the %2\u00A0s that are read at "
                           "once: name a part",
                           fixed(part_s, 0), fixed(kLongestPart_s, 0)));
    auto stream = FrameStream::open(file, facts, part, stop, progress);
    if (!stream)
        return tl::unexpected(stream.error());
    RowShiftReader reader;
    for (;;) {
        const auto frame = stream->next();
        if (!frame)
            return tl::unexpected(frame.error());
        if (!*frame)
            break;
        reader.add(**frame);
        if (seen)
            seen(**frame);
    }

    ClipShifts clip;
    clip.facts = std::move(facts);
    clip.frames = stream->frames();
    clip.shifts = reader.finish();
    clip.warnings = clip.facts.warnings;
    clip.warnings.insert(clip.warnings.end(), stream->warnings().begin(), stream->warnings().end());
    for (const UnusableStretch& stretch : clip.shifts.unusable)
        clip.warnings.push_back(leftOut(stretch));
    return clip;
}

Result<ClipShifts> readShifts(const std::filesystem::path& file, const ClipOptions& part,
                              const std::stop_token& stop, const Progress& progress,
                              const FrameSeen& seen)
{
    auto facts = probeClip(file, part, stop);
    if (!facts)
        return tl::unexpected(facts.error());
    return readShifts(file, *std::move(facts), part, stop, progress, seen);
}

Result<FilmReading> readLines(const ClipShifts& clip, const FilmReadingOptions& options,
                              const std::stop_token& stop, const Progress& progress)
{
    if (const auto fits = readoutFits(clip.facts, options.readout_s); !fits)
        return tl::unexpected(fits.error());
    FilmReadingOptions asked = options;
    if (!isLossless(clip.facts.codec))
        asked.least_px = std::max(asked.least_px, kLeastCoded_px);
    return readFilm(clip.shifts, asked, stop, progress);
}

Result<ClipReading> readClip(const std::filesystem::path& file, const ClipOptions& part,
                             const FilmReadingOptions& options, const std::stop_token& stop,
                             const Progress& progress)
{
    auto facts = probeClip(file, part, stop);
    if (!facts)
        return tl::unexpected(facts.error());
    if (const auto fits = readoutFits(*facts, options.readout_s); !fits)
        return tl::unexpected(fits.error());
    auto shifts = readShifts(file, *std::move(facts), part, stop, progress);
    if (!shifts)
        return tl::unexpected(shifts.error());
    auto reading = readLines(*shifts, options, stop);
    if (!reading)
        return tl::unexpected(reading.error());
    ClipReading clip{*std::move(shifts), *std::move(reading)};
    clip.warnings.insert(clip.warnings.end(), clip.reading.warnings.begin(),
                         clip.reading.warnings.end());
    return clip;
}

}  // namespace stillbay
