// SPDX-License-Identifier: MIT
// Whatever setup the reader takes, the answer is finite or an error that names what is wrong.
#include "app/commands/command.h"
#include "app/commands/report_json.h"
#include "core/assess/assess.h"
#include "core/setup/fields.h"
#include "core/setup/validate.h"
#include "tests/setup/random_setup.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
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

// Multiplies every number of a struct by a factor of its own, up to `spread` either way.
template <class Owner>
void jitter(Owner& owner, std::mt19937& rng, double spread)
{
    std::uniform_real_distribution<double> exponent(-std::log(spread), std::log(spread));
    for (const Field<Owner>& field : fieldsOf<Owner>()) {
        const auto moved = [&](double value) {
            return std::clamp(value * std::exp(exponent(rng)), field.min, field.max);
        };
        if (const auto* number = std::get_if<double Owner::*>(&field.member))
            owner.*(*number) = moved(owner.*(*number));
        if (const auto* triple = std::get_if<Triple Owner::*>(&field.member))
            for (double& entry : owner.*(*triple))
                entry = moved(entry);
    }
}

stillbay::Setup jittered(stillbay::Setup setup, std::mt19937& rng, double spread)
{
    for (Part& part : setup.airframe.parts)
        jitter(part, rng, spread);
    for (Part& part : setup.bay.parts)
        jitter(part, rng, spread);
    for (Arm& arm : setup.airframe.arms)
        jitter(arm, rng, spread);
    for (MountPoint& point : setup.mounts.points)
        jitter(point, rng, spread);
    jitter(setup.airframe.arm, rng, spread);
    jitter(setup.drive, rng, spread);
    jitter(setup.drive.motor, rng, spread);
    jitter(setup.drive.propeller, rng, spread);
    jitter(setup.camera, rng, spread);
    jitter(setup.tube, rng, spread);
    jitter(setup.mounts, rng, spread);
    if (setup.mounts.stretch)
        setup.mounts.stretch = std::uniform_real_distribution<double>(0.9, 2.0)(rng);
    return setup;
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
            const stillbay::Setup setup = jittered(sample->setup, rng, i % 2 ? 1.3 : 3.0);
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
