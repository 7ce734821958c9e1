// SPDX-License-Identifier: MIT
#include "core/clip/read_clip.h"

#include "core/clip/frames.h"
#include "core/clip/row_shift_reader.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string_view>
#include <utility>

namespace stillbay {
namespace {

// Stretches that were left out for one reason.
struct LeftOut {
    Phrase reason;
    double from_s = 0.0, to_s = 0.0, time_s = 0.0;
    std::size_t count = 0;
};

std::vector<LeftOut> byReason(const std::vector<UnusableStretch>& stretches)
{
    std::vector<LeftOut> sums;
    for (const UnusableStretch& stretch : stretches) {
        auto sum = std::ranges::find(sums, stretch.reason, &LeftOut::reason);
        if (sum == sums.end())
            sum = sums.insert(sums.end(), {.reason = stretch.reason, .from_s = stretch.from_s});
        sum->to_s = stretch.to_s;
        sum->time_s += stretch.to_s - stretch.from_s;
        ++sum->count;
    }
    return sums;
}

Warning leftOut(const LeftOut& sum)
{
    const Number from = fixed(sum.from_s, 2), to = fixed(sum.to_s, 2);
    return {"film_unusable",
            sum.count == 1
                ? phrase("%1\u00A0s to %2\u00A0s left out: %3", from, to, sum.reason)
                : phrase("%1\u00A0s in %2 stretches from %3\u00A0s to %4\u00A0s left out: %5",
                         fixed(sum.time_s, 2), whole(sum.count), from, to, sum.reason)};
}

Result<void> timesAre(const FilmReadingOptions& options)
{
    if (!(options.readout_s > 0))
        return fail(Errc::BadInput, phrase("a readout of %1\u00A0ms is none: it must be above 0",
                                           rounded(1e3 * options.readout_s, 3)));
    if (!(options.exposure_s >= 0))
        return fail(Errc::BadInput,
                    phrase("an exposure of %1\u00A0ms is none: it must be 0 or above",
                           rounded(1e3 * options.exposure_s, 3)));
    return {};
}

// What is longer than so many of the frames.
Result<void> timesWithin(double frames, double frameRate_hz, const FilmReadingOptions& options)
{
    constexpr double kRounded = 1e-3;  // of a frame: 16.67 ms is one of 60 a second
    const double most_s = (frames + kRounded) / frameRate_hz;
    const Number rate = rounded(frameRate_hz, 4);
    if (options.readout_s > most_s)
        return fail(
            Errc::BadInput,
            phrase("a readout of %1\u00A0ms is longer than a frame lasts at %2 frames a second",
                   rounded(1e3 * options.readout_s, 3), rate));
    if (options.exposure_s > most_s)
        return fail(
            Errc::BadInput,
            phrase("an exposure of %1\u00A0ms is longer than a frame lasts at %2 frames a second",
                   rounded(1e3 * options.exposure_s, 3), rate));
    return {};
}

bool isLossless(std::string_view codec)
{
    constexpr std::array<std::string_view, 6> kLossless{"rawvideo", "ffv1",    "huffyuv",
                                                        "ffvhuff",  "utvideo", "png"};
    return std::find(kLossless.begin(), kLossless.end(), codec) != kLossless.end();
}

}  // namespace

Result<void> timesMayFit(const ClipFacts& facts, const FilmReadingOptions& options)
{
    return timesAre(options).and_then(
        [&] { return timesWithin(kMostRepeats, facts.frameRate_hz, options); });
}

Result<void> timesFit(const ClipShifts& clip, const FilmReadingOptions& options)
{
    return timesAre(options).and_then(
        [&] { return timesWithin(1.0, clip.facts.frameRate_hz, options); });
}

Result<ClipShifts> readShifts(const std::filesystem::path& file, ClipFacts facts,
                              const ClipOptions& part, const std::stop_token& stop,
                              const Progress& progress, const FrameSeen& seen)
{
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
    if (stream->repeated() > 0 && clip.shifts.frameRate_hz > 0)
        clip.facts.frameRate_hz = clip.shifts.frameRate_hz;
    if (clip.frames > 0)  // repeats cost next to nothing
        clip.facts.bitsPerPixel *= static_cast<double>(clip.frames + stream->repeated()) /
                                   static_cast<double>(clip.frames);
    clip.warnings = clip.facts.warnings;
    clip.warnings.insert(clip.warnings.end(), stream->warnings().begin(), stream->warnings().end());
    for (const LeftOut& sum : byReason(clip.shifts.unusable))
        clip.warnings.push_back(leftOut(sum));
    return clip;
}

Result<FilmReading> readLines(const ClipShifts& clip, const FilmReadingOptions& options,
                              const std::stop_token& stop, const Progress& progress)
{
    if (const auto fit = timesFit(clip, options); !fit)
        return tl::unexpected(fit.error());
    FilmReadingOptions asked = options;
    if (!isLossless(clip.facts.codec)) {
        asked.least_px = std::max(asked.least_px, kLeastCoded_px);
        asked.bitsPerPixel = clip.facts.bitsPerPixel;
    }
    return readFilm(clip.shifts, asked, stop, progress);
}

Result<ClipReading> readClip(const std::filesystem::path& file, ClipFacts facts,
                             const ClipOptions& part, const FilmReadingOptions& options,
                             const std::stop_token& stop, const ClipProgress& progress)
{
    if (const auto may = timesMayFit(facts, options); !may)
        return tl::unexpected(may.error());
    auto shifts = readShifts(file, std::move(facts), part, stop, progress.frames);
    if (!shifts)
        return tl::unexpected(shifts.error());
    auto reading = readLines(*shifts, options, stop, progress.lines);
    if (!reading)
        return tl::unexpected(reading.error());
    return ClipReading{*std::move(shifts), *std::move(reading)};
}

}  // namespace stillbay
