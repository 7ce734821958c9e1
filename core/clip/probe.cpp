// SPDX-License-Identifier: MIT
#include "core/clip/probe.h"

#include <algorithm>
#include <cerrno>
#include <charconv>
#include <cmath>
#include <map>
#include <numeric>
#include <string_view>
#include <sys/stat.h>
#include <system_error>
#include <utility>

namespace stillbay {
namespace {

constexpr std::size_t kMostFacts_bytes = std::size_t{1} << 20;
constexpr std::size_t kMostStamps_bytes = kMostFrames * 64;
constexpr double kLongestAnswer = 10.0;  // of the time that may pass until more of it comes
constexpr double kEndMargin_s = 0.5;     // a film may end so much before its stated length
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

using Entries = std::map<std::string, std::string, std::less<>>;

// Lines like streams.stream.0.codec_name="h264".
Entries entriesOf(std::string_view text)
{
    Entries entries;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        const std::string_view line = text.substr(0, end);
        text.remove_prefix(std::min(end + 1, text.size()));
        const std::size_t equals = line.find('=');
        if (equals == std::string_view::npos)
            continue;
        std::string_view value = line.substr(equals + 1);
        if (value.size() >= 2 && value.front() == '"' && value.back() == '"')
            value = value.substr(1, value.size() - 2);
        entries[std::string(line.substr(0, equals))] = value;
    }
    return entries;
}

std::string entry(const Entries& entries, const std::string& key)
{
    const auto found = entries.find(key);
    return found == entries.end() ? std::string() : found->second;
}

template <class T>
std::optional<T> numberIn(std::string_view text)
{
    T value{};
    const auto [end, code] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (code != std::errc() || end != text.data() + text.size())
        return {};
    return value;
}

double secondsIn(const std::string& text)
{
    const double value = numberIn<double>(text).value_or(0.0);
    return std::isfinite(value) ? value : 0.0;
}

// "1/15360"; 0: it is none.
double ratioIn(std::string_view text)
{
    const std::size_t bar = text.find('/');
    if (bar == std::string_view::npos)
        return 0.0;
    const auto over = numberIn<std::int64_t>(text.substr(0, bar));
    const auto under = numberIn<std::int64_t>(text.substr(bar + 1));
    if (!over || !under || *over <= 0 || *under <= 0)
        return 0.0;
    return static_cast<double>(*over) / static_cast<double>(*under);
}

// One stream's entries; none where there is no such stream.
std::optional<std::string> streamKey(const Entries& entries, std::size_t place)
{
    std::string key = "streams.stream." + std::to_string(place) + '.';
    const auto found = entries.lower_bound(key);
    if (found == entries.end() || !found->first.starts_with(key))
        return {};
    return key;
}

// The film's key among the streams.
Result<std::string> filmKey(const Entries& entries, bool& hasSound)
{
    std::optional<std::string> film;
    bool hasPicture = false;
    for (std::size_t place = 0; const auto key = streamKey(entries, place); ++place) {
        const std::string kind = entry(entries, *key + "codec_type");
        const bool isPicture = entry(entries, *key + "disposition.attached_pic") == "1";
        hasSound = hasSound || kind == "audio";
        hasPicture = hasPicture || (kind == "video" && isPicture);
        if (kind == "video" && !isPicture && !film)
            film = *key;
    }
    if (film)
        return *film;
    if (hasSound)
        return unreadable(phrase("there is sound in this file and no film"));
    if (hasPicture)
        return unreadable(phrase("this is a single picture: a film has many"));
    return unreadable(phrase("there is no film in this file"));
}

// ffprobe says it of the file as a whole ("h264" in "yuv420p10le": ten bits).
unsigned depthOf(const std::string& format)
{
    for (const unsigned depth : {9U, 10U, 12U, 14U, 16U}) {
        const std::string digits = std::to_string(depth);
        if (format.ends_with(digits + "le") || format.ends_with(digits + "be"))
            return format.starts_with("rgb") || format.starts_with("bgr") ? 8U : depth;
    }
    return 8;
}

int turnOf(const Entries& entries, const std::string& key)
{
    for (int k = 0; k < 8; ++k) {
        const std::string turn =
            entry(entries, key + "side_data_list.side_data." + std::to_string(k) + ".rotation");
        if (const auto angle = numberIn<double>(turn); angle && std::abs(*angle) <= 360)
            return (static_cast<int>(std::lround(*angle)) + 360) % 360;
    }
    const auto tag = numberIn<int>(entry(entries, key + "tags.rotate"));
    return tag && std::abs(*tag) <= 360 ? (720 - *tag) % 360 : 0;
}

tl::expected<void, Error> formStands(const ClipFacts& facts, const std::string& order)
{
    if (facts.width == 0 || facts.height == 0)
        return unreadable(
            phrase("the size of this film's frames is not known: it is damaged, or its form "
                   "is not known to ffmpeg"));
    if (facts.width < kFewestPixelsASide || facts.height < kFewestPixelsASide)
        return unreadable(phrase("the film has %1 × %2 pixels: at least %3 × %3 are needed",
                                 whole(facts.width), whole(facts.height),
                                 whole(kFewestPixelsASide)));
    if (facts.width > kMostPixelsASide || facts.height > kMostPixelsASide ||
        std::size_t{facts.width} * facts.height > kMostPixels)
        return unreadable(phrase("the film has %1 × %2 pixels: at most 8192 × 4608 are read",
                                 whole(facts.width), whole(facts.height)));
    if (order == "tt" || order == "bb" || order == "tb" || order == "bt")
        return tl::unexpected(interlacedFilm());
    return {};
}

Result<ClipFacts> factsOf(const Entries& entries)
{
    ClipFacts facts;
    const auto key = filmKey(entries, facts.hasSound);
    if (!key)
        return tl::unexpected(key.error());
    const auto of = [&](const char* name) {
        return entry(entries, *key + name);
    };
    facts.stream = numberIn<std::size_t>(of("index")).value_or(0);
    facts.width = numberIn<unsigned>(of("width")).value_or(0);
    facts.height = numberIn<unsigned>(of("height")).value_or(0);
    facts.codec = of("codec_name");
    facts.bitDepth = depthOf(of("pix_fmt"));
    facts.isHighRange =
        of("color_transfer") == "smpte2084" || of("color_transfer") == "arib-std-b67";
    facts.rotation_deg = turnOf(entries, *key);
    facts.tick_s = ratioIn(of("time_base"));
    facts.firstStamp_s = secondsIn(of("start_time"));
    facts.duration_s = secondsIn(of("duration"));
    if (facts.duration_s <= 0 && !facts.hasSound)
        facts.duration_s = secondsIn(entry(entries, "format.duration"));
    if (const auto stands = formStands(facts, of("field_order")); !stands)
        return tl::unexpected(stands.error());
    return facts;
}

// A part is no longer than is read at once.
tl::expected<void, Error> lengthStands(double length_s)
{
    if (length_s > kLongestPart_s)
        return unreadable(
            phrase("%1\u00A0s of film are more than the %2\u00A0s that are read at "
                   "once: name a part",
                   fixed(length_s, 0), fixed(kLongestPart_s, 0)));
    return {};
}

struct ListedFrame {
    std::int64_t tick = 0;
    double bytes = 0.0;  // 0: not told
    bool isKey = false;  // coded by itself
};

struct FrameList {
    std::vector<ListedFrame> frames;  // ticks rising
    std::size_t without = 0;          // frames that have none
};

// Lines like 2048,1234,K__ of all frames, the middle one of them not everywhere; those marked D are
// decoded and not shown.
FrameList framesIn(std::string_view text)
{
    FrameList list;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        const std::string_view line = text.substr(0, end);
        text.remove_prefix(std::min(end + 1, text.size()));
        const std::size_t comma = line.find(','), last = line.rfind(',');
        if (comma == std::string_view::npos || line.find('D', comma) != std::string_view::npos)
            continue;
        const auto tick = numberIn<std::int64_t>(line.substr(0, comma));
        if (!tick) {
            ++list.without;
            continue;
        }
        const auto bytes = last > comma
                               ? numberIn<std::uint32_t>(line.substr(comma + 1, last - comma - 1))
                               : std::nullopt;
        list.frames.push_back({*tick, static_cast<double>(bytes.value_or(0)),
                               line.find('K', last) != std::string_view::npos});
    }
    std::ranges::stable_sort(list.frames, {}, &ListedFrame::tick);
    const auto repeats = std::ranges::unique(list.frames, {}, &ListedFrame::tick);
    list.frames.erase(repeats.begin(), repeats.end());
    return list;
}

double bitsPerPixel(const std::vector<ListedFrame>& frames, double pixels)
{
    const bool isAllKeys = std::ranges::all_of(frames, &ListedFrame::isKey);
    double bytes = 0.0, count = 0.0;
    for (const ListedFrame& frame : frames)
        if (isAllKeys || !frame.isKey) {
            bytes += frame.bytes;
            ++count;
        }
    return count > 0 ? 8 * bytes / (count * pixels) : 0.0;
}

double middleDistance(const std::vector<double>& times)
{
    std::vector<double> steps(times.size());
    std::adjacent_difference(times.begin(), times.end(), steps.begin());
    const auto middle = steps.begin() + 1 + static_cast<std::ptrdiff_t>((steps.size() - 1) / 2);
    std::nth_element(steps.begin() + 1, middle, steps.end());
    return *middle;
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

// The frames' times, straight, and what follows from them.
tl::expected<void, Error> takeTimes(ClipFacts& facts, const FrameList& list,
                                    const ClipOptions& options)
{
    if (list.frames.empty() && list.without == 0)
        return unreadable(phrase("there is no frame in this film"));
    if (facts.tick_s <= 0 || list.without * 2 > list.frames.size())
        return tl::unexpected(filmWithoutTimes());
    if (list.frames.size() > kMostFrames)
        return unreadable(
            phrase("the film has more than %1 frames: name a part of it", whole(kMostFrames)));
    std::vector<std::int64_t> ticks;
    for (const ListedFrame& frame : list.frames)
        ticks.push_back(frame.tick);
    facts.evenTimes = evenTimesBehind(ticks, facts.tick_s);
    std::vector<ListedFrame> part;
    for (const ListedFrame& frame : list.frames) {
        const double time = timeOfStamp(facts, static_cast<double>(frame.tick) * facts.tick_s);
        if (!isInPart(facts, options, time))
            continue;
        facts.frameTime_s.push_back(time);
        part.push_back(frame);
    }
    facts.bitsPerPixel = bitsPerPixel(part, static_cast<double>(facts.width) * facts.height);
    if (facts.frameTime_s.empty())
        return unreadable(
            phrase("there is no frame in this part: the film ends at %1\u00A0s",
                   fixed(timeOfStamp(facts, static_cast<double>(ticks.back()) * facts.tick_s), 2)));
    if (facts.frameTime_s.size() == 1)
        return unreadable(phrase("there is a single frame, and vibration shows in many"));
    facts.frameRate_hz =
        1 / (facts.evenTimes ? facts.evenTimes->step : middleDistance(facts.frameTime_s));
    return lengthStands(facts.frameTime_s.back() - facts.frameTime_s.front());
}

void warnOf(ClipFacts& facts, const ClipOptions& options)
{
    if (facts.height > facts.width && facts.rotation_deg == 0)
        facts.warnings.push_back(
            {"film_upright",
             phrase("the picture is higher than wide: where a program has turned it, its rows are "
                    "not the sensor's and nothing read from them holds")});
    const double end = facts.frameTime_s.back() + 1 / facts.frameRate_hz;
    if (std::isinf(options.to_s) && facts.duration_s - end > kEndMargin_s)
        facts.warnings.push_back(
            {"film_breaks_off", phrase("the film breaks off at %1\u00A0s of %2\u00A0s",
                                       fixed(end, 1), fixed(facts.duration_s, 1))});
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
    auto facts = factsOf(entriesOf(form->text));
    if (!facts)
        return facts;
    const double stated_s = std::min(facts->duration_s, options.to_s) - options.from_s;
    if (stated_s > kLongestPart_s + kEndMargin_s)
        return tl::unexpected(lengthStands(stated_s).error());

    std::vector<std::string> arguments = intervalOf(*facts, options);
    arguments.insert(arguments.end(), {"-select_streams", std::to_string(facts->stream),
                                       "-show_entries", "packet=pts,size,flags", "-of", "csv=p=0"});
    const auto list = answerOf(*tools, arguments, file, kMostStamps_bytes, options.silence_s, stop);
    if (!list)
        return tl::unexpected(list.error());
    if (!list->isGood && list->text.empty())
        return notAFilm(*list);
    if (const auto taken = takeTimes(*facts, framesIn(list->text), options); !taken)
        return tl::unexpected(taken.error());
    warnOf(*facts, options);
    return facts;
}

}  // namespace stillbay
