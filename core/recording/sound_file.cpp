// SPDX-License-Identifier: MIT
#include "core/recording/sound_file.h"

#include "core/base/format.h"
#include "core/recording/pieces.h"
#include "core/recording/rate_limit.h"
#include "core/recording/wav_header.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <cstring>
#include <memory>
#include <optional>
#include <sndfile.h>
#include <string>
#include <utility>

namespace stillbay {
namespace {

constexpr std::size_t kMostSoundChannels = 16;
constexpr std::size_t kFramesAtOnce = std::size_t{1} << 14;

/// What libsndfile sees as its file: bytes from an offset on, as long as nobody wants to stop.
///
/// A damaged file can make a decoder read and seek without end; no sound file asks for its bytes
/// so often, and then there are no more.
class SoundBytes {
public:
    SoundBytes(const ByteSource& source, std::uint64_t from, std::uint64_t size,
               std::stop_token stop)
        : m_source(source), m_from(from), m_size(size), m_stop(std::move(stop))
    {
    }

    static SF_VIRTUAL_IO access()
    {
        SF_VIRTUAL_IO io = {};
        io.get_filelen = [](void* self) {
            return static_cast<sf_count_t>(of(self).m_size);
        };
        io.seek = [](sf_count_t offset, int whence, void* self) {
            return of(self).seek(offset, whence);
        };
        io.read = [](void* into, sf_count_t count, void* self) {
            return of(self).read(static_cast<char*>(into), count);
        };
        io.write = [](const void*, sf_count_t, void*) {
            return sf_count_t{0};
        };
        io.tell = [](void* self) {
            return static_cast<sf_count_t>(of(self).m_at);
        };
        return io;
    }

    std::uint64_t at() const { return m_at; }

private:
    static constexpr std::uint64_t kCallCost = 64;  // bytes that a call counts for at least

    static SoundBytes& of(void* self) { return *static_cast<SoundBytes*>(self); }

    bool isOver()
    {
        m_spent += kCallCost;
        return m_stop.stop_requested() || m_spent > (std::uint64_t{1} << 24) + 100 * m_size;
    }

    sf_count_t seek(sf_count_t offset, int whence)
    {
        const auto size = static_cast<sf_count_t>(m_size);
        const sf_count_t base = whence == SEEK_SET   ? 0
                                : whence == SEEK_CUR ? static_cast<sf_count_t>(m_at)
                                                     : size;
        if (isOver() || offset < -base || offset > size - base)
            return -1;
        m_at = static_cast<std::uint64_t>(base + offset);
        return base + offset;
    }

    sf_count_t read(char* into, sf_count_t count)
    {
        if (isOver() || count <= 0 || m_at >= m_size)
            return 0;
        const auto most = std::min(static_cast<std::uint64_t>(count), m_size - m_at);
        const Result<std::size_t> got =
            m_source.read(m_from + m_at, {into, static_cast<std::size_t>(most)});
        if (!got)
            return 0;
        m_at += *got;
        m_spent += *got;
        return static_cast<sf_count_t>(*got);
    }

    const ByteSource& m_source;
    std::uint64_t m_from, m_size, m_at = 0, m_spent = 0;
    std::stop_token m_stop;
};

struct CloseSound {
    void operator()(SNDFILE* sound) const { sf_close(sound); }
};

/// A sound that is open for reading, from its first sample on.
struct OpenSound {
    std::unique_ptr<SoundBytes> bytes;  // in use by the handle
    std::unique_ptr<SNDFILE, CloseSound> handle;
    std::size_t channels = 0;
    double rate_hz = 0.0;
    std::uint64_t frames = 0;  // that its header promises; 0: it does not say
    std::uint64_t least = 0;   // that are there for certain, or that only a damaged file has not
    std::size_t bitsOfSample = 0;
};

int rawFormat(const WavHeader& header)
{
    switch (header.sample) {
        case WavHeader::Sample::Float:
            return header.bytes == 4 ? SF_FORMAT_FLOAT : SF_FORMAT_DOUBLE;
        case WavHeader::Sample::MuLaw:
            return SF_FORMAT_ULAW;
        case WavHeader::Sample::ALaw:
            return SF_FORMAT_ALAW;
        case WavHeader::Sample::Pcm:
            break;
    }
    return header.bytes == 1   ? SF_FORMAT_PCM_U8
           : header.bytes == 2 ? SF_FORMAT_PCM_16
           : header.bytes == 3 ? SF_FORMAT_PCM_24
                               : SF_FORMAT_PCM_32;
}

tl::unexpected<Error> tooLong(std::uint64_t most)
{
    return fail(Errc::BadInput, phrase("the sound has more than %1 samples: cut out what matters",
                                       fixed(static_cast<double>(most), 0)));
}

Result<OpenSound> opened(std::unique_ptr<SoundBytes> bytes, SF_INFO info)
{
    SF_VIRTUAL_IO access = SoundBytes::access();
    OpenSound sound;
    sound.handle.reset(sf_open_virtual(&access, SFM_READ, &info, bytes.get()));
    if (!sound.handle)
        return fail(Errc::BadInput, phrase("the sound is damaged: its header cannot be read"));
    sound.bytes = std::move(bytes);
    sound.channels = static_cast<std::size_t>(std::max(info.channels, 0));
    sound.rate_hz = info.samplerate;
    const bool isOpenEnded = info.frames <= 0 || info.frames == SF_COUNT_MAX;
    sound.frames = isOpenEnded ? 0 : static_cast<std::uint64_t>(info.frames);
    sound.least = sound.frames;
    return sound;
}

// The chunks of a WAV are walked here, and the samples alone go to the library: it has hung in
// what other programs write around them.
Result<OpenSound> openWav(const ByteSource& source, const std::stop_token& stop)
{
    return readWavHeader(source).and_then([&](const WavHeader& header) -> Result<OpenSound> {
        if (const auto rate = checkRate(header.rate_hz); !rate)
            return tl::unexpected(rate.error());
        SF_INFO info = {};
        info.samplerate = static_cast<int>(header.rate_hz);
        info.channels = static_cast<int>(std::min<std::size_t>(header.channels, 1024));
        info.format = SF_FORMAT_RAW | SF_ENDIAN_LITTLE | rawFormat(header);
        const std::uint64_t size = header.frames * header.bytes * header.channels;
        return opened(std::make_unique<SoundBytes>(source, header.dataAt, size, stop), info)
            .map([&header](OpenSound sound) {
                sound.frames = header.promisedFrames;
                sound.least = header.frames;
                return sound;
            });
    });
}

Result<OpenSound> openSound(const ByteSource& source, SoundKind kind, const std::stop_token& stop)
{
    Result<OpenSound> sound =
        kind == SoundKind::Wav
            ? openWav(source, stop)
            : opened(std::make_unique<SoundBytes>(source, 0, source.size(), stop), SF_INFO{});
    if (!sound)
        return sound;
    if (sound->channels == 0 || sound->channels > kMostSoundChannels)
        return fail(Errc::BadInput, phrase("the sound has %1 channels, more than %2",
                                           whole(sound->channels), whole(kMostSoundChannels)));
    if (const auto rate = checkRate(sound->rate_hz); !rate)
        return tl::unexpected(rate.error());
    if (sound->least > kMostSoundValues)
        return tooLong(kMostSoundValues);
    return sound;
}

// The last page of an Ogg says that it is the last.
bool isOggWhole(const ByteSource& source)
{
    constexpr std::uint64_t kLongestPage = 65307;
    std::string tail(static_cast<std::size_t>(std::min(source.size(), kLongestPage)), '\0');
    const Result<std::size_t> got = source.read(source.size() - tail.size(), tail);
    const std::size_t page = tail.rfind("OggS");
    return got && page != std::string::npos && page + 5 < tail.size() &&
           (static_cast<unsigned char>(tail[page + 5]) & 4U) != 0;
}

Phrase saysSoundEnds(std::size_t samples, std::uint64_t promised)
{
    if (promised > samples)
        return phrase("the file ends after sample %1; its header promises %2", whole(samples),
                      fixed(static_cast<double>(promised), 0));
    return phrase("the file ends within the sound, after sample %1", whole(samples));
}

Phrase saysSampleIsNone(const std::string& name, std::size_t sample, std::size_t count)
{
    return phrase("%1 holds no number at sample %2 (samples like it: %3)", name, whole(sample),
                  whole(count));
}

/// Of float samples, which can hold anything.
void bridgeSamples(Recording& recording, const std::stop_token& stop)
{
    for (Channel& channel : recording.channels) {
        std::size_t first = 0, count = 0;
        double held = 0.0;
        inPieces(0, channel.values.size(), stop, [&](std::size_t from, std::size_t to) {
            for (std::size_t i = from; i < to; ++i) {
                double& value = channel.values[i];
                if (std::isfinite(value)) {
                    held = value;
                    continue;
                }
                value = held;
                first = count++ == 0 ? i + 1 : first;
            }
        });
        if (count > 0)
            recording.flaws.push_back({RecordingFlaw::Kind::NotANumber, first, count,
                                       saysSampleIsNone(channel.name, first, count)});
    }
}

Result<Recording> emptyRecording(const ReadPlan& plan, const OpenSound& sound)
{
    if (plan.columns.size() != sound.channels)
        return fail(Errc::BadInput, phrase("the sound has %1 channels, not %2",
                                           whole(sound.channels), whole(plan.columns.size())));
    Recording recording;
    recording.rate = plan.rate_hz.value_or(sound.rate_hz);
    for (const ColumnPlan& column : plan.columns)
        if (column.isUsed)
            recording.channels.push_back({column.name, column.quantity, {}});
    if (recording.channels.empty())
        return fail(Errc::BadInput, phrase("no column of the recording is in use"));
    return checkRate(recording.rate).map([&recording] { return std::move(recording); });
}

// Room for so many more samples, doubled at need but never beyond what is read at most.
void makeRoom(std::vector<double>& values, std::size_t more, std::uint64_t most)
{
    const std::size_t needed = values.size() + more;
    if (needed > values.capacity())
        values.reserve(std::max(needed, static_cast<std::size_t>(
                                            std::min<std::uint64_t>(2 * values.capacity(), most))));
}

void addFrames(Recording& recording, const ReadPlan& plan, std::span<const double> frames,
               std::uint64_t most)
{
    std::size_t k = 0;
    for (std::size_t c = 0; c < plan.columns.size(); ++c) {
        if (!plan.columns[c].isUsed)
            continue;
        std::vector<double>& values = recording.channels[k++].values;
        makeRoom(values, frames.size() / plan.columns.size(), most);
        for (std::size_t at = c; at < frames.size(); at += plan.columns.size())
            values.push_back(frames[at] * plan.columns[c].scale);
    }
}

}  // namespace

Result<ReadPlan> planSound(const ByteSource& source, SoundKind kind)
{
    return openSound(source, kind, {}).map([](const OpenSound& sound) {
        ReadPlan plan;
        plan.kind = ReadPlan::Kind::Sound;
        plan.rate_hz = sound.rate_hz;
        for (std::size_t c = 0; c < sound.channels; ++c) {
            ColumnPlan column;
            column.name = formatted("channel %zu", c + 1);
            setUnit(column, Quantity::Sound, unitsOf(Quantity::Sound).front().unit);
            plan.columns.push_back(std::move(column));
        }
        return plan;
    });
}

Result<Recording> readSound(const ByteSource& source, SoundKind kind, const ReadPlan& plan,
                            const std::stop_token& stop, const Progress& progress,
                            std::uint64_t mostValues)
{
    Result<OpenSound> sound = openSound(source, kind, stop);
    if (!sound)
        return tl::unexpected(sound.error());
    Result<Recording> recording = emptyRecording(plan, *sound);
    if (!recording)
        return recording;
    const auto total = static_cast<std::size_t>(source.size());
    const std::uint64_t most = mostValues / recording->channels.size();
    if (sound->least > most)
        return tooLong(most);
    // What a header promises is believed as far as the file can hold it.
    for (Channel& channel : recording->channels)
        channel.values.reserve(
            static_cast<std::size_t>(std::min({sound->frames, most, std::uint64_t{16} * total})));
    std::vector<double> frames(kFramesAtOnce * sound->channels);
    for (;;) {
        const sf_count_t got =
            sf_readf_double(sound->handle.get(), frames.data(), sf_count_t{kFramesAtOnce});
        if (stop.stop_requested())
            return tl::unexpected(stoppedOnRequest());
        if (got <= 0)
            break;
        if (recording->samples() + static_cast<std::size_t>(got) > most)
            return tooLong(most);
        addFrames(*recording, plan,
                  std::span(frames).first(static_cast<std::size_t>(got) * sound->channels), most);
        if (progress)
            progress(std::min(static_cast<std::size_t>(sound->bytes->at()), total), total);
    }
    const std::size_t samples = recording->samples();
    if (samples < 2)
        return fail(Errc::BadInput, phrase("the sound holds no samples"));
    if (samples < sound->frames || (kind == SoundKind::Ogg && !isOggWhole(source)))
        recording->flaws.push_back(
            {RecordingFlaw::Kind::Truncated, samples, 1, saysSoundEnds(samples, sound->frames)});
    bridgeSamples(*recording, stop);
    return recording;
}

}  // namespace stillbay
