// SPDX-License-Identifier: MIT
#include "core/clip/probe.h"

#include "core/clip/probe_text.h"

#include <algorithm>
#include <cerrno>
#include <cmath>
#include <string_view>
#include <sys/stat.h>
#include <system_error>
#include <utility>

namespace stillbay {
namespace {

constexpr std::size_t kMostFacts_bytes = std::size_t{1} << 20;
constexpr std::size_t kMostStamps_bytes = kMostFrames * 64;
constexpr double kLongestAnswer = 10.0;  // of the time that may pass until more of it comes
constexpr double kStampError_s = 2e-6;   // ffprobe writes the first stamp to a millionth
constexpr double kListMargin_s = 2.0;    // frames are listed in the order they are decoded

tl::unexpected<Error> unreadable(Phrase what)
{
    return fail(Errc::BadInput, std::move(what));
}

// What speaks against reading the file at all.
tl::expected<void, Error> mayBeRead(const std::filesystem::path& file, const ClipOptions& options)
{
    struct stat what = {};
    if (::stat(file.c_str(), &what) != 0)
        return unreadable(
            phrase("the film cannot be opened: %1", std::generic_category().message(errno)));
    if (S_ISDIR(what.st_mode))
        return unreadable(phrase("this is a folder: name one film in it"));
    if (!S_ISREG(what.st_mode))
        return unreadable(phrase("this is no ordinary file: save the film first"));
    if (what.st_size == 0)
        return unreadable(phrase("the file is empty"));
    if (!(options.from_s >= 0 && options.to_s > options.from_s))
        return unreadable(
            phrase("a part of a film begins at 0\u00A0s or later and ends after its beginning"));
    return {};
}

// What ffprobe printed and how it ended.
struct Answer {
    std::string text;
    bool isGood = true;
    bool hasNoIndex = false;     // a film without the part that says where its frames are
    bool isOfOtherKind = false;  // in a form that is left out
    std::string words;           // its last error
};

tl::unexpected<Error> notAFilm(const Answer& answer)
{
    const std::string& words = answer.words;
    if (answer.hasNoIndex)
        return unreadable(
            phrase("the index of the film is missing: it was not finished, was not copied "
                   "to its end, or is no film"));
    if (answer.isOfOtherKind)
        return unreadable(
            phrase("this is a file of another kind, a picture for instance, and no film"));
    if (words.empty())
        return unreadable(phrase("this is no film that ffmpeg reads"));
    return unreadable(phrase("this is no film that ffmpeg reads: %1", words));
}

tl::unexpected<Error> tooMuchSaid()
{
    return unreadable(phrase("ffprobe has more to say of this file than of any film"));
}

Result<Answer> answerOf(const DecoderTools& tools, std::vector<std::string> arguments,
                        const std::filesystem::path& file, std::size_t most_bytes, double silence_s,
                        const std::stop_token& stop)
{
    const std::vector<std::string> input = inputArguments(file);
    arguments.insert(arguments.begin(), {"-hide_banner", "-loglevel", "level+error"});
    arguments.insert(arguments.end(), input.begin(), input.end());
    auto child = ChildProcess::start(tools.ffprobe, arguments, errorsOnly);
    if (!child)
        return tl::unexpected(child.error());

    Answer answer;
    std::vector<std::uint8_t> piece(std::size_t{1} << 16);
    const Patience forAll = patienceOf(kLongestAnswer * silence_s, stop);
    const auto patience = [&] {
        Patience now = patienceOf(silence_s, stop);
        now.until = std::min(now.until, forAll.until);
        return now;
    };
    for (;;) {
        const auto got = child->read(piece, patience());
        if (!got)
            return tl::unexpected(got.error());
        answer.text.append(piece.begin(), piece.begin() + static_cast<std::ptrdiff_t>(*got));
        if (answer.text.size() > most_bytes)
            return tooMuchSaid();
        if (*got < piece.size())
            break;
    }
    const auto ending = child->finish(patience());
    if (!ending)
        return tl::unexpected(ending.error());
    answer.isGood = ending->isGood();
    for (const std::string& line : child->remembered()) {
        answer.hasNoIndex = answer.hasNoIndex || line.find("moov atom") != std::string::npos;
        answer.isOfOtherKind =
            answer.isOfOtherKind || line.find("not on whitelist") != std::string::npos;
    }
    answer.words = plainWords(child->lastWords(), file);
    return answer;
}

// The part's frames, with a margin on both sides as they are listed; empty: all.
std::vector<std::string> intervalOf(const ClipFacts& facts, const ClipOptions& options)
{
    if (options.from_s <= 0 && std::isinf(options.to_s))
        return {};
    const double zero = facts.firstStamp_s;
    const double from = zero + std::max(0.0, options.from_s - kListMargin_s);
    std::string interval = std::to_string(std::llround(from * 1e6)) + "us%";
    if (!std::isinf(options.to_s))
        interval +=
            std::to_string(std::llround((zero + options.to_s + kListMargin_s) * 1e6)) + "us";
    return {"-read_intervals", interval};
}

}  // namespace

bool isInPart(const ClipFacts& facts, const ClipOptions& options, double time_s)
{
    const double margin = facts.evenTimes ? facts.evenTimes->step / 10 : kStampError_s;
    return time_s >= options.from_s - margin && time_s < options.to_s - margin;
}

Error interlacedFilm()
{
    return {Errc::BadInput,
            phrase("the film is interlaced, each frame two pictures of every other row: film "
                   "progressive, where it says 30p or 60p"),
            {}};
}

Error filmWithoutTimes()
{
    return {Errc::BadInput,
            phrase("the film does not say when each frame was taken: save it as MP4 or MOV"),
            {}};
}

double timeOfStamp(const ClipFacts& facts, double stamp_s)
{
    const double straight = facts.evenTimes ? facts.evenTimes->nearest(stamp_s) : stamp_s;
    return straight - facts.firstStamp_s;
}

Result<ClipFacts> probeClip(const std::filesystem::path& file, const ClipOptions& options,
                            const std::stop_token& stop)
{
    if (const auto may = mayBeRead(file, options); !may)
        return tl::unexpected(may.error());
    const auto tools = options.tools ? Result<DecoderTools>(*options.tools) : findDecoderTools();
    if (!tools)
        return tl::unexpected(tools.error());

    const auto form = answerOf(
        *tools,
        {"-show_entries",
         "format=duration:stream=index,codec_type,codec_name,width,height,pix_fmt,field_order,"
         "color_transfer,time_base,start_time,duration:stream_disposition=attached_pic:stream_tags="
         "rotate:stream_side_data=rotation",
         "-of", "flat"},
        file, kMostFacts_bytes, options.silence_s, stop);
    if (!form)
        return tl::unexpected(form.error());
    if (!form->isGood)
        return notAFilm(*form);
    auto facts = factsInText(form->text);
    if (!facts)
        return facts;
    const double stated_s = std::min(facts->duration_s, options.to_s) - options.from_s;
    if (stated_s > kLongestPart_s + kEndMargin_s)
        return tl::unexpected(partStands(stated_s).error());

    std::vector<std::string> arguments = intervalOf(*facts, options);
    arguments.insert(arguments.end(), {"-select_streams", std::to_string(facts->stream),
                                       "-show_entries", "packet=pts,size,flags", "-of", "csv=p=0"});
    const auto list = answerOf(*tools, arguments, file, kMostStamps_bytes, options.silence_s, stop);
    if (!list)
        return tl::unexpected(list.error());
    if (!list->isGood && list->text.empty())
        return notAFilm(*list);
    if (const auto taken = takeTimesInText(*facts, list->text, options); !taken)
        return tl::unexpected(taken.error());
    return facts;
}

}  // namespace stillbay
