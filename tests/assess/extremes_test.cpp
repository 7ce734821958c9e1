// SPDX-License-Identifier: MIT
// Whatever setup the reader takes, the answer is finite or an error that names what is wrong.
#include "app/commands/command.h"
#include "app/commands/report_json.h"
#include "core/assess/assess.h"
#include "core/setup/validate.h"
#include "tests/setup/random_setup.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <random>

namespace stillbay {
namespace {

const AssessOptions kCoarse{Grid{0.0, 1.0, 0.05}, {0.0, 400.0, 10.0}, true};

enum class Outcome { Answer, NoAnswer, BadInput };

// reportJson() throws on a number that is not finite.
Outcome finiteOrError(const stillbay::Setup& setup)
{
    const auto result = assess(setup, kCoarse);
    if (result) {
        EXPECT_FALSE(reportJson(*result).empty());
        return Outcome::Answer;
    }
    EXPECT_FALSE(english(result.error().what).empty());
    EXPECT_FALSE(result.error().where.empty());
    EXPECT_NE(result.error().code, Errc::Internal);
    return result.error().code == Errc::NoAnswer ? Outcome::NoAnswer : Outcome::BadInput;
}

// Any valid setup at all, far from anything that flies.
RC_GTEST_PROP(Extremes, AnyValidSetupIsAnsweredOrRefused, ())
{
    finiteOrError(test::drawSetup());
    RC_ASSERT(!::testing::Test::HasFailure());
}

// Craft near the samples, so that most are computed to the end. Both outcomes must occur often.
TEST(Extremes, DistortedSamplesAreAnsweredOrRefused)
{
    std::mt19937 rng(20260501);
    int answers = 0, others = 0;
    for (const char* name : {"/reedbed.stillbay", "/quarry.stillbay", "/saltmarsh.stillbay"}) {
        const auto sample = loadSetup(std::string(STILLBAY_SAMPLES_DIR) + name);
        ASSERT_TRUE(sample) << name << ": " << english(sample.error().what);
        for (int i = 0; i < 150; ++i) {
            const stillbay::Setup setup = test::distorted(sample->setup, rng, i % 2 ? 1.3 : 3.0);
            if (!validate(setup))
                continue;
            ++(finiteOrError(setup) == Outcome::Answer ? answers : others);
            ASSERT_FALSE(::testing::Test::HasFailure()) << name << " " << i;
        }
    }
    EXPECT_GT(answers, 110);
    EXPECT_GT(others, 4);
}

}  // namespace
}  // namespace stillbay
