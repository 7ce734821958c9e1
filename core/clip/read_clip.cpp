// SPDX-License-Identifier: MIT
#include "core/clip/read_clip.h"

#include "core/clip/frames.h"
#include "core/clip/row_shift_reader.h"

#include <utility>

namespace stillbay {
namespace {

Warning leftOut(const UnusableStretch& stretch)
{
    return {"film_unusable", phrase("%1\u00A0s to %2\u00A0s left out: %3", fixed(stretch.from_s, 2),
                                    fixed(stretch.to_s, 2), stretch.reason)};
}

}  // namespace

Result<ClipReading> readClip(const std::filesystem::path& file, const ClipOptions& part,
                             const FilmReadingOptions& options, const std::stop_token& stop,
                             const Progress& progress)
{
    auto facts = probeClip(file, part, stop);
    if (!facts)
        return tl::unexpected(facts.error());
    auto stream = FrameStream::open(file, *facts, part, stop, progress);
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
    }

    ClipReading clip;
    clip.facts = *std::move(facts);
    clip.frames = stream->frames();
    clip.shifts = reader.finish();
    clip.warnings = clip.facts.warnings;
    clip.warnings.insert(clip.warnings.end(), stream->warnings().begin(), stream->warnings().end());
    for (const UnusableStretch& stretch : clip.shifts.unusable)
        clip.warnings.push_back(leftOut(stretch));
    auto reading = readFilm(clip.shifts, options, stop);
    if (!reading)
        return tl::unexpected(reading.error());
    clip.reading = *std::move(reading);
    return clip;
}

}  // namespace stillbay
