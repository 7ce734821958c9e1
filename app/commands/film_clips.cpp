// SPDX-License-Identifier: MIT
#include "app/commands/film_clips.h"

#include "app/commands/command.h"
#include "app/commands/read_film.h"
#include "app/commands/stop_on_interrupt.h"
#include "core/base/format.h"
#include "core/base/units.h"
#include "core/calibrate/film_beside.h"
#include "core/calibrate/film_unbalance.h"

#include <cmath>
#include <utility>

namespace stillbay {
namespace {

constexpr std::size_t kMostClips = 100;

FilmAsked askedOf(const FilmClip& clip, const Setup& craft, const std::string& setupFile)
{
    FilmAsked asked{.file = clip.file,
                    .part = clip.part,
                    .setupFile = setupFile,
                    .setup = &craft,
                    .throttle = clip.throttle};
    asked.options.readout_s = craft.camera.readout_ms * unit::ms;
    asked.options.exposure_s = craft.camera.exposure_ms * unit::ms;
    return asked;
}

void reportLeftOut(std::ostream& err, const Phrase& reason, const std::string& clip)
{
    reportWarnings(err, {{"film_left_out", phrase("left out: %1", reason)}}, clip);
}

using FilmOfClip = tl::expected<FilmBeside, RecordingFault>;

// A film beside the craft; what is in doubt is told.
FilmOfClip filmOfClip(const FilmClip& clip, const FilmAsked& asked, ClipFacts facts,
                      const std::stop_token& stop, std::ostream& err)
{
    auto film = readFilmFile(asked, std::move(facts), stop, err);
    if (!film)
        return tl::unexpected(film.error());
    auto beside = besideWithOwnReadout(asked, *film, stop, err);
    if (!beside)
        return tl::unexpected(beside.error());
    film->beside = *std::move(beside);
    reportWarnings(err, warningsOf(*film), clip.name());
    return *std::move(film->beside);
}

// "12-20", in seconds.
std::optional<ClipOptions> partOf(std::string_view text)
{
    const std::size_t dash = text.find('-');
    if (dash == std::string_view::npos)
        return {};
    const auto from = parseNumbers(text.substr(0, dash), 1);
    const auto to = parseNumbers(text.substr(dash + 1), 1);
    if (!from || !to || !(from->front() >= 0 && to->front() > from->front()))
        return {};
    return ClipOptions{.from_s = from->front(), .to_s = to->front()};
}

}  // namespace

std::string FilmClip::name() const
{
    return std::isinf(part.to_s) ? file : file + formatted("@%.6g-%.6g", part.from_s, part.to_s);
}

FilmClip clipOf(std::string_view text)
{
    FilmClip clip;
    if (const std::size_t at = text.rfind('@'); at != std::string_view::npos && at > 0)
        if (const auto part = partOf(text.substr(at + 1))) {
            clip.part = *part;
            text = text.substr(0, at);
        }
    if (const std::size_t colon = text.rfind(':'); colon != std::string_view::npos && colon > 0)
        if (const auto throttle = takeThrottle(text.substr(colon + 1));
            throttle && *throttle > 0 && *throttle <= 1) {
            clip.throttle = throttle;
            text = text.substr(0, colon);
        }
    clip.file = text;
    return clip;
}

Option filmOption(std::vector<FilmClip>& clips)
{
    return {"--film", "CLIP[:THROTTLE][@FROM-TO]",
            "A film taken from the craft at a steady throttle, that throttle where it is known, "
            "and the part of the film in seconds where it is one, as in flight.mp4:40%@12-20; once "
            "for each, three throttles at least, up to 100 films. Corrects the unbalance, after "
            "all that is "
            "measured besides. Needs the programs of the package ffmpeg.",
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
    std::vector<FilmedPart> counted;
    std::size_t lost = 0, repeated = 0;
    const auto left = [&] {
        return clips.size() - lost - repeated;
    };
    for (const FilmClip& clip : clips) {
        const FilmAsked asked = askedOf(clip, craft, setupFile);
        auto facts = probeFilmFile(asked, interrupt.token());
        FilmedPart part;
        if (facts)
            part = filmedPart(clip.file, *facts, clip.name());
        if (const auto why = facts ? whyRepeated(part, counted) : std::nullopt) {
            reportLeftOut(err, *why, clip.name());
            ++repeated;
            if (left() < kFewestFilms)
                return RecordingFault{unbalanceFromFilms(craft, {}, left()).error(), setupFile};
            continue;
        }
        const auto film = std::move(facts).and_then([&](ClipFacts probed) {
            return filmOfClip(clip, asked, std::move(probed), interrupt.token(), err);
        });
        if (film) {
            if (const auto why = whyLeftOut(*film))
                reportLeftOut(err, *why, clip.name());
            else
                counted.push_back(std::move(part));
            if (const auto match = matchForUnbalance(*film))
                matches.push_back(*match);
            continue;
        }
        const auto& [error, file] = film.error();
        if (file != clip.file)
            return film.error();
        ++lost;
        if (interrupt.token().stop_requested() || left() < kFewestFilms)
            return RecordingFault{error, clip.name()};
        reportLeftOut(err, error.what, clip.name());
    }
    if (const auto taken =
            unbalanceFromFilms(craft, matches, clips.size() - repeated).and_then(take);
        !taken)
        return RecordingFault{taken.error(), setupFile};
    return {};
}

}  // namespace stillbay
