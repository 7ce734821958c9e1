// SPDX-License-Identifier: MIT
#include "core/clip/frames.h"

#include "tests/clip/clip_files.h"
#include "tests/commands/output_folder.h"

#include <gtest/gtest.h>

#include <cmath>
#include <thread>

namespace stillbay {
namespace {

constexpr int kWidth = 96, kHeight = 64;

std::string source(const std::string& rate, int frames, const std::string& luma,
                   const std::string& after = {})
{
    return "color=s=96x64:r=" + rate + ",format=yuv420p,trim=end_frame=" + std::to_string(frames) +
           ",geq=lum='" + luma + "':cb=128:cr=128" + after;
}

std::vector<std::string> losslessFrom(const std::string& graph)
{
    return {"-f", "lavfi", "-i", graph, "-c:v", "libx264", "-qp", "0", "-preset", "ultrafast"};
}

// As the drawing has it: x to the right, y down, n the frame.
std::vector<std::uint8_t> drawn(int n)
{
    std::vector<std::uint8_t> luma;
    for (int y = 0; y < kHeight; ++y)
        for (int x = 0; x < kWidth; ++x)
            luma.push_back(static_cast<std::uint8_t>((3 * x + 5 * y + 7 * n) % 256));
    return luma;
}

// A folder to be in, so that a name can begin with anything.
class InsideFolder {
public:
    explicit InsideFolder(const std::filesystem::path& folder)
        : m_before(std::filesystem::current_path())
    {
        std::filesystem::current_path(folder);
    }
    ~InsideFolder() { std::filesystem::current_path(m_before); }
    InsideFolder(const InsideFolder&) = delete;
    InsideFolder& operator=(const InsideFolder&) = delete;

private:
    std::filesystem::path m_before;
};

// Oracle: closed form of the drawing, compressed without loss; times of 29.97 frames a second that
// the file keeps in 1/600 s, wrong by half a tick at most. The name would be an option, a list, an
// address, a pattern and a command elsewhere.
TEST(Frames, AreTheFilmsWhateverItsName)
{
    const OutputFolder output;
    const InsideFolder inside(std::filesystem::path(output.path()).parent_path());
    const std::string file = "-y concat:a|b http:$(touch gone);`x`'%03d\n.mp4";
    auto arguments = losslessFrom(source("30000/1001", 12, "mod(3*X+5*Y+7*N,256)"));
    arguments.insert(arguments.end(), {"-video_track_timescale", "600"});
    makeClip(file, arguments);

    const auto facts = probeClip(file);
    ASSERT_TRUE(facts) << complaint(facts);
    EXPECT_EQ(facts->width, 96U);
    EXPECT_EQ(facts->height, 64U);
    EXPECT_EQ(facts->bitDepth, 8U);
    EXPECT_EQ(facts->rotation_deg, 0);
    EXPECT_FALSE(facts->hasSound);
    EXPECT_FALSE(facts->isHighRange);
    EXPECT_TRUE(facts->warnings.empty());
    ASSERT_EQ(facts->frameTime_s.size(), 12U);
    EXPECT_NEAR(facts->frameRate_hz, 29.97, 0.05);

    std::vector<std::size_t> told;
    auto stream = FrameStream::open(file, *facts, {}, {}, [&](std::size_t done, std::size_t all) {
        told.push_back(done);
        EXPECT_EQ(all, 12U);
    });
    ASSERT_TRUE(stream) << complaint(stream);
    for (int n = 0; n < 12; ++n) {
        const auto frame = stream->next();
        ASSERT_TRUE(frame && *frame) << complaint(frame);
        EXPECT_EQ((*frame)->index, static_cast<std::size_t>(n));
        EXPECT_NEAR((*frame)->time_s, n * 1001 / 30000.0, 0.5 / 600);
        EXPECT_EQ((*frame)->time_s, facts->frameTime_s[static_cast<std::size_t>(n)]);
        const std::vector<std::uint8_t> luma((*frame)->luma.begin(), (*frame)->luma.end());
        EXPECT_EQ(luma, drawn(n)) << n;
    }
    const auto end = stream->next();
    ASSERT_TRUE(end) << complaint(end);
    EXPECT_FALSE(*end);
    EXPECT_FALSE(*stream->next());  // and stays at its end
    EXPECT_EQ(told.size(), 12U);
    EXPECT_EQ(told.back(), 12U);
    EXPECT_TRUE(stream->warnings().empty());
    EXPECT_FALSE(hasChildren());
    EXPECT_EQ(output.files(), 1U);  // the film, and nothing that its name would have made
}

// Oracle: closed form of the drawing and of the times. Ten bits, a curve for high range, frames
// that come when they like, a sound beside them.
TEST(Frames, OfTenBitsHighRangeAndUnevenTimes)
{
    const OutputFolder output;
    const std::string file = output.path("film.mov");
    makeClip(file, {"-f",
                    "lavfi",
                    "-i",
                    "color=s=96x64:r=30,format=yuv420p10,trim=end_frame=8,"
                    "geq=lum='mod(13*X+5*Y+70*N,1024)':cb=512:cr=512,"
                    "setparams=color_trc=smpte2084,settb=1/90000,setpts='(N+0.2*sin(N))/30/TB'",
                    "-f",
                    "lavfi",
                    "-i",
                    "sine=d=0.3",
                    "-c:v",
                    "libx264",
                    "-qp",
                    "0",
                    "-preset",
                    "ultrafast",
                    "-color_trc",
                    "smpte2084",
                    "-fps_mode",
                    "passthrough",
                    "-enc_time_base",
                    "1:90000",
                    "-video_track_timescale",
                    "90000",
                    "-metadata:s:v",
                    "rotate=90",
                    "-c:a",
                    "pcm_s16le"});
    const auto facts = probeClip(file);
    ASSERT_TRUE(facts) << complaint(facts);
    EXPECT_EQ(facts->width, 96U);
    EXPECT_EQ(facts->bitDepth, 10U);
    EXPECT_TRUE(facts->isHighRange);
    EXPECT_TRUE(facts->hasSound);
    EXPECT_FALSE(facts->evenTimes);
    EXPECT_TRUE(facts->warnings.empty());

    const WholeClip clip = wholeClip(file, *facts);
    ASSERT_FALSE(clip.error) << english(clip.error->what);
    ASSERT_EQ(clip.time_s.size(), 8U);
    for (std::size_t n = 0; n < 8; ++n) {
        const auto k = static_cast<double>(n);
        EXPECT_EQ(clip.time_s[n], facts->frameTime_s[n]);
        EXPECT_NEAR(clip.time_s[n], (k + 0.2 * std::sin(k)) / 30, 1.0 / 90'000);
        for (const auto& [x, y] : {std::pair(0, 0), std::pair(95, 0), std::pair(17, 41)}) {
            const unsigned wide = (13U * static_cast<unsigned>(x) + 5U * static_cast<unsigned>(y) +
                                   70U * static_cast<unsigned>(n)) %
                                  1024;
            EXPECT_EQ(clip.luma[n][static_cast<std::size_t>(y * kWidth + x)],
                      std::min((wide + 2) / 4, 255U))
                << n << ' ' << x << ' ' << y;
        }
    }
}

// Oracle: the drawing: every frame twice, so the first of each pair is the film's; the part from
// 0.4 s up to 1 s holds drawings 6 to 14 of those 15 a second. Then it is stopped half way.
TEST(Frames, OfAPartWithoutRepeatsUntilStopped)
{
    const OutputFolder output;
    const std::string file = output.path("film.mp4");
    makeClip(file, losslessFrom(source("15", 24, "mod(3*X+5*Y+7*N,256)", ",fps=30")));
    const ClipOptions part{.from_s = 0.4, .to_s = 1.0};
    const auto facts = probeClip(file, part);
    ASSERT_TRUE(facts) << complaint(facts);
    EXPECT_EQ(facts->frameTime_s.size(), 18U);
    EXPECT_NEAR(facts->frameRate_hz, 30, 1e-6);

    const WholeClip clip = wholeClip(file, *facts, part);
    ASSERT_FALSE(clip.error) << english(clip.error->what);
    ASSERT_EQ(clip.time_s.size(), 9U);
    for (int n = 0; n < 9; ++n) {
        EXPECT_NEAR(clip.time_s[static_cast<std::size_t>(n)], (6 + n) / 15.0, 1e-5);
        EXPECT_EQ(clip.luma[static_cast<std::size_t>(n)], drawn(6 + n));
    }
    EXPECT_EQ(clip.repeated, 9U);
    ASSERT_EQ(clip.warnings.size(), 1U);
    EXPECT_EQ(clip.warnings[0].code, "film_frames_repeat");
    EXPECT_EQ(english(clip.warnings[0].text),
              "9 of 18 frames repeat the one before and were left out");

    std::stop_source source;
    auto stream = FrameStream::open(file, *facts, part, source.get_token());
    ASSERT_TRUE(stream);
    ASSERT_TRUE(stream->next());
    source.request_stop();
    std::optional<Error> stopped;
    for (int n = 0; n < 9 && !stopped; ++n)
        if (const auto frame = stream->next(); !frame)
            stopped = frame.error();
    EXPECT_EQ(stopped, stoppedOnRequest());
    EXPECT_FALSE(hasChildren());
}

}  // namespace
}  // namespace stillbay
