// SPDX-License-Identifier: MIT
#include "core/base/units.h"
#include "core/recording/common_clock.h"
#include "core/recording/read_recording.h"
#include "core/recording/spectrum.h"
#include "core/recording/transfer.h"
#include "tests/recordings/samples.h"
#include "tests/recordings/trace_picture.h"

#include <fstream>
#include <span>
#include <stdexcept>

namespace stillbay::test {
namespace {

namespace fs = std::filesystem;

template <class T>
T valueOf(const Result<T>& result)
{
    if (!result)
        throw std::runtime_error(english(result.error().what));
    return *result;
}

const std::vector<double>& valuesOf(const Recording& recording, const char* name)
{
    const Channel* channel = channelOf(recording, name);
    if (channel == nullptr)
        throw std::runtime_error(std::string("no channel ") + name);
    return channel->values;
}

// A channel from one second to another since the first sample, less a steady part.
Trace traceOf(const Recording& recording, const char* channel, const char* name, double from,
              double to, double steady = 0.0)
{
    Trace trace{.name = name};
    const std::vector<double>& values = valuesOf(recording, channel);
    for (std::size_t k = 0; k < values.size(); ++k) {
        const double t = static_cast<double>(k) / recording.rate;
        if (t >= from && t <= to) {
            trace.x.push_back(t);
            trace.y.push_back(values[k] - steady);
        }
    }
    return trace;
}

std::string pluckPicture(const fs::path& samples)
{
    const Recording sideways = valueOf(readRecording(samples / "pluck-sideways.csv"));
    const Recording nod = valueOf(readRecording(samples / "pluck-nod.csv"));
    constexpr double kTo = 4.8;
    const std::vector<TraceMark> marks{
        {0.0, 0.7, "held"}, {0.7, 2.4, "rings"}, {2.4, 3.1, "held"}, {3.1, 4.8, "rings"}};
    return tracePicture(
        {{"time, s", "m/s²", {traceOf(sideways, "x", "pluck-sideways.csv: x", 0, kTo)}, marks},
         {"time, s",
          "m/s²",
          {traceOf(nod, "z", "pluck-nod.csv: z less gravity", 0, kTo, kGravity)},
          marks}});
}

std::string tapPicture(const fs::path& samples)
{
    const Recording tap = valueOf(readRecording(samples / "arm-tap.csv"));
    return tracePicture(
        {{"time, s",
          "m/s²",
          {traceOf(tap, "up", "arm-tap.csv: up less gravity", 0, 2.2, kGravity)},
          {{0.2137, 1.2411, "tapped upwards"}, {1.2411, 2.2, "tapped sideways"}}},
         {"time, s", "m/s²", {traceOf(tap, "left", "arm-tap.csv: left", 0, 2.2)}, {}}});
}

std::string soundPicture(const fs::path& samples)
{
    const Recording sound = valueOf(readRecording(samples / "motor-sound.flac"));
    const std::vector<double>& values = sound.channels.at(0).values;
    Trace wave{.name = "motor-sound.flac"};
    for (std::size_t k = 0; k < values.size(); ++k) {
        wave.x.push_back(static_cast<double>(k) / sound.rate);
        wave.y.push_back(values[k]);
    }
    std::vector<TraceMark> marks;
    for (const HeldThrottle& held : kHeldThrottles)
        marks.push_back({held.from, held.to, std::to_string(int(held.stick * 100 + 0.5)) + " %"});
    const auto from = static_cast<std::size_t>(kHeldThrottles[1].from * sound.rate);
    const auto count =
        static_cast<std::size_t>((kHeldThrottles[1].to - kHeldThrottles[1].from) * sound.rate);
    const Spectrum spectrum =
        valueOf(welch(std::span(values).subspan(from, count), sound.rate, {.segment = 4096}));
    Trace density{.name = "spectrum at 45 %"};
    for (std::size_t k = 1; spectrum.frequency_hz[k] <= 700; ++k) {
        density.x.push_back(spectrum.frequency_hz[k]);
        density.y.push_back(spectrum.density[k]);
    }
    return tracePicture({{"time, s", "of full scale", {wave}, marks},
                         {"frequency, Hz", "1/Hz", {density}, {}, true}});
}

std::string sweepPicture(const fs::path& samples)
{
    const Recording airframe = valueOf(readRecording(samples / "sweep-airframe.csv"));
    const Recording bay = valueOf(readRecording(samples / "sweep-bay.csv"));
    return tracePicture(
        {{"time, s; the stick goes from 8 to 40 %",
          "m/s²",
          {traceOf(airframe, "left", "sweep-airframe.csv: left", 0, airframe.duration())},
          {}},
         {"time on the sensor's own clock, s",
          "m/s²",
          {traceOf(bay, "left", "sweep-bay.csv: left", 0, bay.duration())},
          {}}});
}

std::string transferPicture(const fs::path& samples)
{
    const Recording airframe = valueOf(readRecording(samples / "sweep-airframe.csv"));
    const Recording bay = valueOf(readRecording(samples / "sweep-bay.csv"));
    const ClockMatch match{.offset = kBayClockBegan, .drift = 1 / kBayClockRuns - 1};
    const Recording both = valueOf(onOneClock(airframe, bay, match));
    // The airframe's channels come first, throttle among them; the bay's up is the last.
    const std::vector<double>& input = valuesOf(both, "up");
    const std::vector<double>& output = both.channels.back().values;
    const Transfer H = valueOf(transfer(input, output, both.rate, {.segment = 512}));
    Trace magnitude{.name = "bay over airframe, up"}, coherence{.name = "coherence"};
    for (std::size_t k = 3; H.frequency_hz[k] <= 120; ++k) {
        magnitude.x.push_back(H.frequency_hz[k]);
        magnitude.y.push_back(H.magnitude[k]);
        coherence.x.push_back(H.frequency_hz[k]);
        coherence.y.push_back(H.coherence[k]);
    }
    return tracePicture({{"frequency, Hz", "magnitude", {magnitude}, {}, true},
                         {"frequency, Hz", "0 to 1", {coherence}, {}}});
}

void write(const fs::path& file, const std::string& text)
{
    std::ofstream out(file, std::ios::binary);
    out << text;
    if (!out.flush())
        throw std::runtime_error("cannot write " + file.string());
}

}  // namespace

void writePictures(const fs::path& samples, const fs::path& folder)
{
    write(folder / "trace-pluck.svg", pluckPicture(samples));
    write(folder / "trace-tap.svg", tapPicture(samples));
    write(folder / "trace-sound.svg", soundPicture(samples));
    write(folder / "trace-sweep.svg", sweepPicture(samples));
    write(folder / "trace-transfer.svg", transferPicture(samples));
}

}  // namespace stillbay::test
