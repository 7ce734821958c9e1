// SPDX-License-Identifier: MIT
#include "core/clip/sound_track.h"

#include "tests/clip/clip_files.h"
#include "tests/clip/sound_files.h"
#include "tests/commands/output_folder.h"

#include <gtest/gtest.h>

#include <chrono>
#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

constexpr double kTone_hz = 440, kToneFrom_s = 1.0, kToneSize = 0.25;

// Two seconds with a tone in the second one.
std::filesystem::path clipWithTone(const OutputFolder& folder)
{
    const std::string silent = folder.path("silent.mp4");
    makeClip(silent, {"-f", "lavfi", "-i", "testsrc2=size=96x64:rate=30:duration=2", "-c:v",
                      "libx264", "-pix_fmt", "yuv420p"});
    const std::string file = folder.path("tone: of 440.mp4");
    addSound(
        silent, file,
        [](double t) {
            return t < kToneFrom_s ? 0.0
                                   : kToneSize * std::sin(2 * std::numbers::pi * kTone_hz * t);
        },
        2.0);
    return file;
}

// Amplitude of the tone between two times of the track.
double toneBetween(const SoundTrack& track, double from_s, double to_s)
{
    double cosine = 0, sine = 0, count = 0;
    for (std::size_t k = 0; k < track.samples.size(); ++k) {
        const double t = static_cast<double>(k) / track.rate_hz;
        if (t < from_s || t >= to_s)
            continue;
        cosine += track.samples[k] * std::cos(2 * std::numbers::pi * kTone_hz * t);
        sine += track.samples[k] * std::sin(2 * std::numbers::pi * kTone_hz * t);
        ++count;
    }
    return 2 * std::hypot(cosine, sine) / count;
}

// Oracle: the tone that was put into the film. The coder changes its size by some per cent and lays
// sound in steps of 21 ms.
TEST(SoundTrack, IsThatOfThePart)
{
    const OutputFolder folder;
    const auto file = clipWithTone(folder);
    const ClipOptions part{.from_s = 0.5, .to_s = 1.7};
    const auto facts = probeClip(file, part);
    ASSERT_TRUE(facts) << complaint(facts);
    ASSERT_TRUE(facts->hasSound);
    const auto track = readSoundTrack(file, *facts, part);
    ASSERT_TRUE(track) << complaint(track);
    EXPECT_EQ(track->rate_hz, 8000.0);
    EXPECT_NEAR(static_cast<double>(track->samples.size()), 1.2 * 8000, 0.05 * 8000);
    EXPECT_LT(toneBetween(*track, 0.0, 0.45), 0.01);
    EXPECT_NEAR(toneBetween(*track, 0.55, 1.15), kToneSize, 0.05 * kToneSize);
    EXPECT_FALSE(hasChildren());
}

TEST(SoundTrack, ThatIsNoneOrCannotBeReadEndsInASentence)
{
    const OutputFolder folder;
    const auto file = clipWithTone(folder);
    const auto facts = probeClip(file);
    ASSERT_TRUE(facts) << complaint(facts);
    ClipFacts mute = *facts;
    mute.hasSound = false;
    EXPECT_EQ(readSoundTrack(file, mute).error().code, Errc::BadInput);

    auto tools = findDecoderTools().value();
    ClipOptions broken{.silence_s = 0.3, .tools = tools};
    for (const char* const lines : {"exit 3", "kill -9 $$", "sleep 20", "printf x; exit 0"}) {
        broken.tools->ffmpeg = makeScript(folder.path("ffmpeg"), lines);
        const auto before = std::chrono::steady_clock::now();
        const auto track = readSoundTrack(file, *facts, broken);
        EXPECT_EQ(track ? Errc::NoAnswer : track.error().code, Errc::BadInput) << lines;
        EXPECT_LT(std::chrono::steady_clock::now() - before, std::chrono::seconds(10)) << lines;
        EXPECT_FALSE(hasChildren()) << lines;
    }
    // One that always comes with more before it is given up.
    ClipFacts longer = *facts;
    longer.frameTime_s = {0.0, 30.0};
    ClipOptions dribbling{.silence_s = 1.0, .tools = tools};
    dribbling.tools->ffmpeg =
        makeScript(folder.path("ffmpeg"), "while head -c 32768 /dev/zero; do sleep 0.4; done");
    const auto before = std::chrono::steady_clock::now();
    const auto dribbled = readSoundTrack(file, longer, dribbling);
    EXPECT_FALSE(dribbled);
    EXPECT_LT(std::chrono::steady_clock::now() - before, std::chrono::seconds(4));
    EXPECT_FALSE(hasChildren());
    // A decoder that never ends is heard for as long as the part lasts.
    broken.tools->ffmpeg = makeScript(folder.path("ffmpeg"), "exec cat /dev/zero");
    const auto endless = readSoundTrack(file, *facts, broken);
    ASSERT_TRUE(endless) << complaint(endless);
    EXPECT_LE(endless->samples.size(), 2.1 * 8000);
    EXPECT_FALSE(hasChildren());

    std::stop_source stopped;
    stopped.request_stop();
    EXPECT_EQ(readSoundTrack(file, *facts, {}, stopped.get_token()).error().code, Errc::NoAnswer);
    EXPECT_FALSE(hasChildren());
}

}  // namespace
}  // namespace stillbay
