// SPDX-License-Identifier: MIT
#include "core/film/film.h"

#include "tests/film/test_camera.h"
#include "tests/lapack/lapack.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <utility>

namespace stillbay {
namespace {

constexpr double kPi = std::numbers::pi;

// A film by brute force: rows of pixels that a sine about one of the picture's axes moves, each row
// averaged over its exposure, and what a stabiliser sees of them: per rad of amplitude, up, left,
// roll.
struct Filmed {
    Vector3d wobble;  // what shift, straight skew and rigid turn leave, rms over frame and phases
    Vector3d shake;   // the shift itself, in a roll the turn at the frame's rms radius
};

Filmed bruteForce(const CameraModel& c, double f_hz)
{
    constexpr Eigen::Index rows = 1200, phases = 4;
    constexpr int samples = 200;
    const double focal = pixelsPerRadian(c)[0];
    // Everything is linear along a row: two pixels have the mean squares of all.
    const double aside = c.width_px / std::sqrt(12.0);
    // For each pixel across and up: shift both ways, skew both ways, turn.
    Eigen::MatrixXd fit(4 * rows, 5);
    const auto height = [&](int r) {
        return (0.5 - (r + 0.5) / rows) * c.height_px;
    };
    for (int r = 0; r < rows; ++r)
        for (int side = 0; side < 2; ++side) {
            const double x = side == 0 ? aside : -aside, y = height(r);
            fit.row(4 * r + 2 * side) << 1, 0, y, 0, -y;
            fit.row(4 * r + 2 * side + 1) << 0, 1, 0, y, x;
        }
    Eigen::MatrixXd moved = Eigen::MatrixXd::Zero(4 * rows, 3 * phases);
    for (int p = 0; p < phases; ++p)
        for (int r = 0; r < rows; ++r) {
            const double middle = ((r + 0.5) / rows - 0.5) * c.readout;
            double turn = 0;
            for (int s = 0; s < samples; ++s) {
                const double t = middle + ((s + 0.5) / samples - 0.5) * c.exposure;
                turn += std::sin(2 * kPi * (f_hz * t + double(p) / phases)) / samples;
            }
            for (int side = 0; side < 2; ++side) {
                const double x = side == 0 ? aside : -aside;
                moved(4 * r + 2 * side, p) = focal * turn;
                moved(4 * r + 2 * side + 1, phases + p) = focal * turn;
                moved(4 * r + 2 * side, 2 * phases + p) = -height(r) * turn;
                moved(4 * r + 2 * side + 1, 2 * phases + p) = x * turn;
            }
        }
    const Eigen::MatrixXd taken = test::leastSquaresByLapack(fit, moved),
                          left = moved - fit * taken;
    const auto rms = [](const auto& block, double count) {
        return std::sqrt(block.squaredNorm() / count);
    };
    Filmed filmed;
    for (int axis = 0; axis < 3; ++axis)
        filmed.wobble[axis] = rms(left.middleCols(axis * phases, phases), 2.0 * rows * phases);
    filmed.shake << rms(taken.block(0, 0, 1, phases), phases),
        rms(taken.block(1, phases, 1, phases), phases),
        rms(taken.block(4, 2 * phases, 1, phases), phases) *
            std::sqrt((c.width_px * c.width_px + c.height_px * c.height_px) / 12);
    return filmed;
}

// Oracle: own derivation, brute force over rows turned about the picture's middle or shifted, over
// phases and exposure, shift, straight skew and rigid turn taken out by least squares. Midpoint
// rules of 1200 rows and 200 instants miss by (2πft)²/24 of a row's or an instant's time squared.
TEST(WobblePerRadian, MatchesBruteForceRows)
{
    CameraModel upright = test::tiltedCamera();
    std::swap(upright.width_px, upright.height_px);
    upright.readout = 21e-3;
    for (const CameraModel& c : {test::tiltedCamera(), upright})
        for (const double f : {5.0, 20.0, 60.0, 67.0, 134.0, 217.0, 480.0, 700.0}) {
            const Filmed expected = bruteForce(c, f);
            const Vector3d gain = wobblePerRadian(c, f), shake = frameShakePerRadian(c, f),
                           pixels = pixelsPerRadian(c);
            for (int axis = 0; axis < 3; ++axis) {
                EXPECT_NEAR(gain[axis], expected.wobble[axis], 3e-5 * pixels[axis])
                    << f << " " << axis;
                EXPECT_NEAR(shake[axis], expected.shake[axis], 3e-5 * pixels[axis])
                    << f << " " << axis;
            }
        }
}

// Oracle: brute-force rows of another program for 3840 × 2160 in 16 ms, px of amplitude a rad.
TEST(WobblePerRadian, RollBendsByItsOwnLaw)
{
    CameraModel sharp = test::tiltedCamera();
    sharp.exposure = 0;
    const double values[][2] = {{20, 668}, {45, 1118}, {67, 1161}, {150, 1239}};
    for (const auto& [f, px] : values)
        EXPECT_NEAR(std::sqrt(2.0) * wobblePerRadian(sharp, f)[2], px, 0.5) << f;
}

// Oracle: series by hand for a slow sine, a = πft_r: 5 j₂² with j₂ → a²/15 makes f_px a²/√90 of a
// shift; of a roll 3 j₁² across the width and (2j₁)²/5 down the height, j₁ → a/3, make
// a √(W²/36 + H²/45)/√2.
TEST(WobblePerRadian, VanishesWithASlowSine)
{
    CameraModel c = test::tiltedCamera();
    c.exposure = 0;
    const double roll_px = std::sqrt((3840.0 * 3840 / 36 + 2160.0 * 2160 / 45) / 2);
    for (const double f : {1e-30, 1e-9, 1e-4, 0.01, 0.1, 1.0}) {
        const double a = kPi * f * c.readout;
        const Vector3d gain = wobblePerRadian(c, f);
        const double shift = pixelsPerRadian(c)[0] * a * a / std::sqrt(90.0);
        // The next terms of the series are a² of these.
        EXPECT_NEAR(gain[0], shift, (a * a + 1e-14) * shift) << f;
        EXPECT_EQ(gain[1], gain[0]);
        EXPECT_NEAR(gain[2], roll_px * a, (a * a + 1e-14) * roll_px * a) << f;
    }
    EXPECT_EQ(wobblePerRadian(c, 0), Vector3d::Zero());
}

// Oracle: definition of the equidistant lens, distance from the middle = f × angle: half of the
// width is seen under half of the view.
TEST(PixelsPerRadian, OfAFisheyeAreTheWidthOverTheView)
{
    CameraModel c = test::tiltedCamera();
    const Vector3d rectilinear = pixelsPerRadian(c);
    c.fisheye = true;
    const Vector3d fisheye = pixelsPerRadian(c);
    EXPECT_NEAR(fisheye[0], c.width_px / c.horizontalView, 1e-12 * fisheye[0]);
    EXPECT_EQ(fisheye[1], fisheye[0]);
    EXPECT_EQ(fisheye[2], rectilinear[2]);
    EXPECT_GT(fisheye[0], rectilinear[0]);
}

// Oracle: definition. A global shutter bends nothing and shakes by the whole; nothing is without
// end.
TEST(WobblePerRadian, IsFiniteAtEveryEnd)
{
    CameraModel global = test::tiltedCamera();
    global.readout = 0;
    global.exposure = 0;
    EXPECT_EQ(wobblePerRadian(global, 90), Vector3d::Zero());
    EXPECT_LT((frameShakePerRadian(global, 90) - pixelsPerRadian(global) / std::sqrt(2.0)).norm(),
              1e-12);
    CameraModel slow = test::tiltedCamera();
    slow.readout = 1;
    for (const double f : {0.0, 1e-320, 1.0, 1e6, 1e12}) {
        EXPECT_TRUE(wobblePerRadian(slow, f).allFinite()) << f;
        EXPECT_TRUE(frameShakePerRadian(slow, f).allFinite()) << f;
    }
    slow.exposure = 0;
    // Rows that know nothing of one another: all power is left, W²/12 + H²/12 of a roll.
    EXPECT_LT((wobblePerRadian(slow, 1e7) - pixelsPerRadian(slow) / std::sqrt(2.0)).norm(), 1e-3);
}

// Oracle: continuity of the two forms, at πft_r = 1; both are good to 1e-13 there.
TEST(WobblePerRadian, SeriesMeetsClosedForm)
{
    const CameraModel c = test::tiltedCamera();
    const double f = 1 / (kPi * c.readout);
    const Vector3d below = wobblePerRadian(c, f * (1 - 1e-13)),
                   above = wobblePerRadian(c, f * (1 + 1e-13));
    for (int axis = 0; axis < 3; ++axis)
        EXPECT_NEAR(below[axis], above[axis], 2e-12 * above[axis]);
}

// Oracle: published table of the exposure's sinc: 0.636620 at f t_e = ½, 0 at 1, 0.212207 at 1½.
TEST(WobblePerRadian, ExposureBlursBySinc)
{
    CameraModel sharp = test::tiltedCamera();
    sharp.exposure = 0;
    for (int axis = 0; axis < 3; ++axis) {
        const auto blur = [&](double f) {
            return wobblePerRadian(test::tiltedCamera(), f)[axis] / wobblePerRadian(sharp, f)[axis];
        };
        EXPECT_NEAR(blur(250), 0.636620, 1e-6);
        EXPECT_NEAR(blur(500), 0.0, 1e-12);
        EXPECT_NEAR(blur(750), 0.212207, 1e-6);
    }
}

// Oracle: independent method. A pinhole camera turned by a small angle: where the middle of the
// picture goes, and the rms over the frame of where its points go in a pure roll.
TEST(PictureAxes, MatchesAPinholeCamera)
{
    const CameraModel c = test::tiltedCamera();
    const double focal = 1920 / std::tan(40 * kPi / 180);
    // Picture axes in the bay: optical axis tilted down, right, up.
    const Vector3d axis(std::cos(0.3), 0, -std::sin(0.3)), left(0, 1, 0);
    const Vector3d up = axis.cross(left);
    const Matrix3d G = pixelsPerRadian(c).asDiagonal() * pictureAxes(c);
    const double h = 1e-6;
    for (int k = 0; k < 3; ++k) {
        // The camera turns by h about bay axis k; the far point that was in the middle moves.
        const Matrix3d R = Eigen::AngleAxisd(h, Vector3d::Unit(k)).toRotationMatrix();
        const Vector3d seen = R.transpose() * axis;
        const double across = focal * seen.dot(left) / seen.dot(axis) / h;
        const double high = focal * seen.dot(up) / seen.dot(axis) / h;
        EXPECT_NEAR(std::abs(G(0, k)), std::abs(across), 1e-3) << k;
        EXPECT_NEAR(std::abs(G(1, k)), std::abs(high), 1e-3) << k;
    }
    double square = 0;
    constexpr int n = 400;
    for (int i = 0; i < n; ++i)
        for (int j = 0; j < n; ++j)
            square += (std::pow(((i + 0.5) / n - 0.5) * 3840, 2) +
                       std::pow(((j + 0.5) / n - 0.5) * 2160, 2)) /
                      (n * n);
    EXPECT_NEAR((G.row(2) * axis).norm(), std::sqrt(square), 1e-5 * std::sqrt(square));
    EXPECT_NEAR((G.row(2) * up).norm(), 0, 1e-9);
}

// Oracle: values by hand: 100 Hz and 217.6 Hz at 30 fps beat at 10 and 7.6 Hz; 150 Hz stands
// still.
TEST(Crawl, IsTheAlias)
{
    EXPECT_NEAR(beat_hz(100, 30), 10, 1e-12);
    EXPECT_NEAR(beat_hz(217.6, 30), 7.6, 1e-12);
    EXPECT_NEAR(beat_hz(150, 30), 0, 1e-12);
}

}  // namespace
}  // namespace stillbay
