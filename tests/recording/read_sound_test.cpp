// SPDX-License-Identifier: MIT
#include "core/recording/read_recording.h"
#include "core/recording/sound_file.h"

#include <gtest/gtest.h>

#include <bit>
#include <cmath>
#include <cstdint>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <limits>
#include <sndfile.h>
#include <string>
#include <unistd.h>
#include <vector>

namespace stillbay {
namespace {

// Little endian.
std::string bytesOfNumber(std::uint64_t value, std::size_t width)
{
    std::string bytes;
    for (std::size_t k = 0; k < width; ++k)
        bytes += static_cast<char>((value >> (8 * k)) & 0xFF);
    return bytes;
}

std::string chunk(const std::string& id, const std::string& body)
{
    return id + bytesOfNumber(body.size(), 4) + body + std::string(body.size() % 2, '\0');
}

/// A WAV by hand, so that every field of its header can lie.
struct Wav {
    std::uint64_t tag = 1, channels = 2, rate = 8000, bits = 16;
    bool isExtensible = false;
    std::string before, after;                  // chunks around the samples
    std::optional<std::uint64_t> promisedSize;  // of the samples; none: the truth
    std::string samples;

    std::string text() const
    {
        const std::uint64_t frame = channels * bits / 8;
        std::string format = bytesOfNumber(isExtensible ? 0xFFFE : tag, 2) +
                             bytesOfNumber(channels, 2) + bytesOfNumber(rate, 4) +
                             bytesOfNumber(rate * frame, 4) + bytesOfNumber(frame, 2) +
                             bytesOfNumber(bits, 2);
        if (isExtensible)
            format += bytesOfNumber(22, 2) + bytesOfNumber(bits, 2) + bytesOfNumber(0, 4) +
                      bytesOfNumber(tag, 2) +
                      std::string("\0\0\0\0\x10\0\x80\0\0\xAA\0\x38\x9B\x71", 14);
        const std::string data =
            "data" + bytesOfNumber(promisedSize.value_or(samples.size()), 4) + samples;
        const std::string all = "WAVE" + chunk("fmt ", format) + before + data + after;
        return "RIFF" + bytesOfNumber(all.size(), 4) + all;
    }
};

// Exact in every width: k/64 on the first channel, −k/128 on the others.
double sampleAt(std::size_t i, std::size_t channel)
{
    const double k = static_cast<double>(i % 60);
    return channel == 0 ? k / 64.0 : -k / 128.0;
}

constexpr std::size_t kFrames = 40;

std::string samplesOf(std::uint64_t tag, std::uint64_t bits, std::uint64_t channels)
{
    std::string samples;
    for (std::size_t i = 0; i < kFrames; ++i)
        for (std::size_t c = 0; c < channels; ++c) {
            const double value = sampleAt(i, c);
            if (tag == 3 && bits == 32)
                samples +=
                    bytesOfNumber(std::bit_cast<std::uint32_t>(static_cast<float>(value)), 4);
            else if (tag == 3)
                samples += bytesOfNumber(std::bit_cast<std::uint64_t>(value), 8);
            else if (bits == 8)
                samples += static_cast<char>(static_cast<unsigned char>(128.0 + 128.0 * value));
            else
                samples += bytesOfNumber(static_cast<std::uint64_t>(static_cast<std::int64_t>(
                                             std::ldexp(value, static_cast<int>(bits) - 1))),
                                         bits / 8);
        }
    return samples;
}

Wav goodWav()
{
    Wav wav;
    wav.samples = samplesOf(1, 16, 2);
    return wav;
}

std::string faultOf(const std::string& bytes)
{
    const Result<Recording> recording = readBytes(bytes);
    return recording ? "" : english(recording.error().what);
}

void expectTheSound(const Result<Recording>& read, std::size_t channels)
{
    ASSERT_TRUE(read) << english(read.error().what);
    ASSERT_EQ(read->channels.size(), channels);
    ASSERT_EQ(read->samples(), kFrames);
    for (std::size_t c = 0; c < channels; ++c)
        for (std::size_t i = 0; i < kFrames; ++i)
            ASSERT_DOUBLE_EQ(read->channels[c].values[i], sampleAt(i, c)) << c << " " << i;
}

// Oracle: the samples that were written, which every width holds exactly.
TEST(ReadSound, WavsOfEveryWidthAreReadExactly)
{
    for (const auto& [tag, bits] : std::vector<std::pair<std::uint64_t, std::uint64_t>>{
             {1, 8}, {1, 16}, {1, 24}, {1, 32}, {3, 32}, {3, 64}})
        for (const std::uint64_t channels : {1U, 2U, 3U, 8U})
            for (const bool isExtensible : {false, true})
                for (const std::string around : {"", "LIST"}) {
                    Wav wav;
                    wav.tag = tag;
                    wav.bits = bits;
                    wav.channels = channels;
                    wav.isExtensible = isExtensible;
                    wav.samples = samplesOf(tag, bits, channels);
                    if (!around.empty()) {
                        wav.before = chunk("LIST", "INFOISFT\x03");
                        wav.before += chunk("JUNK", std::string(999, 'x'));
                        wav.after = chunk("LIST", "INFO");
                    }
                    const Result<Recording> read = readBytes(wav.text());
                    SCOPED_TRACE(testing::Message() << tag << " " << bits << " " << channels);
                    expectTheSound(read, channels);
                    EXPECT_EQ(read->rate, 8000.0);
                    EXPECT_TRUE(read->flaws.empty());
                    EXPECT_EQ(read->channels[0].quantity, Quantity::Sound);
                }
}

TEST(ReadSound, AWavThatEndsBeforeItsHeaderSaysIsReadAsFarAsItGoes)
{
    Wav wav = goodWav();
    wav.promisedSize = 0xF0000000;  // nearly 4 GB
    const Result<Recording> read = readBytes(wav.text());
    expectTheSound(read, 2);
    ASSERT_EQ(read->flaws.size(), 1u);
    EXPECT_EQ(read->flaws[0].kind, RecordingFlaw::Kind::Truncated);
    EXPECT_EQ(read->flaws[0].row, kFrames);
    EXPECT_EQ(english(read->flaws[0].text),
              "the file ends after sample 40; its header promises 1006632960");
}

TEST(ReadSound, ALengthThatARecorderLeftOpenIsTheFilesOwn)
{
    for (const std::uint64_t open : {0xFFFFFFFFu, 0xFFFFFFF0u, 0u}) {
        Wav wav = goodWav();
        wav.promisedSize = open;
        const Result<Recording> read = readBytes(wav.text());
        expectTheSound(read, 2);
        EXPECT_TRUE(read->flaws.empty());
    }
}

TEST(ReadSound, AnRf64HasItsLengthElsewhere)
{
    Wav wav = goodWav();
    wav.promisedSize = 0xFFFFFFFF;
    std::string text = wav.text();
    text.replace(0, 4, "RF64");
    text.insert(12, chunk("ds64", bytesOfNumber(0, 8) + bytesOfNumber(wav.samples.size(), 8) +
                                      bytesOfNumber(0, 8) + bytesOfNumber(0, 4)));
    text += chunk("LIST", "INFO");
    expectTheSound(readBytes(text), 2);
}

TEST(ReadSound, DamagedAndForeignSoundsAreRefusedInOneLine)
{
    Wav wav = goodWav();
    wav.samples.clear();
    EXPECT_EQ(faultOf(wav.text()), "the sound holds no samples");
    wav = goodWav();
    wav.rate = 0;
    EXPECT_EQ(faultOf(wav.text()), "the sample rate is not above 0");
    wav.rate = 0xFFFFFFFF;
    EXPECT_NE(faultOf(wav.text()).find("samples a second, not 0.001 to 1000000"),
              std::string::npos);
    wav = goodWav();
    wav.channels = 0;
    EXPECT_EQ(faultOf(wav.text()), "the header of the sound is damaged");
    wav = goodWav();
    wav.tag = 2;
    EXPECT_NE(faultOf(wav.text()).find("save it as WAV with plain samples"), std::string::npos);
    wav = goodWav();
    wav.channels = 17;
    wav.samples = samplesOf(1, 16, 17);
    EXPECT_EQ(faultOf(wav.text()), "the sound has 17 channels, more than 16");
    wav = goodWav();
    wav.before = "LIST" + bytesOfNumber(0x7FFFFFFF, 4) + "INFO";
    EXPECT_EQ(faultOf(wav.text()), "the header of the sound is damaged");
    EXPECT_EQ(faultOf("\1\1\1\1ftypM4A isom..."),
              "MP4 or M4A is not read here: convert the sound to WAV or FLAC");
    EXPECT_EQ(faultOf("ID3 and more"), "MP3 is not read here: convert the sound to WAV or FLAC");
    EXPECT_EQ(faultOf("PK\x03\x04 and more"),
              "this is an archive or a spreadsheet: save the recording as CSV");
    EXPECT_EQ(faultOf("fLaC but no more"), "the sound is damaged: its header cannot be read");
    EXPECT_EQ(faultOf("RIFF\1\1\1\1AVI LIST"), "this RIFF file holds no sound: save it as WAV");
}

/// A file in memory that the library writes.
struct Written {
    std::string bytes;
    sf_count_t at = 0;
};

std::string writtenAs(int format, int channels)
{
    SF_VIRTUAL_IO io = {};
    io.get_filelen = [](void* self) {
        return static_cast<sf_count_t>(static_cast<Written*>(self)->bytes.size());
    };
    io.seek = [](sf_count_t offset, int whence, void* self) {
        Written& file = *static_cast<Written*>(self);
        file.at = offset + (whence == SEEK_SET   ? 0
                            : whence == SEEK_CUR ? file.at
                                                 : static_cast<sf_count_t>(file.bytes.size()));
        return file.at;
    };
    io.read = [](void* into, sf_count_t count, void* self) {
        Written& file = *static_cast<Written*>(self);
        const auto most = std::min(count, static_cast<sf_count_t>(file.bytes.size()) - file.at);
        std::memcpy(into, file.bytes.data() + file.at, static_cast<std::size_t>(most));
        file.at += most;
        return most;
    };
    io.write = [](const void* from, sf_count_t count, void* self) {
        Written& file = *static_cast<Written*>(self);
        const auto end = static_cast<std::size_t>(file.at + count);
        file.bytes.resize(std::max(file.bytes.size(), end));
        std::memcpy(file.bytes.data() + file.at, from, static_cast<std::size_t>(count));
        file.at += count;
        return count;
    };
    io.tell = [](void* self) {
        return static_cast<Written*>(self)->at;
    };
    Written file;
    SF_INFO info = {};
    info.samplerate = 8000;
    info.channels = channels;
    info.format = format;
    SNDFILE* const sound = sf_open_virtual(&io, SFM_WRITE, &info, &file);
    EXPECT_NE(sound, nullptr);
    std::vector<double> frames;
    for (std::size_t i = 0; i < 3000; ++i)
        for (int c = 0; c < channels; ++c)
            frames.push_back(sampleAt(i % kFrames, static_cast<std::size_t>(c)));
    sf_writef_double(sound, frames.data(), 3000);
    sf_close(sound);
    return file.bytes;
}

// Oracle: the samples that were written; FLAC keeps them exactly, Vorbis roughly.
TEST(ReadSound, FlacAndOggAreRead)
{
    const Result<Recording> flac = readBytes(writtenAs(SF_FORMAT_FLAC | SF_FORMAT_PCM_16, 2));
    ASSERT_TRUE(flac) << english(flac.error().what);
    ASSERT_EQ(flac->samples(), 3000u);
    EXPECT_TRUE(flac->flaws.empty());
    for (std::size_t i = 0; i < 3000; ++i)
        ASSERT_DOUBLE_EQ(flac->channels[1].values[i], sampleAt(i % kFrames, 1));
    const Result<Recording> ogg = readBytes(writtenAs(SF_FORMAT_OGG | SF_FORMAT_VORBIS, 1));
    ASSERT_TRUE(ogg) << english(ogg.error().what);
    EXPECT_EQ(ogg->samples(), 3000u);
    EXPECT_TRUE(ogg->flaws.empty());
}

TEST(ReadSound, ATruncatedFlacOrOggIsReadAsFarAsItGoesAndSaidSo)
{
    for (const int format : {SF_FORMAT_FLAC | SF_FORMAT_PCM_16, SF_FORMAT_OGG | SF_FORMAT_VORBIS}) {
        std::string bytes = writtenAs(format, 1);
        bytes.resize(bytes.size() - 9);
        const Result<Recording> read = readBytes(bytes);
        if (!read)
            continue;  // so short that nothing whole is left
        ASSERT_EQ(read->flaws.size(), 1u);
        EXPECT_EQ(read->flaws[0].kind, RecordingFlaw::Kind::Truncated);
    }
}

TEST(ReadSound, NoPrefixOfASoundCrashesOrHangs)
{
    for (const std::string& whole :
         {goodWav().text(), writtenAs(SF_FORMAT_FLAC | SF_FORMAT_PCM_16, 1).substr(0, 600),
          writtenAs(SF_FORMAT_OGG | SF_FORMAT_VORBIS, 1).substr(0, 600)})
        for (std::size_t length = 0; length < whole.size(); ++length) {
            const Result<Recording> read = readBytes(whole.substr(0, length));
            EXPECT_TRUE(read || !english(read.error().what).empty()) << length;
        }
}

TEST(ReadSound, ASampleThatIsNoNumberIsTold)
{
    Wav wav;
    wav.tag = 3;
    wav.bits = 64;
    wav.channels = 1;
    wav.samples = samplesOf(3, 64, 1);
    const auto nan = std::bit_cast<std::uint64_t>(std::numeric_limits<double>::quiet_NaN());
    wav.samples.replace(5 * 8, 8, bytesOfNumber(nan, 8));
    const Result<Recording> read = readBytes(wav.text());
    ASSERT_TRUE(read);
    ASSERT_EQ(read->flaws.size(), 1u);
    EXPECT_EQ(read->flaws[0].kind, RecordingFlaw::Kind::NotANumber);
    EXPECT_EQ(read->flaws[0].row, 6u);
    EXPECT_TRUE(std::isfinite(read->channels[0].values[5]));
}

TEST(ReadSound, OnlyTheChannelsInUseAreKeptAndAStatedScaleCounts)
{
    const std::string text = goodWav().text();
    Result<ReadPlan> plan = planBytes(text);
    ASSERT_TRUE(plan);
    plan->columns[0].isUsed = false;
    plan->columns[1].quantity = Quantity::Acceleration;
    plan->columns[1].scale = 20.0;
    const Result<Recording> read = readBytes(text, *plan);
    ASSERT_TRUE(read);
    ASSERT_EQ(read->channels.size(), 1u);
    EXPECT_EQ(read->channels[0].name, "channel 2");
    EXPECT_DOUBLE_EQ(read->channels[0].values[3], 20.0 * sampleAt(3, 1));
}

/// A beginning and then zeros, which need no room on the disk.
class SparseFile {
public:
    SparseFile(const std::string& head, std::uint64_t size)
        : m_file(std::filesystem::temp_directory_path() /
                 ("stillbay_sparse_" + std::to_string(::getpid()) + ".wav"))
    {
        std::ofstream(m_file, std::ios::binary) << head;
        std::filesystem::resize_file(m_file, size);
    }
    ~SparseFile() { std::filesystem::remove(m_file); }
    SparseFile(const SparseFile&) = delete;
    SparseFile& operator=(const SparseFile&) = delete;

    const std::filesystem::path& path() const { return m_file; }

private:
    std::filesystem::path m_file;
};

// Oracle: 2³² − 2¹⁶ bytes are 2³⁰ frames of two 16-bit channels, beyond the 2²⁷ that are read; of
// sixteen channels 2²⁷ frames, of which 2²⁷ / 16 are read.
TEST(ReadSound, AFileTooLargeForMemoryIsRefusedBeforeItIsRead)
{
    Wav wav = goodWav();
    wav.promisedSize = 0xFFFF0000;
    {
        const SparseFile file(wav.text(), std::uint64_t{1} << 32);
        const auto plan = planReading(file.path());
        ASSERT_FALSE(plan);
        EXPECT_EQ(english(plan.error().what),
                  "the sound has more than 134217728 samples: cut out what matters");
    }
    wav.channels = 16;
    const SparseFile file(wav.text(), std::uint64_t{1} << 32);
    auto plan = planReading(file.path());
    ASSERT_TRUE(plan);
    const auto read = readRecording(file.path(), *plan);
    ASSERT_FALSE(read);
    EXPECT_EQ(english(read.error().what),
              "the sound has more than 8388608 samples: cut out what matters");
}

// The 36 bits behind "fLaC" in which the file says how many samples it unpacks to.
TEST(ReadSound, AFlacThatPromisesTooMuchIsRefused)
{
    std::string flac = writtenAs(SF_FORMAT_FLAC | SF_FORMAT_PCM_16, 1);
    flac[21] = static_cast<char>(flac[21] | 0x0F);
    for (std::size_t k = 22; k < 26; ++k)
        flac[k] = '\xFF';
    EXPECT_EQ(faultOf(flac), "the sound has more than 134217728 samples: cut out what matters");
}

// Oracle: own derivation; the file does not say how many samples it unpacks to, and the limit is
// one below those it has.
TEST(ReadSound, ASoundOfUnstatedLengthIsRefusedAtTheLimit)
{
    std::string flac = writtenAs(SF_FORMAT_FLAC | SF_FORMAT_PCM_16, 1);
    flac[21] = static_cast<char>(flac[21] & 0xF0);
    for (std::size_t k = 22; k < 26; ++k)
        flac[k] = '\0';
    const auto plan = planBytes(flac);
    ASSERT_TRUE(plan);
    const MemoryBytes bytes(flac);
    const auto whole = readSound(bytes, SoundKind::Flac, *plan, {}, {});
    ASSERT_TRUE(whole) << english(whole.error().what);
    const std::uint64_t samples = whole->samples();
    EXPECT_TRUE(readSound(bytes, SoundKind::Flac, *plan, {}, {}, samples));
    const auto refused = readSound(bytes, SoundKind::Flac, *plan, {}, {}, samples - 1);
    ASSERT_FALSE(refused);
    EXPECT_NE(english(refused.error().what).find("cut out what matters"), std::string::npos);
}

}  // namespace
}  // namespace stillbay
