// SPDX-License-Identifier: MIT
#include "core/search/known.h"

#include "tests/assess/crafts.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace stillbay {
namespace {

using Craft = Setup;  // inside TEST the name Setup is taken

const SearchSpace kLengths{{{Variable::FreeLength, 15, 45}}, {}, {}};

Tune tuneOf(const Craft& craft, double freeLength_mm)
{
    Tune tune{"kept", "", "", wholeDesignOf(craft), {}};
    tune.design.mounts.free_length_mm = freeLength_mm;
    return tune;
}

std::vector<Design> knownOf(const Craft& craft, const SearchSpace& space)
{
    return knownDesigns(Evaluator(craft), craft, space);
}

// Oracle: definition.
TEST(KnownDesigns, BeginWithThePresentTuneWhereItLiesWithin)
{
    const Craft craft = test::sampleCraft("reedbed");
    EXPECT_EQ(knownOf(craft, kLengths), std::vector{wholeDesignOf(craft)});
    EXPECT_TRUE(knownOf(craft, {{{Variable::FreeLength, 30, 45}}, {}, {}}).empty());
    EXPECT_TRUE(knownOf(craft, {{{Variable::FreeLength, 15, 45}}, {{6, 3, 40}}, {}}).empty());
}

// Oracle: definition; in a drilled craft the stretch follows and must stay within.
TEST(KnownDesigns, HeedWhatMustBeKept)
{
    const Craft craft = test::sampleCraft("quarry");
    const double stretch = valueOf(wholeDesignOf(craft), Variable::Stretch);
    EXPECT_EQ(
        knownOf(craft, {kLengths.variables, {}, {{Variable::Stretch, stretch - 0.01, 2}}}).size(),
        1U);
    EXPECT_TRUE(
        knownOf(craft, {kLengths.variables, {}, {{Variable::Stretch, stretch + 0.01, 2}}}).empty());
}

// Oracle: definition.
TEST(KnownDesigns, TakeOfAKeptTuneOnlyWhatMayBeSearched)
{
    Craft craft = test::sampleCraft("reedbed");
    craft.tunes = {tuneOf(craft, 25), tuneOf(craft, 80)};
    for (MountPoint& point : craft.tunes[0].design.mounts.points)
        point.elevation_deg = 40.0;
    const std::vector<Design> known = knownOf(craft, kLengths);
    ASSERT_EQ(known.size(), 2U);
    Design wanted = wholeDesignOf(craft);
    wanted.mounts.free_length_mm = 25;
    EXPECT_EQ(known[1], wanted);
}

// Oracle: each one's own judgement.
TEST(KnownDesigns, AreTheBestFewOfTheKeptTunes)
{
    Craft craft = test::sampleCraft("reedbed");
    for (int k = 0; k < 12; ++k)
        craft.tunes.push_back(tuneOf(craft, 18 + 2 * k));
    craft.tunes.push_back(craft.tunes.back());
    const Evaluator evaluator(craft);
    const std::vector<Design> known = knownOf(craft, kLengths);
    ASSERT_EQ(known.size(), 4U);
    EXPECT_EQ(known[0], wholeDesignOf(craft));
    for (std::size_t k = 2; k < known.size(); ++k)
        EXPECT_FALSE(evaluator.evaluate(known[k]).isBetterThan(evaluator.evaluate(known[k - 1])));
    for (const Tune& tune : craft.tunes) {
        const Design& design = tune.design;
        if (std::find(known.begin(), known.end(), design) == known.end()) {
            EXPECT_FALSE(evaluator.evaluate(design).isBetterThan(evaluator.evaluate(known.back())));
        }
    }
}

}  // namespace
}  // namespace stillbay
