// SPDX-License-Identifier: MIT
#include "core/calibrate/pluck_mark.h"

#include <gtest/gtest.h>

#include <functional>
#include <string>

namespace stillbay {
namespace {

// Nothing left to doubt.
PluckDoubts careful()
{
    PluckDoubts doubts;
    doubts.free = {.residual = 0.05, .misfit = 0.002, .compared = 4};
    doubts.rubber = {.ratio = 1.3, .loss = 0.1, .tension = 1.01};
    doubts.ratioSpread = 0.02;
    doubts.tensionSpread = 0.02;
    doubts.excited = 4;
    doubts.isSensorWeighed = doubts.isModulusMeasured = doubts.areAxesTold = true;
    return doubts;
}

struct DoubtAlone {
    const char* told;
    Quality quality;
    std::function<void(PluckDoubts&)> cast;
};

// Oracle: definition. Each doubt alone costs the mark what it says, with its own number in the
// words.
TEST(PluckMark, SaysEachDoubtByItself)
{
    ASSERT_EQ(pluckMark(careful()).quality, Quality::Good);
    EXPECT_EQ(english(pluckMark(careful()).reason),
              "4 of six modes rang, within 0.2 % of this craft's");
    const DoubtAlone all[] = {
        {"36 % of the record are no ringing", Quality::Poor,
         [](PluckDoubts& d) {
             d.free.residual = 0.36;
         }},
        {"what rings lies 2.1 % off", Quality::Poor,
         [](PluckDoubts& d) {
             d.free.misfit = 0.021;
         }},
        {"dynamic ratios of 1.30 and 1.90", Quality::Poor,
         [](PluckDoubts& d) {
             d.otherRatio = 1.9;
         }},
        {"a dynamic ratio of 0.95 is none of rubber", Quality::Poor,
         [](PluckDoubts& d) {
             d.rubber.ratio = 0.95;
         }},
        {"a dynamic ratio of 3.10 is none of rubber", Quality::Poor,
         [](PluckDoubts& d) {
             d.rubber.ratio = 3.1;
         }},
        {"most of what rings is none", Quality::Poor,
         [](PluckDoubts& d) {
             d.foreign = 0.31;
         }},
        {"the tubes pull 7 % more", Quality::Poor,
         [](PluckDoubts& d) {
             d.rubber.tension = 1.07;
         }},
        {"the tubes pull 7 % less", Quality::Poor,
         [](PluckDoubts& d) {
             d.rubber.tension = 0.93;
         }},
        {"one mode alone rang", Quality::Poor,
         [](PluckDoubts& d) {
             d.excited = 1;
         }},
        {"axes do not lie as stated", Quality::Fair,
         [](PluckDoubts& d) {
             d.axesMisfit = true;
         }},
        {"too short or too noisy", Quality::Fair,
         [](PluckDoubts& d) {
             d.free.compared = 0;
         }},
        {"do the hang test", Quality::Fair,
         [](PluckDoubts& d) {
             d.isModulusMeasured = false;
         }},
        {"a dynamic ratio of 1.70 is high for silicone", Quality::Fair,
         [](PluckDoubts& d) {
             d.rubber.ratio = 1.7;
         }},
        {"what rings lies 0.8 % off", Quality::Fair,
         [](PluckDoubts& d) {
             d.free.misfit = 0.008;
         }},
        {"16 % of the record are no ringing", Quality::Fair,
         [](PluckDoubts& d) {
             d.free.residual = 0.16;
         }},
        {"two modes alone rang", Quality::Fair,
         [](PluckDoubts& d) {
             d.excited = 2;
         }},
    };
    for (const DoubtAlone& doubt : all) {
        PluckDoubts doubts = careful();
        doubt.cast(doubts);
        const QualityMark mark = pluckMark(doubts);
        EXPECT_EQ(mark.quality, doubt.quality) << doubt.told;
        EXPECT_NE(english(mark.reason).find(doubt.told), std::string::npos) << english(mark.reason);
    }
}

// Oracle: definition. What a tension took up may be wrong by three of its spreads, no more.
TEST(PluckMark, AllowsATensionThreeSpreads)
{
    PluckDoubts doubts = careful();
    doubts.rubber.tension = 1.061;
    EXPECT_EQ(pluckMark(doubts).quality, Quality::Good);
    doubts.rubber.tension = 1.063;
    EXPECT_EQ(pluckMark(doubts).quality, Quality::Poor);
}

// Oracle: definition. Silicone ends at a ratio of 1.6, and two spreads of it may be meant.
TEST(PluckMark, AllowsARatioTwoSpreads)
{
    PluckDoubts doubts = careful();
    doubts.rubber.ratio = 1.63;
    EXPECT_EQ(pluckMark(doubts).quality, Quality::Good);
    doubts.rubber.ratio = 1.65;
    EXPECT_EQ(pluckMark(doubts).quality, Quality::Fair);
}

// Oracle: definition. The next step is the first of what is not told yet.
TEST(PluckMark, AsksForWhatIsNotToldYet)
{
    PluckDoubts doubts = careful();
    EXPECT_NE(english(pluckNextStep(doubts)).find("see whether masses"), std::string::npos);
    doubts.areAxesTold = false;
    EXPECT_NE(english(pluckNextStep(doubts)).find("axes lie"), std::string::npos);
    doubts.isModulusMeasured = false;
    EXPECT_NE(english(pluckNextStep(doubts)).find("hang test"), std::string::npos);
    doubts.isSensorWeighed = false;
    EXPECT_NE(english(pluckNextStep(doubts)).find("sensor weighs"), std::string::npos);
    doubts = careful();
    doubts.axesMisfit = true;
    ASSERT_EQ(pluckWarnings(doubts, {}).size(), 1U);
    EXPECT_EQ(pluckWarnings(doubts, {}).front().code, "pluck-axes");
}

}  // namespace
}  // namespace stillbay
