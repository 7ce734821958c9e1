// SPDX-License-Identifier: MIT
#include "core/clip/frame_line.h"

#include "core/clip/decoder_tools.h"

#include <algorithm>
#include <charconv>
#include <string>
#include <utility>

namespace stillbay {
namespace {

tl::unexpected<Error> sizeChanges()
{
    return fail(
        Errc::BadInput,
        phrase("the size of the frames changes within the film: name a part where it stays"));
}

// What stands behind "name" up to the next blank, blanks in front left out.
std::string_view behind(std::string_view line, std::string_view name)
{
    const std::size_t at = line.find(name);
    if (at == std::string_view::npos)
        return {};
    line.remove_prefix(at + name.size());
    line.remove_prefix(std::min(line.find_first_not_of(' '), line.size()));
    return line.substr(0, line.find(' '));
}

std::optional<std::int64_t> wholeIn(std::string_view text)
{
    std::int64_t value = 0;
    const auto [end, code] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (code != std::errc() || end != text.data() + text.size())
        return {};
    return value;
}

// Two whole numbers with a letter between them: "1920x1080", "1/15360,".
std::optional<std::pair<std::int64_t, std::int64_t>> pairIn(std::string_view text, char between)
{
    if (text.ends_with(','))
        text.remove_suffix(1);
    const std::size_t at = text.find(between);
    if (at == std::string_view::npos)
        return {};
    const auto first = wholeIn(text.substr(0, at)), second = wholeIn(text.substr(at + 1));
    if (!first || !second)
        return {};
    return std::pair(*first, *second);
}

// How many bits a grey format has; 0: it is none.
unsigned greyBits(std::string_view format)
{
    if (format == "gray")
        return 8;
    for (const unsigned bits : {9U, 10U, 12U, 14U, 16U})
        if (format == "gray" + std::to_string(bits) + "le")
            return bits;
    return 0;
}

constexpr std::string_view kSpeaker = "[Parsed_showinfo_";

}  // namespace

LineUse ofFrames(std::string_view line)
{
    if (!line.starts_with(kSpeaker))
        return errorsOnly(line);
    const bool isFrame = line.find(" n:") != std::string_view::npos;
    const bool isTickSize = line.find("config in time_base:") != std::string_view::npos;
    return isFrame || isTickSize ? LineUse::Take : LineUse::Ignore;
}

std::optional<double> tickInLine(std::string_view line)
{
    const auto ratio = pairIn(behind(line, "config in time_base:"), '/');
    if (!ratio || ratio->first <= 0 || ratio->second <= 0)
        return {};
    return static_cast<double>(ratio->first) / static_cast<double>(ratio->second);
}

Result<ShownPicture> pictureInLine(std::string_view line, const ClipFacts& facts)
{
    const auto size = pairIn(behind(line, " s:"), 'x');
    const unsigned bits = greyBits(behind(line, " fmt:"));
    if (!size || bits == 0)
        return tl::unexpected(framesNotUnderstood());
    if (size->first != facts.width || size->second != facts.height)
        return sizeChanges();
    const std::string_view interlaced = behind(line, " i:");
    if (interlaced == "T" || interlaced == "B")
        return tl::unexpected(interlacedFilm());
    const auto tick = wholeIn(behind(line, " pts:"));
    if (!tick)
        return tl::unexpected(filmWithoutTimes());
    return ShownPicture{*tick, bits};
}

Error framesNotUnderstood()
{
    return {Errc::BadInput,
            phrase("what ffmpeg says of the frames is not understood: its version is too old or "
                   "too new"),
            {}};
}

}  // namespace stillbay
