// SPDX-License-Identifier: MIT
#include "core/assess/assess.h"
#include "core/assess/texts.h"
#include "tests/assess/crafts.h"

#include <gtest/gtest.h>

#include <cmath>
#include <string>

namespace stillbay {
namespace {

std::string said(const ElasticCentre& centre)
{
    std::string text;
    for (const Phrase& sentence : turningTexts(centre))
        text += (text.empty() ? "" : " ") + english(sentence);
    return text;
}

const AssessOptions kFew{.throttle = Grid{0.3, 0.4, 0.05}, .frequency_hz = Grid{1.0, 1.0, 1.0}};

// Oracle: the heights of the independent solution (reference_test.cpp), rounded; the place behind
// is its own.
TEST(TurningTexts, OfTheReferenceCraft)
{
    const Assessment sample = assess(test::steepReedbed(), kFew).value();
    EXPECT_EQ(said(sample.elastic_centre),
              "Sideways, the tubes hold the bay 6.4\u00a0mm above its centre of mass, so sideways "
              "vibration rolls it; fore and aft 1.8\u00a0mm above, so fore-and-aft vibration "
              "pitches it. Up and down, they hold it 1.8\u00a0mm behind, seen from its centre of "
              "mass, so up-and-down vibration pitches it.");
    EXPECT_EQ(english(decouplingText(sample.bench_decoupling)),
              "Decoupling 96\u00a0%: so much of its energy a bench mode has, on average, in one "
              "motion.");
}

TEST(TurningTexts, SayBothSignsAndWhatIsHeldAtTheCentreOfMass)
{
    EXPECT_EQ(said({.rollHeight = -12.04e-3, .pitchHeight = 0.52e-3}),
              "Sideways, the tubes hold the bay 12.0\u00a0mm below its centre of mass, so sideways "
              "vibration rolls it; fore and aft 0.5\u00a0mm above, so fore-and-aft vibration "
              "pitches it.");
    EXPECT_EQ(said({.rollHeight = -0.49e-3, .pitchHeight = -3e-3}),
              "Sideways, the tubes hold the bay within 0.5\u00a0mm of the height of its centre of "
              "mass; fore and aft 3.0\u00a0mm below, so fore-and-aft vibration pitches it.");
    EXPECT_EQ(said({.rollHeight = 0, .pitchHeight = 0.49e-3}),
              "Sideways, the tubes hold the bay within 0.5\u00a0mm of the height of its centre of "
              "mass; fore and aft within 0.5\u00a0mm of that height.");
}

TEST(TurningTexts, SayWhereItIsHeldUpAndDownWhereThatIsBesideTheCentreOfMass)
{
    const auto second = [](double ahead, double left) {
        return english(turningTexts({.heaveAhead = ahead, .heaveLeft = left}).at(1));
    };
    EXPECT_EQ(second(4e-3, 0.4e-3),
              "Up and down, they hold it 4.0\u00a0mm ahead, seen from its centre of mass, so "
              "up-and-down vibration pitches it.");
    EXPECT_EQ(second(0, -2e-3),
              "Up and down, they hold it 2.0\u00a0mm to the right, seen from its centre of mass, "
              "so up-and-down vibration rolls it.");
    EXPECT_EQ(second(-4e-3, 2e-3),
              "Up and down, they hold it 4.0\u00a0mm behind and 2.0\u00a0mm to the left, seen "
              "from its centre of mass, so up-and-down vibration pitches and rolls it.");
    EXPECT_EQ(turningTexts({.heaveAhead = 0.4e-3, .heaveLeft = -0.4e-3}).size(), 1U);
}

// Oracle: identities on crafts without any symmetry. The shares of a mode sum to one, the figure of
// all lies between all of all and one each.
TEST(TurningTexts, EnergiesOfSkewCraftsSumToOne)
{
    int answered = 0;
    for (unsigned seed = 1; seed <= 8; ++seed) {
        const auto craft = test::skewCraft(seed);
        const auto answer = assess(craft, kFew);
        if (!answer)
            continue;
        ++answered;
        for (const auto* modes : {&answer->bench, &answer->flight})
            for (const ModeFigures& mode : *modes)
                EXPECT_NEAR(mode.energy.sum(), 1, 1e-12) << seed;
        EXPECT_GT(answer->bench_decoupling, 1.0 / 6) << seed;
        EXPECT_LE(answer->bench_decoupling, 1) << seed;
    }
    EXPECT_GE(answered, 6);
}

}  // namespace
}  // namespace stillbay
