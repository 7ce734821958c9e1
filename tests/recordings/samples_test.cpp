// SPDX-License-Identifier: MIT
#include "tests/recordings/samples.h"

#include "tests/assess/crafts.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdint>
#include <fstream>
#include <iterator>
#include <sndfile.h>

namespace stillbay {
namespace {

namespace fs = std::filesystem;

const fs::path kSamples = fs::path(STILLBAY_SAMPLES_DIR) / "recordings";

std::string textOf(const fs::path& file)
{
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

std::vector<std::int16_t> samplesOf(const fs::path& file)
{
    SF_INFO info{};
    SNDFILE* in = sf_open(file.c_str(), SFM_READ, &info);
    if (in == nullptr)
        return {};
    std::vector<std::int16_t> samples(static_cast<std::size_t>(info.frames * info.channels));
    sf_read_short(in, samples.data(), static_cast<sf_count_t>(samples.size()));
    sf_close(in);
    return samples;
}

// Oracle: the committed files themselves. Tables byte by byte; of the sound its samples, because
// versions of the library pack them differently.
TEST(SampleRecordings, AreWhatTheGeneratorWrites)
{
    const fs::path folder = fs::path(testing::TempDir()) / "stillbay-samples";
    fs::create_directories(folder);

    test::writeSamples(test::sampleCraft("reedbed"), folder);

    for (const char* table : {"pluck-sideways.csv", "pluck-nod.csv", "arm-tap.csv",
                              "sweep-airframe.csv", "sweep-bay.csv"}) {
        const std::string written = textOf(folder / table);
        EXPECT_FALSE(written.empty()) << table;
        EXPECT_TRUE(written == textOf(kSamples / table)) << table;
    }
    const auto sound = samplesOf(folder / "motor-sound.flac");
    EXPECT_FALSE(sound.empty());
    EXPECT_TRUE(sound == samplesOf(kSamples / "motor-sound.flac"));
    fs::remove_all(folder);
}

TEST(SampleRecordings, AreSmallAndSayThatTheyAreInvented)
{
    constexpr std::uintmax_t kMost = 1'700'000;  // bytes, of all together
    std::uintmax_t size = 0;
    for (const auto& entry : fs::directory_iterator(kSamples)) {
        size += entry.file_size();
        if (entry.path().extension() == ".csv") {
            const std::string text = textOf(entry.path());
            EXPECT_NE(text.find(test::kInvented), std::string::npos) << entry.path();
        }
    }
    EXPECT_LT(size, kMost);
    SF_INFO info{};
    SNDFILE* in = sf_open((kSamples / "motor-sound.flac").c_str(), SFM_READ, &info);
    ASSERT_NE(in, nullptr);
    EXPECT_STREQ(sf_get_string(in, SF_STR_COMMENT), test::kInvented);
    sf_close(in);
}

}  // namespace
}  // namespace stillbay
