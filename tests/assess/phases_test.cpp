// SPDX-License-Identifier: MIT
// The phases an assessment keeps for drawing agree with the wobble it reports.
#include "app/commands/command.h"
#include "core/assess/assess.h"
#include "core/craft/craft.h"
#include "core/film/rows.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <numbers>
#include <vector>

namespace stillbay {
namespace {

constexpr int kRows = 400, kPhases = 24, kBlur = 24;

// Wobble of one motor's one order in a frame by brute force: rows through pictureMotion(), exposure
// by instants, mean and straight skew out, power over phases and directions.
double filmedPower(const CameraVibration& vibration, const CameraModel& camera)
{
    const Vector3d pixels = pixelsPerRadian(camera);
    double power = 0;
    for (int p = 0; p < kPhases; ++p) {
        CameraVibration turned = vibration;
        turned.rotation *= std::polar(1.0, 2 * std::numbers::pi * p / kPhases);
        std::array<double, 3> mean{}, slope{}, square{};
        for (int r = 0; r < kRows; ++r) {
            const double y = (r + 0.5) / kRows;
            std::array<double, 3> value{};
            for (int b = 0; b < kBlur; ++b) {
                const double t =
                    rowTime(camera, 0, y) + ((b + 0.5) / kBlur - 0.5) * camera.exposure;
                const PictureMotion m = pictureMotion({&turned, 1}, camera, t);
                value[0] += m.across_px / kBlur;
                value[1] += m.up_px / kBlur;
                value[2] += m.roll * pixels[2] / kBlur;
            }
            for (std::size_t k = 0; k < 3; ++k) {
                mean[k] += value[k] / kRows;
                slope[k] += 12 * (y - 0.5) * value[k] / kRows;
                square[k] += value[k] * value[k] / kRows;
            }
        }
        for (std::size_t k = 0; k < 3; ++k)
            power += (square[k] - mean[k] * mean[k] - slope[k] * slope[k] / 12) / kPhases;
    }
    return power;
}

// Oracle: independent method, brute-force rows of the very excitations; midpoint rules of 400 rows
// and 24 instants miss by about 1e-3.
TEST(Phases, FilmedRowByRowGiveTheReportedWobble)
{
    const auto setup = loadSetup(STILLBAY_SAMPLES_DIR "/reedbed.stillbay").value().setup;
    const CameraModel camera = makeCamera(setup.camera);
    const Assessment result = assess(setup, {.throttle = Grid{0.17, 0.45, 0.14}}).value();
    for (const ThrottlePoint& point : result.throttle)
        for (const OrderPoint& order : point.orders) {
            ASSERT_EQ(order.rotations.size(), 4U);
            double power = 0;
            for (const Vector3cd& rotation : order.rotations)
                power += filmedPower({order.frequency_hz, rotation}, camera);
            EXPECT_NEAR(std::sqrt(power), order.wobble_px, 3e-3 * order.wobble_px)
                << point.throttle << " " << order.order;
        }
}

// Oracle: limit. Tubes ten thousand times stiffer are bolts: the mounted bay moves as the rigidly
// mounted one.
TEST(Phases, VeryStiffTubesAreBolts)
{
    auto setup = loadSetup(STILLBAY_SAMPLES_DIR "/reedbed.stillbay").value().setup;
    setup.mounts.stretch = 1.0;
    setup.mounts.free_length_mm = 30;
    setup.tube.youngs_modulus_mpa = 200;
    setup.tube.outer_diameter_mm = 40;
    setup.tube.bore_mm = 2;
    const Assessment result = assess(setup, {.throttle = Grid{0.1, 0.3, 0.1}}).value();
    for (const ThrottlePoint& point : result.throttle) {
        ASSERT_TRUE(point.rigid_px);
        EXPECT_NEAR(point.wobble_px, *point.rigid_px, 0.03 * *point.rigid_px) << point.throttle;
        const Vector3cd mounted = point.orders[0].rotations[0],
                        rigid = point.orders[0].rigidRotations[0];
        EXPECT_LT((mounted - rigid).norm(), 0.03 * rigid.norm()) << point.throttle;
    }
}

}  // namespace
}  // namespace stillbay
