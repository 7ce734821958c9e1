// SPDX-License-Identifier: MIT
#include "core/clip/frames.h"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <string>
#include <string_view>
#include <utility>

namespace stillbay {
namespace {

constexpr double kMostRepeated = 0.05;  // of all frames, before it is worth a word
constexpr std::size_t kMostMissing = 3;
constexpr std::size_t kMostUnlisted = 1000;  // before the part, or told by no packet of its own

tl::unexpected<Error> broken(Phrase what)
{
    return fail(Errc::BadInput, std::move(what));
}

tl::unexpected<Error> cannotDecode(std::size_t decoded, const std::string& words)
{
    if (decoded == 0)
        return broken(words.empty() ? phrase("ffmpeg cannot decode this film")
                                    : phrase("ffmpeg cannot decode this film: %1", words));
    return broken(words.empty()
                      ? phrase("ffmpeg broke off after frame %1", whole(decoded))
                      : phrase("ffmpeg broke off after frame %1: %2", whole(decoded), words));
}

tl::unexpected<Error> showsTooMany()
{
    return broken(phrase("ffmpeg shows far more frames than the film lists, and was ended"));
}

tl::unexpected<Error> nothingMoves()
{
    return broken(phrase("all frames of this part are the same: it is a still picture"));
}

Warning repeatsWarning(std::size_t repeated, std::size_t all)
{
    return {"film_frames_repeat", phrase("%1 of %2 frames repeat the one before and were left out",
                                         whole(repeated), whole(all))};
}

Warning missingWarning(std::size_t decoded, std::size_t listed)
{
    return {"film_frames_missing",
            phrase("only %1 of %2 frames could be decoded", whole(decoded), whole(listed))};
}

std::vector<std::string> decoderArguments(const std::filesystem::path& file, const ClipFacts& facts,
                                          const ClipOptions& options)
{
    std::vector<std::string> arguments{"-hide_banner", "-nostdin",    "-nostats",
                                       "-loglevel",    "level+info",  "-noautorotate",
                                       "-copyts",      "-max_pixels", std::to_string(kMostPixels)};
    if (options.from_s > 0) {
        // From one frame before the part on, so that rounding loses none of it.
        const double from = std::max(0.0, options.from_s - 1 / facts.frameRate_hz);
        arguments.insert(arguments.end(), {"-ss", std::to_string(std::llround(from * 1e6)) + "us"});
    }
    const std::vector<std::string> input = inputArguments(file);
    arguments.insert(arguments.end(), input.begin(), input.end());
    arguments.insert(arguments.end(), {"-map", "0:" + std::to_string(facts.stream), "-an", "-sn",
                                       "-dn", "-vf", "extractplanes=y,showinfo=checksum=0",
                                       "-fps_mode", "passthrough", "-f", "rawvideo", "pipe:1"});
    return arguments;
}

}  // namespace

FrameStream::FrameStream(const ClipFacts& facts, const ClipOptions& options,
                         std::filesystem::path file, ChildProcess decoder, std::stop_token stop,
                         Progress progress)
    : m_facts(facts),
      m_options(options),
      m_file(std::move(file)),
      m_decoder(std::move(decoder)),
      m_stop(std::move(stop)),
      m_progress(std::move(progress)),
      m_tick_s(facts.tick_s),
      m_luma(std::size_t{facts.width} * facts.height),
      m_before(m_luma.size()),
      m_patience_s(options.silence_s)
{
}

Result<FrameStream> FrameStream::open(const std::filesystem::path& file, const ClipFacts& facts,
                                      const ClipOptions& options, std::stop_token stop,
                                      Progress progress)
{
    const auto tools = options.tools ? Result<DecoderTools>(*options.tools) : findDecoderTools();
    if (!tools)
        return tl::unexpected(tools.error());
    auto decoder =
        ChildProcess::start(tools->ffmpeg, decoderArguments(file, facts, options), ofFrames);
    if (!decoder)
        return tl::unexpected(decoder.error());
    return FrameStream(facts, options, file, *std::move(decoder), std::move(stop),
                       std::move(progress));
}

// What ffmpeg says of a frame comes before its pixels; none where the film has ended.
Result<std::optional<ShownPicture>> FrameStream::nextPicture(const Patience& patience)
{
    for (;;) {
        const auto line = m_decoder.nextLine(patience);
        if (!line)
            return tl::unexpected(line.error());
        if (!*line)
            return std::optional<ShownPicture>();
        if (const auto tick_s = tickInLine(**line)) {
            m_tick_s = *tick_s;
            continue;
        }
        const auto picture = pictureInLine(**line, m_facts);
        if (!picture)
            return tl::unexpected(picture.error());
        return std::optional(*picture);
    }
}

tl::expected<void, Error> FrameStream::readLuma(const ShownPicture& picture,
                                                const Patience& patience)
{
    const std::size_t pixels = m_luma.size();
    const bool isWide = picture.bits > 8;
    if (isWide)
        m_wide.resize(2 * pixels);
    const auto got = m_decoder.read(isWide ? m_wide : m_luma, patience);
    if (!got)
        return tl::unexpected(got.error());
    if (*got < (isWide ? 2 : 1) * pixels)
        return cannotDecode(m_decoded, plainWords(m_decoder.lastWords(), m_file));
    if (isWide) {
        const unsigned shift = picture.bits - 8, half = 1U << (shift - 1);
        for (std::size_t k = 0; k < pixels; ++k) {
            const unsigned value = m_wide[2 * k] + 256U * m_wide[2 * k + 1];
            m_luma[k] = static_cast<std::uint8_t>(std::min((value + half) >> shift, 255U));
        }
    }
    return {};
}

FrameStream::Taken FrameStream::take(double time_s)
{
    if (!isInPart(m_facts, m_options, time_s))
        return time_s > m_options.from_s ? Taken::PartEnds : Taken::Dropped;
    ++m_decoded;
    if (m_progress)
        m_progress(std::min(m_decoded, m_facts.frameTime_s.size()), m_facts.frameTime_s.size());
    if (m_handedOut > 0 && (!(time_s > m_time_s) || m_luma == m_before)) {
        ++m_repeated;
        return Taken::Dropped;
    }
    m_time_s = time_s;
    ++m_handedOut;
    std::swap(m_luma, m_before);
    return Taken::Shown;
}

tl::expected<void, Error> FrameStream::endOfFilm(const Patience& patience)
{
    const auto ending = m_decoder.finish(patience);
    if (!ending)
        return tl::unexpected(ending.error());
    if (!ending->isGood() || m_decoded == 0)
        return cannotDecode(m_decoded, plainWords(m_decoder.lastWords(), m_file));
    if (m_decoded + kMostMissing < m_facts.frameTime_s.size())
        m_warnings.push_back(missingWarning(m_decoded, m_facts.frameTime_s.size()));
    return {};
}

tl::expected<void, Error> FrameStream::endOfPart()
{
    m_isAtEnd = true;
    m_decoder.end();
    if (m_handedOut == 1 && m_decoded > 1)
        return nothingMoves();
    if (static_cast<double>(m_repeated) > kMostRepeated * static_cast<double>(m_decoded))
        m_warnings.push_back(repeatsWarning(m_repeated, m_decoded));
    return {};
}

// The next picture, wherever it belongs.
Result<FrameStream::Taken> FrameStream::takeNext(const Patience& patience)
{
    const auto picture = nextPicture(patience);
    if (!picture)
        return tl::unexpected(picture.error());
    if (!*picture) {
        std::uint8_t tooMany = 0;
        const auto more = m_decoder.read({&tooMany, 1}, patience);
        if (!more)
            return tl::unexpected(more.error());
        if (*more > 0)
            return tl::unexpected(framesNotUnderstood());
        if (const auto ended = endOfFilm(patience); !ended)
            return tl::unexpected(ended.error());
        return Taken::PartEnds;
    }
    if (const auto whole = readLuma(**picture, patience); !whole)
        return tl::unexpected(whole.error());
    if (++m_shown > 2 * m_facts.frameTime_s.size() + kMostUnlisted) {
        m_decoder.end();
        return showsTooMany();
    }
    return take(timeOfStamp(m_facts, static_cast<double>((*picture)->tick) * m_tick_s));
}

Result<std::optional<Frame>> FrameStream::next()
{
    while (!m_isAtEnd) {
        if (m_shown >= m_shownInTime + kLeastFrames) {
            m_shownInTime = m_shown;
            m_patience_s = m_options.silence_s;
        }
        // What a caller does between two frames is not ffmpeg's time.
        const auto start = std::chrono::steady_clock::now();
        const auto taken = takeNext(patienceOf(m_patience_s, m_stop));
        const std::chrono::duration<double> waited = std::chrono::steady_clock::now() - start;
        m_patience_s -= waited.count();
        if (!taken)
            return tl::unexpected(taken.error());
        if (*taken == Taken::Shown)
            return std::optional(
                Frame{m_time_s, m_facts.width, m_facts.height, m_before, m_handedOut - 1});
        if (*taken == Taken::PartEnds)
            if (const auto ended = endOfPart(); !ended)
                return tl::unexpected(ended.error());
    }
    return std::optional<Frame>();
}

}  // namespace stillbay
