// SPDX-License-Identifier: MIT
// Where the bay is held, as design variables of the search.
#include "core/assess/assess.h"
#include "core/search/recommend.h"
#include "tests/assess/crafts.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace stillbay {
namespace {

using Craft = Setup;  // inside TEST the name Setup is taken

SearchSpace levelSpace(std::vector<VariableRange> variables)
{
    return {.variables = std::move(variables), .stock = {}, .kept = {}, .level = true};
}

// Oracle: brute force over every height and direction that a ruler and a protractor can follow.
TEST(Places, TwoVariablesFindTheBestOfAll)
{
    const Craft craft = test::sampleCraft("reedbed");
    const SearchSpace space =
        levelSpace({{Variable::Height, -52, -28}, {Variable::Direction, 10, 70}});
    const Found found = findBest(craft, space, {.robustSamples = 0}).value();
    const Evaluator evaluator(craft);
    const Hanging hanging = hangingOf(craft, true);
    double least = std::numeric_limits<double>::infinity();
    for (int height = -52; height <= -28; ++height)
        for (int direction = 10; direction <= 70; ++direction) {
            Design design = wholeDesignOf(craft);
            setValue(design, Variable::Height, height);
            setValue(design, Variable::Direction, direction);
            const Evaluation evaluation = evaluator.evaluate(hanging.hung(std::move(design)));
            if (evaluation.feasible())
                least = std::min(least, evaluation.cruise.worst_px());
        }
    EXPECT_LE(found.best.evaluation.cruise.worst_px(), 1.01 * least);
}

// Oracle: a fine grid about what was found, two grains each way.
TEST(Places, FourVariablesLeaveNothingBetterNearby)
{
    const Craft craft = test::sampleCraft("reedbed");
    const SearchSpace space = levelSpace({{Variable::FreeLength, 15, 30},
                                          {Variable::Height, -52, -28},
                                          {Variable::Direction, 10, 70},
                                          {Variable::SpreadY, 25, 50}});
    const Found found = findBest(craft, space, {.robustSamples = 0}).value();
    const double best = found.best.evaluation.cruise.worst_px();
    const Evaluator evaluator(craft);
    const Hanging hanging = hangingOf(craft, true);
    std::array<int, 4> step{-2, -2, -2, -2};
    for (bool isLast = false; !isLast;) {
        Design design = found.best.design;
        bool isWithin = true;
        for (std::size_t k = 0; k < step.size(); ++k) {
            const VariableRange& range = space.variables[k];
            const double value =
                valueOf(found.best.design, range.variable) + step.at(k) * grainOf(range.variable);
            isWithin = isWithin && value >= range.from && value <= range.to;
            setValue(design, range.variable, value);
        }
        if (isWithin) {
            const Evaluation evaluation = evaluator.evaluate(hanging.hung(std::move(design)));
            if (evaluation.feasible()) {
                EXPECT_GE(evaluation.cruise.worst_px(), 0.99 * best);
            }
        }
        std::size_t k = 0;
        while (k < step.size() && ++step.at(k) > 2)
            step.at(k++) = -2;
        isLast = k == step.size();
    }
}

// Oracle: the sample's own report; what is recommended with height and direction free leaves
// 0.45 px or less at both packs, and no variable alone does as much as both.
TEST(Places, HeightAndDirectionQuietTheSample)
{
    const Craft craft = test::sampleCraft("reedbed");
    RecommendOptions options;
    options.search.robustSamples = 64;
    options.across = options.up = 13;
    const Recommendation answer =
        recommend({craft, levelSpace({usualRange(craft, Variable::Height),
                                      usualRange(craft, Variable::Direction)})},
                  options)
            .value();
    const Design& design = answer.candidates.front().design;
    const CruiseFigures cruise = *assess(withDesign(craft, design)).value().cruise;
    EXPECT_LE(cruise.full.worst_px, 0.45);
    EXPECT_LE(cruise.empty.worst_px, 0.45);
    for (const Variable variable : {Variable::Height, Variable::Direction})
        EXPECT_NEAR(std::remainder(valueOf(design, variable), 1.0), 0, 1e-9);
    ASSERT_EQ(answer.alone.size(), 2U);
    for (const VariableEffect& effect : answer.alone) {
        Design alone = wholeDesignOf(craft);
        setValue(alone, effect.variable, effect.to);
        EXPECT_EQ(effect.to, valueOf(design, effect.variable));
        const auto there = assess(withDesign(craft, hangingOf(craft, true).hung(std::move(alone))));
        ASSERT_TRUE(there && effect.evaluation.feasible());
        EXPECT_NEAR(effect.evaluation.cruise.worst_px(), there->cruise->worst_px(), 1e-9);
        EXPECT_GT(effect.evaluation.cruise.worst_px(), cruise.worst_px());
    }
    EXPECT_LE(answer.alone[0].evaluation.cruise.worst_px(),
              answer.alone[1].evaluation.cruise.worst_px());
}

// Oracle: definition; a drilled craft has only the place of the heaviest part, and never gets
// worse.
TEST(Places, ADrilledCraftMovesItsHeaviestPart)
{
    const Craft craft = test::sampleCraft("quarry");
    const auto refused = findBest(craft, {.variables = {{Variable::Height, -60, -20}}});
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().where, "height_mm");
    const Design present = wholeDesignOf(craft);
    const Found found = findBest(craft,
                                 {.variables = {usualRange(craft, Variable::BalanceX),
                                                usualRange(craft, Variable::BalanceZ)}},
                                 {.robustSamples = 0}, {{present}})
                            .value();
    const Evaluation before = Evaluator(craft).evaluate(present);
    EXPECT_FALSE(before.isBetterThan(found.best.evaluation));
    EXPECT_EQ(found.best.design.mounts, craft.mounts);
    const Assessment after = assess(withDesign(craft, found.best.design)).value();
    EXPECT_NEAR(after.cruise->worst_px(), found.best.evaluation.cruise.worst_px(),
                1e-9 * after.cruise->worst_px());
}

}  // namespace
}  // namespace stillbay
