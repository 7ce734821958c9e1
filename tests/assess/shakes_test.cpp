// SPDX-License-Identifier: MIT
#include "core/assess/shakes.h"

#include "app/commands/command.h"
#include "core/assess/assess.h"
#include "core/craft/craft.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stillbay {
namespace {

struct ShakesOfReedbed : testing::Test {
    stillbay::Setup setup = loadSetup(STILLBAY_SAMPLES_DIR "/reedbed.stillbay").value().setup;
    CameraModel camera = makeCamera(setup.camera);
    Assessment result = assess(setup, {.throttle = Grid{0.0, 0.6, 0.1}}).value();
};

double wobbleOf(const std::vector<Shake>& shakes, const CameraModel& camera)
{
    const Vector3d pixels = pixelsPerRadian(camera);
    double power = 0;
    for (const Shake& shake : shakes)
        power += std::pow(wobbleGain(camera, shake.frequency_hz), 2) *
                 pixels.cwiseProduct(shake.rotation.cwiseAbs()).squaredNorm();
    return std::sqrt(power);
}

// Oracle: identity. What is drawn has the power of what is reported; wobbleGain() is held against
// brute-force rows elsewhere.
TEST_F(ShakesOfReedbed, ShakesHaveTheReportedWobble)
{
    int shaken = 0;
    for (const ThrottlePoint& point : result.throttle) {
        const auto hung = shakesAt(point, camera, Hold::Tubes);
        const auto bolted = shakesAt(point, camera, Hold::Bolted);
        EXPECT_NEAR(wobbleOf(hung, camera), point.wobble_px, 1e-12 * point.wobble_px);
        EXPECT_NEAR(wobbleOf(bolted, camera), *point.bolted_px, 1e-12 * *point.bolted_px);
        if (hung.empty())
            continue;
        ++shaken;
        ASSERT_EQ(hung.size(), 1 + setup.drive.blade_pass_thrust_fraction.size());
        EXPECT_EQ(hung[1].frequency_hz, point.orders[1].frequency_hz);
        EXPECT_GT(std::abs(wobbleOf(bolted, camera) - wobbleOf(hung, camera)),
                  0.1 * point.wobble_px);
    }
    EXPECT_GE(shaken, 5);
}

// Oracle: definition.
TEST_F(ShakesOfReedbed, NothingShakesWithoutMotorsOrAnswer)
{
    EXPECT_EQ(wobbleOf(shakesAt(result.throttle[0], camera, Hold::Tubes), camera), 0.0);
    ThrottlePoint point = result.throttle[4];
    point.bolted_px.reset();
    EXPECT_TRUE(shakesAt(point, camera, Hold::Bolted).empty());
    EXPECT_FALSE(shakesAt(point, camera, Hold::Tubes).empty());
}

}  // namespace
}  // namespace stillbay
