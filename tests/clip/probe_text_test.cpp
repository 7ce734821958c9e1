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

// By hand: four frames of 40 ms, the last one shown until 0.16 s; a film that begins at 2 s by its
// own stamps begins at 0 s here. A file may state half a second more.
TEST(ProbeText, TheEndOfAFilmIsTold)
{
    const std::string four = "2000,K_\n2040,__\n2080,__\n2120,__\n";
    ClipFacts facts = formOf("1/1000", "2.0");
    EXPECT_EQ(complaint(takeTimesInText(facts, four, {.from_s = 0.5})),
              "there is no frame in this part: the film ends at 0.12\u00A0s");
    for (const double stated_s : {0.65, 0.67, 3.0}) {
        facts = formOf("1/1000", "2.0");
        facts.duration_s = stated_s;
        ASSERT_TRUE(takeTimesInText(facts, four, {}));
        EXPECT_NEAR(facts.frameTime_s.back(), 0.12, 1e-12);
        EXPECT_NEAR(facts.frameRate_hz, 25, 1e-9);
        EXPECT_EQ(facts.warnings.size(), stated_s > 0.66 ? 1U : 0U) << stated_s;
    }
    EXPECT_EQ(english(facts.warnings.at(0).text),
              "the film breaks off at 0.2\u00A0s of 3.0\u00A0s");
}

// By hand: a part of a second, two minutes behind the film's beginning, is no longer than that.
TEST(ProbeText, ALatePartIsNoLongOne)
{
    ClipFacts facts = formOf("1/1000");
    EXPECT_TRUE(takeTimesInText(facts, "120000,K_\n120500,__\n121000,__\n", {.from_s = 120}));
    facts = formOf("1/1000");
    EXPECT_FALSE(takeTimesInText(facts, "0,K_\n500,__\n121000,__\n", {}));
}

// By hand: a part's ends move by a tenth of an even step, or by what a stamp is rounded by.
TEST(ProbeText, APartHasTheFramesWithinIt)
{
    ClipFacts facts = formOf("1/1000", "2.0");
    const ClipOptions part{.from_s = 1.0, .to_s = 2.0};
    EXPECT_TRUE(isInPart(facts, part, 1.0 - 1e-6));
    EXPECT_FALSE(isInPart(facts, part, 1.0 - 1e-5));
    EXPECT_FALSE(isInPart(facts, part, 2.0 - 1e-6));
    EXPECT_TRUE(isInPart(facts, part, 2.0 - 1e-5));
    EXPECT_EQ(timeOfStamp(facts, 3.25), 1.25);
    facts.evenTimes = EvenTimes{2.0, 0.04};
    EXPECT_TRUE(isInPart(facts, part, 0.997));
    EXPECT_FALSE(isInPart(facts, part, 0.995));
    EXPECT_TRUE(isInPart(facts, part, 1.995));
    EXPECT_FALSE(isInPart(facts, part, 1.997));
    EXPECT_NEAR(timeOfStamp(facts, 3.2413), 1.24, 1e-12);
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
