// SPDX-License-Identifier: MIT
#include "core/clip/read_clip.h"

#include "tests/clip/clip_files.h"
#include "tests/commands/output_folder.h"

#include <gtest/gtest.h>

#include <fstream>
#include <iterator>

namespace stillbay {
namespace {

/// A decoder that shows frames of 64 × 64 pixels with stamps in 1/25 s, from a script in its place.
class Shown {
public:
    /// @param stamps of the frames, each with a number that is its picture: alike, a repeat
    Result<ClipShifts> read(const std::vector<std::pair<int, int>>& stamps)
    {
        std::string lines =
            "echo \"$*\" > '" + m_folder.path("asked") +
            "'\nsay() { echo \"[Parsed_showinfo_1 @ 0x1] [info] n: $1 pts: $1 fmt:gray s:64x64 i:P "
            "\" >&2; printf '%04096d' $2; }\n";
        ClipFacts facts;
        facts.width = facts.height = 64;
        facts.tick_s = 0.04;
        facts.frameRate_hz = 25;
        facts.bitsPerPixel = 0.3;
        for (const auto& [tick, picture] : stamps) {
            lines += "say " + std::to_string(tick) + ' ' + std::to_string(picture) + '\n';
            facts.frameTime_s.push_back(0.04 * tick);
        }
        m_part.tools = DecoderTools{{}, makeScript(m_folder.path("ffmpeg"), lines)};
        return readShifts(m_folder.path("film.mp4"), facts, m_part);
    }
    void askFrom(double from_s) { m_part.from_s = from_s; }
    std::string asked() const
    {
        std::ifstream in(m_folder.path("asked"));
        return {std::istreambuf_iterator<char>(in), {}};
    }

private:
    OutputFolder m_folder;
    ClipOptions m_part{.silence_s = 10};
};

std::vector<std::pair<int, int>> framesOf(int count, int repeats)
{
    std::vector<std::pair<int, int>> frames;
    for (int n = 0; n < count; ++n)
        frames.emplace_back(n, n <= repeats ? 1 : n + 1);
    return frames;
}

// Oracle: by hand: a frame lasts half a step either side of its stamp, but for the first; two
// stretches of three frames, 0.1 and 0.12 s, whose pictures are too small.
TEST(ReadShifts, SaysWhatWasLeftOut)
{
    Shown shown;
    const auto clip = shown.read({{0, 1}, {1, 2}, {2, 3}, {10, 4}, {11, 5}, {12, 6}});
    ASSERT_TRUE(clip) << complaint(clip);
    EXPECT_EQ(clip->frames, 6U);
    ASSERT_EQ(clip->warnings.size(), 1U);
    EXPECT_EQ(clip->warnings[0].code, "film_unusable");
    EXPECT_EQ(english(clip->warnings[0].text),
              "0.22\u00A0s in 2 stretches from 0.00\u00A0s to 0.50\u00A0s left out: the picture is "
              "too small");
    const auto whole = shown.read({{3, 1}, {4, 2}, {5, 3}});
    ASSERT_TRUE(whole) << complaint(whole);
    EXPECT_EQ(english(whole->warnings.at(0).text),
              "0.12\u00A0s to 0.22\u00A0s left out: the picture is too small");
}

// Oracle: by hand: of 40 frames one that repeats is not worth a word, three are more than a
// twentieth; bits are those of the frames that are left.
TEST(ReadShifts, CountsRepeats)
{
    for (const int repeats : {0, 1, 3}) {
        Shown shown;
        const auto clip = shown.read(framesOf(40, repeats));
        ASSERT_TRUE(clip) << complaint(clip);
        EXPECT_EQ(clip->frames, std::size_t(40 - repeats));
        EXPECT_NEAR(clip->facts.bitsPerPixel, 0.3 * 40 / (40 - repeats), 1e-9);
        const std::string first = english(clip->warnings.at(0).text);
        if (repeats < 3)
            EXPECT_EQ(first.find("repeat"), std::string::npos) << first;
        else
            EXPECT_EQ(first, "3 of 40 frames repeat the one before and were left out");
    }
}

// Oracle: by hand: from one frame of 25 a second before the part, and never before the film.
TEST(ReadShifts, AsksForItsPart)
{
    Shown shown;
    shown.askFrom(0.2);
    ASSERT_TRUE(shown.read({{5, 1}, {6, 2}}));
    EXPECT_NE(shown.asked().find("-ss 160000us "), std::string::npos) << shown.asked();
    shown.askFrom(0.03);
    ASSERT_TRUE(shown.read({{1, 1}, {2, 2}}));
    EXPECT_NE(shown.asked().find("-ss 0us "), std::string::npos) << shown.asked();
}

}  // namespace
}  // namespace stillbay
