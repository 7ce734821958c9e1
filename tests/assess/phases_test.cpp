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

constexpr int kRows = 400, kPhases = 4, kBlur = 24;

struct FilmedPower {
    double wobble = 0.0, shake = 0.0;  // [px²]
};

// One motor's one order about one axis in a frame by brute force: rows through pictureMotion(),
// exposure by instants; mean shift, straight skew and rigid turn out, power over phases. A row's
// pixels move across by across − y·roll and up by up + x·roll; x only enters by its mean square.
FilmedPower filmedPower(const CameraVibration& vibration, const CameraModel& camera)
{
    const double W = camera.width_px, H = camera.height_px;
    FilmedPower power;
    for (int p = 0; p < kPhases; ++p) {
        CameraVibration turned = vibration;
        turned.rotation *= std::polar(1.0, 2 * std::numbers::pi * p / kPhases);
        std::array<double, 4> mean{}, slope{}, square{};  // across, up, roll, roll × height
        for (int r = 0; r < kRows; ++r) {
            const double row = (r + 0.5) / kRows;
            std::array<double, 4> value{};
            for (int b = 0; b < kBlur; ++b) {
                const double t =
                    rowTime(camera, 0, row) + ((b + 0.5) / kBlur - 0.5) * camera.exposure;
                const PictureMotion m = pictureMotion({&turned, 1}, camera, t);
                value[0] += m.across_px / kBlur;
                value[1] += m.up_px / kBlur;
                value[2] += m.roll / kBlur;
            }
            value[3] = (0.5 - row) * H * value[2];
            for (std::size_t k = 0; k < 4; ++k) {
                mean[k] += value[k] / kRows;
                slope[k] += 12 * (row - 0.5) * value[k] / kRows;
                square[k] += value[k] * value[k] / kRows;
            }
        }
        for (const std::size_t k : {0U, 1U, 3U})
            power.wobble += (square[k] - mean[k] * mean[k] - slope[k] * slope[k] / 12) / kPhases;
        power.wobble += (square[2] - mean[2] * mean[2]) * W * W / 12 / kPhases;
        power.shake +=
            (mean[0] * mean[0] + mean[1] * mean[1] + mean[2] * mean[2] * (W * W + H * H) / 12) /
            kPhases;
    }
    return power;
}

// Oracle: independent method, brute-force rows of the very excitations; midpoint rules of 400 rows
// and 24 instants miss by about 1e-3.
TEST(Phases, FilmedRowByRowGiveTheReportedWobbleAndShake)
{
    const auto setup = loadSetup(STILLBAY_SAMPLES_DIR "/reedbed.stillbay").value().setup;
    const CameraModel camera = makeCamera(setup.camera);
    const Assessment result = assess(setup, {.throttle = Grid{0.17, 0.45, 0.14}}).value();
    for (const ThrottlePoint& point : result.throttle) {
        double shake = 0;
        for (const OrderPoint& order : point.orders) {
            ASSERT_EQ(order.rotations.size(), 4U);
            double wobble = 0;
            for (const Vector3cd& rotation : order.rotations)
                for (Eigen::Index axis = 0; axis < 3; ++axis) {
                    const Vector3cd alone = Vector3cd::Unit(axis) * rotation[axis];
                    const FilmedPower power = filmedPower({order.frequency_hz, alone}, camera);
                    wobble += power.wobble;
                    shake += power.shake;
                }
            EXPECT_NEAR(std::sqrt(wobble), order.wobble_px, 3e-3 * order.wobble_px)
                << point.throttle << " " << order.order;
        }
        EXPECT_NEAR(std::sqrt(shake), point.frame_shake_px, 3e-3 * point.frame_shake_px)
            << point.throttle;
    }
}

// Oracle: limit. Tubes ten thousand times stiffer are bolts: the mounted bay moves as the rigidly
// mounted one. Arms that ring short keep a flank of their resonance from magnifying what is left.
TEST(Phases, VeryStiffTubesAreBolts)
{
    auto setup = loadSetup(STILLBAY_SAMPLES_DIR "/reedbed.stillbay").value().setup;
    setup.airframe.arm.loss_factor = 0.1;
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
