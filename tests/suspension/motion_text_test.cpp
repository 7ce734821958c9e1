// SPDX-License-Identifier: MIT
#include "core/suspension/motion_text.h"

#include <gtest/gtest.h>

#include <array>

namespace stillbay {
namespace {

TEST(MotionText, NamesEachOfTheSix)
{
    const std::array<const char*, 6> text{"surge: bay slides fore and aft",
                                          "sway: bay slides sideways",
                                          "heave: bay bounces",
                                          "roll: bay rolls",
                                          "pitch: bay nods",
                                          "yaw: bay turns"};
    for (Eigen::Index k = 0; k < 6; ++k)
        for (const double sign : {1.0, -3.0})
            EXPECT_EQ(english(motionText(sign * Vector6d::Unit(k))),
                      text[static_cast<std::size_t>(k)]);
}

TEST(MotionText, NamesTheSecondFromHalfTheLargest)
{
    Vector6d motion;
    motion << 0.49, 0.1, 0, 0, -1, 0;
    EXPECT_EQ(english(motionText(motion)), "pitch: bay nods");
    motion[0] = -0.5;
    EXPECT_EQ(english(motionText(motion)), "pitch and surge: bay nods and slides fore and aft");
    motion[1] = 0.7;
    EXPECT_EQ(english(motionText(motion)), "pitch and sway: bay nods and slides sideways");
}

}  // namespace
}  // namespace stillbay
