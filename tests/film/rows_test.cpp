// SPDX-License-Identifier: MIT
#include "core/film/rows.h"

#include "tests/film/test_camera.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

// Where a far point at picture place (right, up) [px] is seen after the camera turned by R.
Eigen::Vector2d seen(const CameraModel& c, const Matrix3d& R, double right, double up)
{
    const Matrix3d axes = pictureAxes(c);  // rows up, left, optical
    const double focal = pixelsPerRadian(c)[0];
    const Vector3d place(up / focal, -right / focal, 1);
    const Vector3d direction = axes * (R.transpose() * (axes.transpose() * place));
    return {-focal * direction[1] / direction[2], focal * direction[0] / direction[2]};
}

// Oracle: independent method, a pinhole camera turned by exact rotations. Signs included: turning
// left moves the scene right, nosing down moves it up, rolling about the optical axis turns it.
TEST(PictureMotion, MatchesAPinholeCamera)
{
    const CameraModel c = test::tiltedCamera();
    const Vector3d small(1.0e-5, -2.0e-5, 3.0e-5);  // about up, left, optical
    const Vector3d inBay = pictureAxes(c).transpose() * small;
    const Matrix3d R = Eigen::AngleAxisd(inBay.norm(), inBay.normalized()).toRotationMatrix();
    const std::array vibrations{CameraVibration{50, small.cast<Complex>()}};
    const PictureMotion motion = pictureMotion(vibrations, c, 0);  // e^{i0} = 1
    // The middle, to second order in the angles: focal·1e-9.
    const Eigen::Vector2d middle = seen(c, R, 0, 0);
    EXPECT_NEAR(motion.across_px, middle[0], 1e-5);
    EXPECT_NEAR(motion.up_px, middle[1], 1e-5);
    // A point to the right goes up in a counter-clockwise turn; averaged with its mirror image so
    // that the perspective terms, odd in the place, drop out.
    const double rise = 0.5 * (seen(c, R, 200, 0)[1] - seen(c, R, -200, 0)[1]);
    EXPECT_NEAR(motion.roll, rise / 200, 1e-8);
}

// Oracle: closed form, amplitude and phase of two sines by hand.
TEST(PictureMotion, AddsSinesWithTheirPhases)
{
    const CameraModel c = test::tiltedCamera();
    const double focal = pixelsPerRadian(c)[0];
    const std::array vibrations{CameraVibration{40, Vector3cd(Complex(0, -1e-4), 0, 0)},
                                CameraVibration{80, Vector3cd(2e-4, 0, 0)}};
    for (const double t : {0.0, 0.003, 0.0101}) {
        const double expected = focal * (1e-4 * std::sin(2 * std::numbers::pi * 40 * t) +
                                         2e-4 * std::cos(2 * std::numbers::pi * 80 * t));
        EXPECT_NEAR(pictureMotion(vibrations, c, t).across_px, expected, 1e-9);
    }
}

// Oracle: the definition. The frame's middle row is at the frame's time, the whole frame takes the
// readout.
TEST(RowTime, RunsDownTheFrame)
{
    const CameraModel c = test::tiltedCamera();
    EXPECT_NEAR(rowTime(c, 0, 0.5), 0, 1e-15);
    EXPECT_NEAR(rowTime(c, 3, 0.5), 0.1, 1e-15);
    EXPECT_NEAR(rowTime(c, 0, 1) - rowTime(c, 0, 0), 16e-3, 1e-15);
}

}  // namespace
}  // namespace stillbay
