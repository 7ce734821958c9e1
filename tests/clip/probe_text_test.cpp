// SPDX-License-Identifier: MIT
// Oracle: definition; what no double can tell is refused or counts as not there.
#include "core/clip/probe_text.h"

#include "core/clip/frame_line.h"
#include "tests/clip/clip_files.h"

#include <gtest/gtest.h>

#include <string>

namespace stillbay {
namespace {

std::string formText(const std::string& tick, const std::string& start)
{
    return "streams.stream.0.codec_type=\"video\"\nstreams.stream.0.width=640\n"
           "streams.stream.0.height=360\nstreams.stream.0.time_base=\"" +
           tick + "\"\nstreams.stream.0.start_time=\"" + start + "\"\n";
}

ClipFacts formOf(const std::string& tick, const std::string& start = "0.000000")
{
    return factsInText(formText(tick, start)).value_or(ClipFacts{});
}

// Their distances had no number of 64 bits.
TEST(ProbeText, StampsBeyondWhatADoubleTellsCountAsMissing)
{
    ClipFacts facts = formOf("1/1000");
    EXPECT_EQ(complaint(takeTimesInText(
                  facts, "-9223372036854775808,K_\n9223372036854775807,__\n0,__\n40,__\n", {})),
              english(filmWithoutTimes().what));
    facts = formOf("1/1000");
    const std::string oneFar = "0,K_\n40,__\n80,__\n9223372036854775807,__\n";
    ASSERT_TRUE(takeTimesInText(facts, oneFar, {}));
    EXPECT_EQ(facts.frameTime_s.size(), 3U);
}

TEST(ProbeText, MoreFramesThanAllowedAreRefused)
{
    std::string stamps;
    for (int k = 0; k <= 500'000; ++k)
        stamps += std::to_string(33 * k) + ",__\n";
    ClipFacts facts = formOf("1/1000");
    EXPECT_EQ(complaint(takeTimesInText(facts, stamps, {})),
              "the film has more than 500000 frames: name a part of it");
}

// A rate of infinitely many frames a second.
TEST(ProbeText, FramesOfOneInstantHaveNoTimes)
{
    ClipFacts facts = formOf("1/9223372036854775807", "-900000000");
    EXPECT_EQ(complaint(takeTimesInText(facts, "0,K_\n1,__\n", {})),
              english(filmWithoutTimes().what));
}

// Its microseconds had no number of 64 bits.
TEST(ProbeText, AStartBeyondAllTimesIsNotTaken)
{
    EXPECT_EQ(formOf("1/1000", "1e300").firstStamp_s, 0.0);
    EXPECT_EQ(formOf("1/1000", "-12.5").firstStamp_s, -12.5);
}

// Times of no number at all.
TEST(ProbeText, ATickOfNoLengthIsNotUnderstood)
{
    const auto tick = [](const std::string& ratio) {
        return tickInLine("[Parsed_showinfo_1 @ 0x1] [info] config in time_base: " + ratio +
                          ", frame_rate: 30/1");
    };
    EXPECT_EQ(tick("1/1000"), 1e-3);
    for (const char* const ratio : {"1/0", "0/0", "0/1", "-1/1000", "1/-1000"})
        EXPECT_FALSE(tick(ratio)) << ratio;
}

}  // namespace
}  // namespace stillbay
