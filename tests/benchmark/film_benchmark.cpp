// SPDX-License-Identifier: MIT
// What a film costs. `film_benchmark FILM` decodes it by ffmpeg alone, then through the pipe, then
// reads its rows, then lines out of them with a readout of half a frame, and prints seconds on the
// clock and of the processors for each.
#include "core/clip/film_lines.h"
#include "core/clip/frames.h"
#include "core/clip/row_shift_reader.h"

#include <chrono>
#include <cstdio>
#include <functional>
#include <string>
#include <sys/resource.h>

namespace {

using namespace stillbay;

double seconds(const timeval& time)
{
    return static_cast<double>(time.tv_sec) + 1e-6 * static_cast<double>(time.tv_usec);
}

double processorTime(int whose)
{
    rusage used = {};
    ::getrusage(whose, &used);
    return seconds(used.ru_utime) + seconds(used.ru_stime);
}

double peak_mb(int whose)
{
    rusage used = {};
    ::getrusage(whose, &used);
    return static_cast<double>(used.ru_maxrss) / 1e3;
}

// From its making on: the clock, this process, its children that have ended.
class Cost {
public:
    void print(const char* what, std::size_t frames) const
    {
        const double clock = std::chrono::duration<double>(Clock::now() - m_start).count();
        std::printf("%-12s %6.2f s on the clock, processors %6.2f s in ffmpeg and %5.2f s here",
                    what, clock, processorTime(RUSAGE_CHILDREN) - m_children,
                    processorTime(RUSAGE_SELF) - m_own);
        if (frames > 0)
            std::printf("; %.0f frames a second", static_cast<double>(frames) / clock);
        std::printf("\n");
    }

private:
    using Clock = std::chrono::steady_clock;
    Clock::time_point m_start = Clock::now();
    double m_own = processorTime(RUSAGE_SELF), m_children = processorTime(RUSAGE_CHILDREN);
};

LineUse ignored(std::string_view)
{
    return LineUse::Ignore;
}

int report(const Error& error)
{
    std::fprintf(stderr, "%s\n", english(error.what).c_str());
    return 1;
}

void print(const std::vector<Warning>& warnings)
{
    for (const Warning& warning : warnings)
        std::printf("%s: %s\n", warning.code.c_str(), english(warning.text).c_str());
}

tl::expected<void, Error> decodeAlone(const std::string& file)
{
    const auto tools = findDecoderTools();
    if (!tools)
        return tl::unexpected(tools.error());
    auto child = ChildProcess::start(tools->ffmpeg,
                                     {"-nostdin", "-loglevel", "error", "-i", "file:" + file,
                                      "-map", "0:v:0", "-f", "null", "-"},
                                     ignored);
    if (!child)
        return tl::unexpected(child.error());
    const auto ending = child->finish(patienceOf(600, {}));
    if (!ending)
        return tl::unexpected(ending.error());
    return {};
}

Result<std::size_t> readFrames(const std::string& file, const ClipFacts& facts,
                               const std::function<void(const Frame&)>& use)
{
    auto stream = FrameStream::open(file, facts);
    if (!stream)
        return tl::unexpected(stream.error());
    for (;;) {
        const auto frame = stream->next();
        if (!frame)
            return tl::unexpected(frame.error());
        if (!*frame)
            break;
        use(**frame);
    }
    print(stream->warnings());
    return stream->frames();
}

}  // namespace

int main(int count, char** arguments)
{
    if (count != 2)
        return 2;
    const std::string file = arguments[1];
    const Cost asking;
    const auto facts = probeClip(file);
    if (!facts)
        return report(facts.error());
    asking.print("asking", 0);
    std::printf("%u × %u, %u bits, %s, %.4f frames a second (even: %d), turned %d, %zu listed\n",
                facts->width, facts->height, facts->bitDepth, facts->codec.c_str(),
                facts->frameRate_hz, facts->evenTimes ? 1 : 0, facts->rotation_deg,
                facts->frameTime_s.size());
    print(facts->warnings);

    const Cost alone;
    if (const auto done = decodeAlone(file); !done)
        return report(done.error());
    alone.print("ffmpeg alone", facts->frameTime_s.size());

    const Cost piped;
    const auto handedOut = readFrames(file, *facts, [](const Frame&) {});
    if (!handedOut)
        return report(handedOut.error());
    piped.print("by the pipe", *handedOut);

    const Cost read;
    RowShiftReader reader;
    const auto seen = readFrames(file, *facts, [&](const Frame& frame) { reader.add(frame); });
    if (!seen)
        return report(seen.error());
    const RowShifts shifts = reader.finish();
    read.print("its rows", *seen);
    std::printf("%zu shifts under %zu references\n", shifts.bands.size(), shifts.references);
    for (const UnusableStretch& stretch : shifts.unusable)
        std::printf("%.2f s to %.2f s: %s\n", stretch.from_s, stretch.to_s,
                    english(stretch.reason).c_str());
    const Cost fitted;
    const auto reading = readFilm(shifts, {.readout_s = 0.5 / facts->frameRate_hz});
    if (!reading)
        return report(reading.error());
    fitted.print("its lines", 0);
    read.print("rows, lines", *seen);
    std::printf("%zu lines\n", reading->lines.size());
    std::printf("peaks: %.0f MB here, %.0f MB in ffmpeg\n", peak_mb(RUSAGE_SELF),
                peak_mb(RUSAGE_CHILDREN));
    return 0;
}
