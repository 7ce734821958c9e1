// SPDX-License-Identifier: MIT
#include "core/clip/sound_track.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <string>

namespace stillbay {
namespace {

constexpr double kFullScale = 32768;
constexpr std::size_t kSoundPiece_bytes = std::size_t{1} << 15;

tl::unexpected<Error> noSound()
{
    return fail(Errc::BadInput, phrase("the film has no sound in this part"));
}

// How long the part lasts, its last frame included.
double lengthOf(const ClipFacts& facts)
{
    const double shown = facts.frameTime_s.back() - facts.frameTime_s.front();
    return std::min(shown + 1 / facts.frameRate_hz, kLongestPart_s);
}

std::vector<std::string> soundArguments(const std::filesystem::path& file, const ClipFacts& facts)
{
    const auto time = [](double s) {
        return std::to_string(std::llround(s * 1e6)) + "us";
    };
    std::vector<std::string> arguments{"-hide_banner", "-nostdin", "-nostats", "-loglevel",
                                       "level+error"};
    if (facts.frameTime_s.front() > 0)
        arguments.insert(arguments.end(), {"-ss", time(facts.frameTime_s.front())});
    const std::vector<std::string> input = inputArguments(file);
    arguments.insert(arguments.end(), input.begin(), input.end());
    arguments.insert(arguments.end(),
                     {"-t", time(lengthOf(facts)), "-map", "0:a:0", "-vn", "-sn", "-dn", "-ac", "1",
                      "-ar", std::to_string(kSoundRate_hz), "-f", "s16le", "pipe:1"});
    return arguments;
}

double sampleAt(const std::vector<std::uint8_t>& bytes, std::size_t k)
{
    const auto value = static_cast<std::int16_t>(bytes[2 * k] + 256U * bytes[2 * k + 1]);
    return value / kFullScale;
}

}  // namespace

Result<SoundTrack> readSoundTrack(const std::filesystem::path& file, const ClipFacts& facts,
                                  const ClipOptions& options, const std::stop_token& stop)
{
    if (!facts.hasSound)
        return noSound();
    const auto tools = options.tools ? Result<DecoderTools>(*options.tools) : findDecoderTools();
    if (!tools)
        return tl::unexpected(tools.error());
    auto decoder = ChildProcess::start(tools->ffmpeg, soundArguments(file, facts), errorsOnly);
    if (!decoder)
        return tl::unexpected(decoder.error());

    const auto most = static_cast<std::size_t>(std::ceil(lengthOf(facts) * kSoundRate_hz));
    const Patience forAll = patienceOf(options.silence_s, stop);
    std::vector<std::uint8_t> bytes;
    while (bytes.size() < 2 * most) {
        const std::size_t before = bytes.size();
        bytes.resize(before + std::min(kSoundPiece_bytes, 2 * most - before));
        const auto got = decoder->read(std::span(bytes).subspan(before), forAll);
        if (!got)
            return tl::unexpected(got.error());
        if (before + *got < bytes.size()) {
            bytes.resize(before + *got);
            break;
        }
    }
    if (bytes.size() < 2 * most) {
        const auto ending = decoder->finish(forAll);
        if (!ending)
            return tl::unexpected(ending.error());
        if (!ending->isGood())
            return fail(Errc::BadInput, phrase("ffmpeg cannot decode the sound of this film: %1",
                                               plainWords(decoder->lastWords(), file)));
    }
    if (bytes.size() < 2)
        return noSound();
    SoundTrack track{kSoundRate_hz, {}};
    track.samples.reserve(bytes.size() / 2);
    for (std::size_t k = 0; 2 * k + 1 < bytes.size(); ++k)
        track.samples.push_back(sampleAt(bytes, k));
    return track;
}

}  // namespace stillbay
