// SPDX-License-Identifier: MIT
#include "core/assess/vibrations.h"

#include "app/commands/command.h"
#include "core/assess/assess.h"
#include "core/craft/craft.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stillbay {
namespace {

struct VibrationsOfReedbed : testing::Test {
    stillbay::Setup setup = loadSetup(STILLBAY_REFERENCE_DIR "/reedbed.stillbay").value().setup;
    CameraModel camera = makeCamera(setup.camera);
    Assessment result = assess(setup, {.throttle = Grid{0.0, 0.6, 0.1}}).value();
};

double wobbleOf(const std::vector<CameraVibration>& vibrations, const CameraModel& camera)
{
    double power = 0;
    for (const CameraVibration& vibration : vibrations)
        power += wobblePerRadian(camera, vibration.frequency_hz)
                     .cwiseProduct(vibration.rotation.cwiseAbs())
                     .squaredNorm();
    return std::sqrt(power);
}

// Oracle: identity. What is drawn has the power of what is reported; wobblePerRadian() is held
// against brute-force rows elsewhere.
TEST_F(VibrationsOfReedbed, HaveTheReportedWobble)
{
    int excited = 0;
    for (const ThrottlePoint& point : result.throttle) {
        const auto mounted = vibrationsAt(point, camera, Hold::Tubes);
        const auto rigid = vibrationsAt(point, camera, Hold::Rigid);
        EXPECT_NEAR(wobbleOf(mounted, camera), point.wobble_px, 1e-12 * point.wobble_px);
        EXPECT_NEAR(wobbleOf(rigid, camera), *point.rigid_px, 1e-12 * *point.rigid_px);
        if (mounted.empty())
            continue;
        ++excited;
        ASSERT_EQ(mounted.size(), 1 + setup.drive.blade_pass_thrust_fraction.size());
        EXPECT_EQ(mounted[1].frequency_hz, point.orders[1].frequency_hz);
        EXPECT_GT(std::abs(wobbleOf(rigid, camera) - wobbleOf(mounted, camera)),
                  0.1 * point.wobble_px);
    }
    EXPECT_GE(excited, 5);
}

// Oracle: identity. Where the shutter bends nothing, what is drawn has the frame shake instead.
TEST_F(VibrationsOfReedbed, AGlobalShutterHasTheReportedFrameShake)
{
    setup.camera.readout_ms = 0;
    const CameraModel global = makeCamera(setup.camera);
    const Assessment shaken = assess(setup, {.throttle = Grid{0.2, 0.6, 0.2}}).value();
    for (const ThrottlePoint& point : shaken.throttle) {
        EXPECT_EQ(point.wobble_px, 0.0);
        double power = 0;
        for (const CameraVibration& vibration : vibrationsAt(point, global, Hold::Tubes))
            power += frameShakePerRadian(global, vibration.frequency_hz)
                         .cwiseProduct(vibration.rotation.cwiseAbs())
                         .squaredNorm();
        EXPECT_NEAR(std::sqrt(power), point.frame_shake_px, 1e-12 * point.frame_shake_px);
        EXPECT_GT(point.frame_shake_px, 0);
    }
}

// Oracle: definition.
TEST_F(VibrationsOfReedbed, AreNoneWithoutMotorsOrAnswer)
{
    EXPECT_EQ(wobbleOf(vibrationsAt(result.throttle[0], camera, Hold::Tubes), camera), 0.0);
    ThrottlePoint point = result.throttle[4];
    point.rigid_px.reset();
    EXPECT_TRUE(vibrationsAt(point, camera, Hold::Rigid).empty());
    EXPECT_FALSE(vibrationsAt(point, camera, Hold::Tubes).empty());
}

}  // namespace
}  // namespace stillbay
