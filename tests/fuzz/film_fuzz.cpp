// SPDX-License-Identifier: MIT
#include "core/clip/decoder_tools.h"
#include "core/clip/frame_line.h"
#include "core/clip/probe_text.h"
#include "tests/fuzz/demand.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <string_view>
#include <vector>

namespace {

using namespace stillbay;

// Up to the next line of two dashes, which is taken off too.
std::string_view nextSection(std::string_view& text)
{
    constexpr std::string_view kBetween = "--\n";
    const std::size_t end = std::min(text.find(kBetween), text.size());
    const std::string_view section = text.substr(0, end);
    text.remove_prefix(std::min(end + kBetween.size(), text.size()));
    return section;
}

void demandForm(const ClipFacts& facts)
{
    demand(std::min(facts.width, facts.height) >= kFewestPixelsASide &&
               std::max(facts.width, facts.height) <= kMostPixelsASide,
           "a size that is read");
    demand(facts.rotation_deg >= 0 && facts.rotation_deg < 360, "a turn");
    demand(facts.bitDepth >= 8 && facts.bitDepth <= 16, "a depth");
    demand(std::isfinite(facts.tick_s) && facts.tick_s >= 0, "a tick");
    demand(std::isfinite(facts.firstStamp_s) && std::isfinite(facts.duration_s), "times");
}

void demandTimes(const ClipFacts& facts, const ClipOptions& options)
{
    const std::vector<double>& times = facts.frameTime_s;
    demand(times.size() >= 2 && times.size() <= kMostFrames, "many frames");
    demand(std::ranges::adjacent_find(times, std::greater_equal<>()) == times.end(),
           "rising times");
    demand(std::isfinite(times.front()) && std::isfinite(times.back()), "finite times");
    demand(times.back() - times.front() <= kLongestPart_s, "a part that is read");
    demand(isInPart(facts, options, times.front()) && isInPart(facts, options, times.back()),
           "frames of the part");
    demand(std::isfinite(facts.frameRate_hz) && facts.frameRate_hz > 0, "a frame rate");
    demand(!facts.evenTimes || facts.evenTimes->step > 0, "a step");
    for (const Warning& warning : facts.warnings)
        demandReason(english(warning.text));
}

void tryStamps(const ClipFacts& form, std::string_view stamps, const ClipOptions& options)
{
    ClipFacts facts = form;
    if (const auto taken = takeTimesInText(facts, stamps, options); taken)
        demandTimes(facts, options);
    else
        demandReason(english(taken.error().what));
}

void tryLine(std::string_view line, const ClipFacts& form)
{
    const LineUse use = ofFrames(line);
    if (use == LineUse::Remember)
        demand(plainWords(line, "film.mp4").size() <= line.size(), "words of the line");
    if (use != LineUse::Take)
        return;
    if (const auto tick_s = tickInLine(line)) {
        demand(std::isfinite(*tick_s) && *tick_s > 0, "a tick");
        return;
    }
    const auto picture = pictureInLine(line, form);
    if (picture)
        demand(picture->bits >= 8 && picture->bits <= 16, "bits of a pixel");
    else
        demandReason(english(picture.error().what));
}

}  // namespace

/// What ffprobe says of a film's form, what it says of its frames, and what ffmpeg says while it
/// decodes them, a line of two dashes between: refused with a sentence, or read into finite times
/// that rise.
// The name that libFuzzer calls.
// NOLINTNEXTLINE(readability-identifier-naming)
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    std::string_view text(reinterpret_cast<const char*>(data), size);  // bytes as text
    const auto form = factsInText(nextSection(text));
    if (!form) {
        demandReason(english(form.error().what));
        return 0;
    }
    demandForm(*form);
    const std::string_view stamps = nextSection(text);
    tryStamps(*form, stamps, {});
    tryStamps(*form, stamps, {.from_s = 0.1, .to_s = 0.3});
    while (!text.empty()) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        tryLine(text.substr(0, end), *form);
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return 0;
}
