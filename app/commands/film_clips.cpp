// SPDX-License-Identifier: MIT
#include "app/commands/film_clips.h"

#include "app/commands/command.h"
#include "app/commands/read_film.h"
#include "app/commands/stop_on_interrupt.h"
#include "core/base/format.h"
#include "core/base/units.h"
#include "core/calibrate/film_unbalance.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace stillbay {
namespace {

constexpr std::size_t kMostClips = 100;

// Why a clip tells no unbalance, where it does not.
std::optional<Phrase> whyLeftOut(const FilmRead& film)
{
    const CraftFilm& craft = *film.craft;
    if (film.clip.reading.isStabilised)
        return phrase("the film was stabilised");
    if (!craft.match)
        return craft.texts.front();
    if (!isSpeedSettled(*craft.match))
        return craft.match->mark.reason;
    if (film.ofReadout)
        return phrase("no readout puts its lines where its sound or throttle has them");
    const bool isOtherRate =
        std::any_of(craft.warnings.begin(), craft.warnings.end(),
                    [](const Warning& warning) { return warning.code == "film_other_rate"; });
    if (isOtherRate && !film.readout)
        return phrase(
            "at another frame rate than the camera's its readout is not known, and it "
            "does not tell it");
    return {};
}

Warning readWithOwn(const Warning& otherReadout)
{
    return {otherReadout.code, phrase("%1: read once more with its own", otherReadout.text)};
}

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

// A film beside the craft, and whether it counts; what is in doubt is told.
tl::expected<std::optional<FilmMatch>, RecordingFault> matchOfClip(const FilmClip& clip,
                                                                   const FilmAsked& asked,
                                                                   const std::stop_token& stop,
                                                                   std::ostream& err)
{
    std::optional<Warning> other;
    const auto film = readFilmFile(asked, stop, err).and_then([&](FilmRead&& read) {
        other = read.ofReadout;
        return withOwnReadout(asked, std::move(read), stop, err);
    });
    if (!film)
        return tl::unexpected(film.error().file == clip.file
                                  ? RecordingFault{film.error().error, clip.name()}
                                  : film.error());
    std::vector<Warning> doubts = warningsOf(*film);
    if (other)
        doubts.push_back(readWithOwn(*other));
    const auto why = whyLeftOut(*film);
    if (why)
        doubts.push_back({"film_left_out", phrase("left out: %1", *why)});
    reportWarnings(err, doubts, clip.name());
    const auto& match = film->craft->match;
    // What is not settled is counted by unbalanceFromFilms(), which says so.
    const bool isCounted =
        match && (!why || film->clip.reading.isStabilised || !isSpeedSettled(*match));
    return isCounted ? match : std::nullopt;
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
    for (const FilmClip& clip : clips) {
        const auto match =
            matchOfClip(clip, askedOf(clip, craft, setupFile), interrupt.token(), err);
        if (!match)
            return match.error();
        if (*match)
            matches.push_back(**match);
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
