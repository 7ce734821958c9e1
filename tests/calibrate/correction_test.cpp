// SPDX-License-Identifier: MIT
#include "core/calibrate/correction.h"

#include "core/advice/uncertain_inputs.h"
#include "core/setup/number_at.h"
#include "core/setup/sources.h"
#include "core/setup/text.h"

#include <gtest/gtest.h>

#include <fstream>
#include <sstream>
#include <string>

namespace stillbay {
namespace {

Setup sample()
{
    std::ifstream in(STILLBAY_SAMPLES_DIR "/reedbed.stillbay");
    std::stringstream text;
    text << in.rdbuf();
    return readSetup(text.str()).value().setup;
}

// Oracle: the members themselves; every number of the file is found by its path, and a number put
// there is the only change.
TEST(NumberAt, FindsAndPutsEveryNumberByItsPath)
{
    const auto setup = sample();
    EXPECT_EQ(numberAt(setup, "drive.motor.kv_rpm_per_v"), setup.drive.motor.kv_rpm_per_v);
    EXPECT_EQ(numberAt(setup, "airframe.arms[1].length_mm"), setup.airframe.arms[1].length_mm);
    EXPECT_EQ(numberAt(setup, "airframe.arm.wall_mm"), setup.airframe.arm.wall_mm);
    EXPECT_FALSE(numberAt(setup, "airframe.arms[16].length_mm"));
    EXPECT_FALSE(numberAt(setup, "camera.centre_mm")) << "three numbers are not one";
    std::size_t put = 0;
    for (const std::string& key : numbersOf(setup))
        if (const auto value = numberAt(setup, key)) {
            auto changed = setup;
            ASSERT_TRUE(putNumber(changed, key, *value + 1.0)) << key;
            EXPECT_EQ(numberAt(changed, key), *value + 1.0) << key;
            ASSERT_TRUE(putNumber(changed, key, *value)) << key;
            EXPECT_EQ(changed, setup) << key;
            ++put;
        }
    EXPECT_GT(put, 50u);
    auto changed = setup;
    EXPECT_FALSE(putNumber(changed, "drive.motor", 1.0));
    EXPECT_EQ(changed, setup);
}

// Oracle: none but the promise itself: value, source and spread arrive, and the spread is what the
// uncertainty of the forecast counts with.
TEST(Accept, GivesTheCraftValueSourceAndSpread)
{
    const auto setup = sample();
    Correction correction;
    correction.measurement = phrase("hang test, %1 masses", whole(2));
    correction.values.push_back({.key = "tube.youngs_modulus_mpa", .after = 1.75, .spread = 0.04});
    const auto accepted = accept(setup, correction, "2026-05-01");
    ASSERT_TRUE(accepted);
    EXPECT_EQ(accepted->tube.youngs_modulus_mpa, 1.75);
    const Source* source = sourceOf(*accepted, "tube.youngs_modulus_mpa");
    ASSERT_NE(source, nullptr);
    EXPECT_EQ(source->from, Origin::Measured);
    EXPECT_EQ(source->note, "hang test, 2 masses");
    EXPECT_EQ(source->date, "2026-05-01");
    EXPECT_EQ(spreadOf(*accepted, "tube.youngs_modulus_mpa"), 0.04);
}

TEST(Accept, RefusesWhatTheFileWouldRefuse)
{
    Correction correction;
    correction.values.push_back({.key = "tube.youngs_modulus_mpa", .after = -1.0, .spread = 0.1});
    const auto negative = accept(sample(), correction, "2026-05-01");
    ASSERT_FALSE(negative);
    EXPECT_EQ(negative.error().where, "tube.youngs_modulus_mpa");
    correction.values.front() = {.key = "tube.colour", .after = 1.0};
    const auto unknown = accept(sample(), correction, "2026-05-01");
    ASSERT_FALSE(unknown);
    EXPECT_EQ(unknown.error().where, "tube.colour");
}

}  // namespace
}  // namespace stillbay
