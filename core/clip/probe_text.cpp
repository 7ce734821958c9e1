// SPDX-License-Identifier: MIT
#include "core/clip/probe_text.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <functional>
#include <map>
#include <numeric>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace stillbay {
namespace {

constexpr double kFarthest_s = 1e9;  // of a time that a film states: 30 years
constexpr std::int64_t kFarthestTick = std::int64_t{1} << 53;  // the farthest that a double tells

tl::unexpected<Error> noSuchFilm(Phrase what)
{
    return fail(Errc::BadInput, std::move(what));
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
    return std::abs(value) <= kFarthest_s ? value : 0.0;
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
        return noSuchFilm(phrase("there is sound in this file and no film"));
    if (hasPicture)
        return noSuchFilm(phrase("this is a single picture: a film has many"));
    return noSuchFilm(phrase("there is no film in this file"));
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
        return noSuchFilm(
            phrase("the size of this film's frames is not known: it is damaged, or its form "
                   "is not known to ffmpeg"));
    if (facts.width < kFewestPixelsASide || facts.height < kFewestPixelsASide)
        return noSuchFilm(phrase("the film has %1 × %2 pixels: at least %3 × %3 are needed",
                                 whole(facts.width), whole(facts.height),
                                 whole(kFewestPixelsASide)));
    if (facts.width > kMostPixelsASide || facts.height > kMostPixelsASide ||
        std::size_t{facts.width} * facts.height > kMostPixels)
        return noSuchFilm(phrase("the film has %1 × %2 pixels: at most 8192 × 4608 are read",
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

struct ListedFrame {
    std::int64_t tick = 0;
    double bytes = 0.0;  // 0: not told
    bool isKey = false;  // coded by itself
};

struct FrameList {
    std::vector<ListedFrame> frames;  // ticks rising
    std::size_t without = 0;          // frames that have none
};

// Lines like 2048,1234,K__ of all frames, the middle one of them not everywhere, and behind them a
// comma where more is told; those marked D are decoded and not shown.
FrameList framesIn(std::string_view text)
{
    FrameList list;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        const std::string_view line = text.substr(0, end);
        text.remove_prefix(std::min(end + 1, text.size()));
        const std::size_t comma = line.find(',');
        if (comma == std::string_view::npos)
            continue;
        std::string_view flags = line.substr(comma + 1);
        const auto bytes = numberIn<std::uint32_t>(flags.substr(0, flags.find(',')));
        if (bytes)
            flags.remove_prefix(std::min(flags.find(','), flags.size() - 1) + 1);
        flags = flags.substr(0, flags.find(','));
        if (flags.find('D') != std::string_view::npos)
            continue;
        const auto tick = numberIn<std::int64_t>(line.substr(0, comma));
        if (!tick || *tick < -kFarthestTick || *tick > kFarthestTick) {
            ++list.without;
            continue;
        }
        list.frames.push_back({*tick, static_cast<double>(bytes.value_or(0)),
                               flags.find('K') != std::string_view::npos});
    }
    std::ranges::stable_sort(list.frames, {}, &ListedFrame::tick);
    const auto isRepeat = [](const ListedFrame& one, const ListedFrame& other) {
        return one.tick == other.tick;
    };
    list.frames.erase(std::unique(list.frames.begin(), list.frames.end(), isRepeat),
                      list.frames.end());
    return list;
}

// Of the frames that build upon others; 0: there are none, and each frame is all of itself, or how
// large they are is not told of all.
double bitsPerPixel(const std::vector<ListedFrame>& frames, double pixels)
{
    double bytes = 0.0, count = 0.0;
    for (const ListedFrame& frame : frames)
        if (!frame.isKey) {
            if (frame.bytes <= 0)
                return 0.0;
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

// The frames' times, straight, and what follows from them.
tl::expected<void, Error> takeTimes(ClipFacts& facts, const FrameList& list,
                                    const ClipOptions& options)
{
    if (list.frames.empty() && list.without == 0)
        return noSuchFilm(phrase("there is no frame in this film"));
    if (facts.tick_s <= 0 || list.without * 2 > list.frames.size())
        return tl::unexpected(filmWithoutTimes());
    if (list.frames.size() > kMostFrames)
        return noSuchFilm(
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
        return noSuchFilm(
            phrase("there is no frame in this part: the film ends at %1\u00A0s",
                   fixed(timeOfStamp(facts, static_cast<double>(ticks.back()) * facts.tick_s), 2)));
    if (facts.frameTime_s.size() == 1)
        return noSuchFilm(phrase("there is a single frame, and vibration shows in many"));
    if (std::ranges::adjacent_find(facts.frameTime_s, std::greater_equal<>()) !=
        facts.frameTime_s.end())
        return tl::unexpected(
            filmWithoutTimes());  // so large that a double does not tell them apart
    facts.frameRate_hz =
        1 / (facts.evenTimes ? facts.evenTimes->step : middleDistance(facts.frameTime_s));
    return partStands(facts.frameTime_s.back() - facts.frameTime_s.front());
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

Result<void> partStands(double length_s)
{
    if (length_s > kLongestPart_s)
        return noSuchFilm(
            phrase("%1\u00A0s of film are more than the %2\u00A0s that are read at "
                   "once: name a part",
                   fixed(length_s, 0), fixed(kLongestPart_s, 0)));
    return {};
}

Result<ClipFacts> factsInText(std::string_view text)
{
    return factsOf(entriesOf(text));
}

Result<void> takeTimesInText(ClipFacts& facts, std::string_view text, const ClipOptions& options)
{
    if (const auto taken = takeTimes(facts, framesIn(text), options); !taken)
        return taken;
    warnOf(facts, options);
    return {};
}

}  // namespace stillbay
