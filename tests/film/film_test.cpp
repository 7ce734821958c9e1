// SPDX-License-Identifier: MIT
#include "core/film/film.h"

#include "tests/film/test_camera.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

constexpr double kPi = std::numbers::pi;

// What is left of sin(ωt + phase) over the rows, each row averaged over its exposure, once mean and
// straight line are taken out; power averaged over the phases.
double bruteForceGain(const CameraModel& c, double f_hz)
{
    constexpr int rows = 1200, phases = 32, samples = 200;
    double power = 0;
    for (int p = 0; p < phases; ++p) {
        double mean = 0, slope = 0, square = 0;
        for (int r = 0; r < rows; ++r) {
            const double y = (r + 0.5) / rows - 0.5;
            double value = 0;
            for (int s = 0; s < samples; ++s) {
                const double t = y * c.readout + ((s + 0.5) / samples - 0.5) * c.exposure;
                value += std::sin(2 * kPi * (f_hz * t + double(p) / phases)) / samples;
            }
            mean += value / rows;
            slope += 12 * y * value / rows;
            square += value * value / rows;
        }
        power += (square - mean * mean - slope * slope / 12) / phases;
    }
    return std::sqrt(power);
}

// Oracle: brute force over rows, phases and exposure; midpoint rules of 1200 rows and 200 samples.
TEST(WobbleGain, MatchesBruteForceRows)
{
    for (const double f : {5.0, 20.0, 60.0, 67.0, 134.0, 217.0, 480.0, 700.0})
        EXPECT_NEAR(wobbleGain(test::tiltedCamera(), f), bruteForceGain(test::tiltedCamera(), f),
                    2e-5)
            << f;
}

// Oracle: series by hand, 5 j₂² with j₂ → x²/15: gain → x²/√90 for a slow sine, x = πft_r.
TEST(WobbleGain, VanishesWithTheSquareOfASlowSine)
{
    CameraModel c = test::tiltedCamera();
    c.exposure = 0;
    for (const double f : {0.01, 0.1, 1.0}) {
        const double x = kPi * f * c.readout;
        EXPECT_NEAR(wobbleGain(c, f), x * x / std::sqrt(90.0), 1e-2 * x * x * x + 1e-15);
    }
    EXPECT_EQ(wobbleGain(c, 0), 0.0);
}

// Oracle: continuity of the two forms, at πft_r = 1.
TEST(WobbleGain, SeriesMeetsClosedForm)
{
    const double f = 1 / (kPi * 16e-3);
    EXPECT_NEAR(wobbleGain(test::tiltedCamera(), f * (1 - 1e-12)),
                wobbleGain(test::tiltedCamera(), f * (1 + 1e-12)), 1e-12);
}

// Oracle: published table of the exposure's sinc: 0.636620 at f t_e = ½, 0 at 1, 0.212207 at 1½.
TEST(WobbleGain, ExposureBlursBySinc)
{
    CameraModel sharp = test::tiltedCamera();
    sharp.exposure = 0;
    const auto blur = [&](double f) {
        return wobbleGain(test::tiltedCamera(), f) / wobbleGain(sharp, f);
    };
    EXPECT_NEAR(blur(250), 0.636620, 1e-6);
    EXPECT_NEAR(blur(500), 0.0, 1e-12);
    EXPECT_NEAR(blur(750), 0.212207, 1e-6);
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
