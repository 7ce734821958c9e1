// SPDX-License-Identifier: MIT
#include "app/commands/film_clips.h"

#include "app/commands/command.h"
#include "app/commands/read_film.h"
#include "app/commands/stop_on_interrupt.h"
#include "core/base/format.h"
#include "core/base/units.h"
#include "core/calibrate/film_unbalance.h"

#include <utility>

namespace stillbay {
namespace {

constexpr std::size_t kMostClips = 100;

// What of one clip is worth a line, with why it tells no unbalance where it does not.
std::vector<Warning> doubtsOf(FilmRead& film)
{
    std::vector<Warning> doubts = std::move(film.warnings);
    const auto& match = film.craft->match;
    if (!match)
        doubts.push_back({"film-left-out", phrase("left out: %1", film.craft->texts.front())});
    else if (!isSpeedSettled(*match))
        doubts.push_back({"film-left-out", phrase("left out: %1", match->mark.reason)});
    return doubts;
}

}  // namespace

FilmClip clipOf(std::string_view text)
{
    const std::size_t colon = text.rfind(':');
    if (colon != std::string_view::npos && colon > 0)
        if (const auto throttle = takeThrottle(text.substr(colon + 1));
            throttle && *throttle > 0 && *throttle <= 1)
            return {std::string(text.substr(0, colon)), throttle};
    return {std::string(text), {}};
}

Option filmOption(std::vector<FilmClip>& clips)
{
    return {"--film", "CLIP[:THROTTLE]",
            "A film taken from the craft at a steady throttle, and that throttle where it is "
            "known; once for each, three throttles at least, up to 100 films. Corrects the "
            "unbalance, after all "
            "that is measured besides. Needs the programs of the package ffmpeg.",
            [&clips](std::string_view value) {
                if (clips.size() == kMostClips)
                    return formatted("--film is taken up to %zu times", kMostClips);
                clips.push_back(clipOf(value));
                return value.empty() ? std::string("--film wants the name of a film")
                                     : std::string();
            }};
}

std::optional<RecordingFault> takeFilms(const std::vector<FilmClip>& clips, const Setup& craft,
                                        const std::string& setupFile,
                                        const std::function<Result<void>(const Correction&)>& take,
                                        std::ostream& err)
{
    if (clips.empty())
        return {};
    const StopOnInterrupt interrupt;
    std::vector<FilmMatch> matches;
    for (const FilmClip& clip : clips) {
        FilmAsked asked{
            .file = clip.file, .setupFile = setupFile, .setup = &craft, .throttle = clip.throttle};
        asked.options.readout_s = craft.camera.readout_ms * unit::ms;
        asked.options.exposure_s = craft.camera.exposure_ms * unit::ms;
        auto film = readFilmFile(asked, interrupt.token(), err);
        if (!film)
            return film.error();
        reportWarnings(err, doubtsOf(*film), clip.file);
        if (film->craft->match)
            matches.push_back(*std::move(film->craft->match));
    }
    if (matches.size() < kFewestClips)
        return RecordingFault{
            {Errc::NoAnswer,
             phrase("Of %1 films %2 show the orders of this craft's rotors: three are needed",
                    whole(clips.size()), whole(matches.size())),
             {}},
            setupFile};
    if (const auto taken = unbalanceFromFilms(craft, matches).and_then(take); !taken)
        return RecordingFault{taken.error(), setupFile};
    return {};
}

}  // namespace stillbay
