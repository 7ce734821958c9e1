// SPDX-License-Identifier: MIT
#include "core/calibrate/alias_warning.h"

#include "tests/assess/crafts.h"

#include <gtest/gtest.h>

namespace stillbay {
namespace {

// A craft whose rotors meet no drag: they turn at KV times what the windings' and the pack's
// resistance leave of the duty's voltage, here KV · duty · 16.8 V.
Setup withoutDrag(int blades)
{
    auto craft = test::skewCraft(4);
    craft.drive.motor.kv_rpm_per_v = 500;
    craft.drive.motor.no_load_current_a = 0;
    craft.drive.propeller.power_coefficient = 0;
    craft.drive.propeller.blades = blades;
    craft.drive.battery.cells = 4;
    craft.drive.battery.full_v_per_cell = 4.2;
    craft.drive.throttle_curve.clear();
    craft.flight.cruise_throttle = {0.2, 0.75};
    return craft;
}

std::string textOf(const std::optional<Warning>& warning)
{
    return warning ? english(warning->text) : std::string();
}

// Oracle: by hand, 500 · 0.75 · 16.8 / 60 = 105 rev/s at the end of cruise; half throttle 70.
TEST(AliasWarning, NamesTheFirstOrderAboveHalfTheRateAndWhereItFolds)
{
    const auto craft = withoutDrag(3);  // orders at 105, 315 and 630 Hz
    const auto warning = aliasWarning(craft, 500);
    ASSERT_TRUE(warning);
    EXPECT_EQ(warning->code, "order-folds");
    EXPECT_EQ(textOf(warning),
              "At 75 % throttle order 3 lies at 315 Hz, above half the sample rate, 250 Hz: a "
              "sensor without a filter of its own writes it at 185 Hz");
    // 630 Hz alone is too fast for 1000 samples a second, and folds to 1000 − 630.
    EXPECT_EQ(textOf(aliasWarning(craft, 1000)),
              "At 75 % throttle order 6 lies at 630 Hz, above half the sample rate, 500 Hz: a "
              "sensor without a filter of its own writes it at 370 Hz");
    // Order 1 itself, 105 Hz on a clock of 100: 5 Hz.
    EXPECT_EQ(textOf(aliasWarning(craft, 100)),
              "At 75 % throttle order 1 lies at 105 Hz, above half the sample rate, 50 Hz: a "
              "sensor without a filter of its own writes it at 5 Hz");
}

// Oracle: by hand as above; the sampling theorem: half the rate itself does not fold.
TEST(AliasWarning, IsSilentWhereAllOrdersLieBelowAndHeedsTheThrottleOfTheRecord)
{
    const auto craft = withoutDrag(2);  // at 75 % up to 420 Hz, at 50 % up to 280 Hz
    EXPECT_FALSE(aliasWarning(craft, 850));
    EXPECT_TRUE(aliasWarning(craft, 830));
    EXPECT_FALSE(aliasWarning(craft, 570, 0.5));
    EXPECT_EQ(textOf(aliasWarning(craft, 550, 0.5)),
              "At 50 % throttle order 4 lies at 280 Hz, above half the sample rate, 275 Hz: a "
              "sensor without a filter of its own writes it at 270 Hz");
    EXPECT_FALSE(aliasWarning(craft, 100, 0.0)) << "nothing turns";
}

}  // namespace
}  // namespace stillbay
