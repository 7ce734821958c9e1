// SPDX-License-Identifier: MIT
#include "core/setup/tunes.h"

#include "tests/assess/crafts.h"

#include <gtest/gtest.h>

namespace stillbay {
namespace {

// Oracle: definition. A name is saved with the craft, so it reads the same whatever language the
// desktop speaks; what is taken gets a number.
TEST(FreeTuneName, TellsTheTubeWithADecimalPoint)
{
    auto craft = test::sampleCraft("reedbed");
    craft.tunes.clear();
    craft.tube.outer_diameter_mm = 7.5;
    craft.tube.bore_mm = 4.25;
    craft.tube.hardness_shore_a = 57.5;
    craft.mounts.free_length_mm = 27.5;
    craft.mounts.stretch = 1.125;
    const std::string name = "7.5 × 4.25 mm, Shore 57.5, 27.5 mm, +12.5 %";
    EXPECT_EQ(freeTuneName(craft), name);
    craft.tunes.push_back(presentTune(craft, name, {}));
    EXPECT_EQ(freeTuneName(craft), name + " (2)");
}

}  // namespace
}  // namespace stillbay
