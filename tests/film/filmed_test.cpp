// SPDX-License-Identifier: MIT
#include "core/film/filmed.h"

#include "tests/film/test_camera.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <numbers>
#include <stdexcept>

namespace stillbay {
namespace {

// A picture that owns its pixels.
struct Sheet {
    int width, height;
    std::vector<std::uint32_t> pixels;

    Sheet(int w, int h) : width(w), height(h), pixels(static_cast<std::size_t>(w * h)) {}

    std::uint32_t& at(int x, int y)
    {
        return pixels[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
                      static_cast<std::size_t>(x)];
    }
    Scene scene() const { return {width, height, pixels}; }
    Canvas canvas() { return {width, height, pixels}; }
};

// Every pixel another colour, all four channels in use.
Sheet confetti(int width, int height)
{
    Sheet sheet(width, height);
    std::uint32_t seed = 7;
    for (std::uint32_t& pixel : sheet.pixels)
        pixel = seed = seed * 1664525 + 1013904223;
    return sheet;
}

// Grey that rises by one a pixel to the right, or downwards, around 128 in the middle: a shift of
// the scene by d lowers it by d.
Sheet ramp(int width, int height, bool downwards)
{
    Sheet sheet(width, height);
    for (int y = 0; y < height; ++y)
        for (int x = 0; x < width; ++x) {
            const int grey = 128 + (downwards ? y - height / 2 : x - width / 2);
            sheet.at(x, y) = static_cast<std::uint32_t>(grey) * 0x01010101U;
        }
    return sheet;
}

int grey(std::uint32_t pixel)
{
    return static_cast<int>(pixel & 0xFF);
}

// A camera whose film pixels are the canvas' pixels.
CameraModel smallCamera(int width, int height)
{
    CameraModel camera = test::tiltedCamera();
    camera.width_px = width;
    camera.height_px = height;
    camera.exposure = 0;
    return camera;
}

Sheet filmed(const Sheet& scene, const Shot& shot, int width, int height)
{
    Sheet out(width, height);
    filmFrame(scene.scene(), shot, out.canvas(), 0, width);
    return out;
}

// Oracle: identity. A camera that stands still records the middle of the scene, bit for bit, at any
// exposure, and so does one whose excitations are all zero.
TEST(FilmFrame, AStillCameraRecordsTheSceneBitForBit)
{
    const Sheet scene = confetti(52, 40);
    Shot shot{smallCamera(40, 30), {}, 10, 3};
    for (const double exposure : {0.0, 2e-3, 30e-3}) {
        shot.camera.exposure = exposure;
        for (const int vibrations : {0, 2}) {
            shot.vibrations.assign(static_cast<std::size_t>(vibrations),
                                   CameraVibration{50, Vector3cd::Zero()});
            Sheet out = filmed(scene, shot, 40, 30);
            for (int y = 0; y < 30; ++y)
                for (int x = 0; x < 40; ++x)
                    ASSERT_EQ(out.at(x, y),
                              scene.pixels[static_cast<std::size_t>((y + 5) * 52 + x + 6)]);
        }
    }
}

// Oracle: a sine by hand at each row's own time, row r of n being exposed at (r + ½ − n/2)/n of the
// readout after the frame's time. The ramp's grey is the shift to within half a grey and the
// 1/256 px of the interpolation.
TEST(FilmFrame, AKnownSineShiftsEachRowByItself)
{
    constexpr int kWidth = 60, kHeight = 64;
    const CameraModel camera = smallCamera(kWidth, kHeight);
    const double focal =
        30 / std::tan(40 * std::numbers::pi / 180);  // half of 60 px over tan of half of 80°
    const double f = 90, amplitude_px = 11;
    const Complex swing = std::polar(amplitude_px / focal, 0.7);
    for (const int frame : {0, 5})
        for (const bool upwards : {false, true}) {
            Vector3cd rotation = Vector3cd::Zero();
            rotation[upwards ? 1 : 0] = swing;
            Sheet out = filmed(ramp(100, 100, upwards), {camera, {{f, rotation}}, 1, frame}, kWidth,
                               kHeight);
            for (int row = 0; row < kHeight; ++row) {
                const double t = frame / 30.0 + (row + 0.5 - kHeight / 2.0) / kHeight * 16e-3;
                const double shift_px = amplitude_px * std::cos(2 * std::numbers::pi * f * t + 0.7);
                // The picture goes right or up; downwards the grey rises with the row.
                const double expected =
                    upwards ? 128 + row - kHeight / 2.0 + shift_px : 128 - shift_px;
                EXPECT_NEAR(grey(out.at(kWidth / 2, row)), expected, 0.51) << row;
            }
        }
}

// Oracle: the same sine; whole pixels move without a trace of blur.
TEST(FilmFrame, AWholePixelMovesTheBits)
{
    const Sheet scene = confetti(60, 40);
    const CameraModel camera = smallCamera(40, 30);
    const double focal = pixelsPerRadian(camera)[0];
    const Shot shot{camera, {{0, Vector3cd(3 / focal, -4 / focal, 0)}}, 1, 0};  // a constant turn
    Sheet out = filmed(scene, shot, 40, 30);
    for (int y = 0; y < 30; ++y)
        for (int x = 0; x < 40; ++x)  // 3 to the right, 4 down
            ASSERT_EQ(out.at(x, y),
                      scene.pixels[static_cast<std::size_t>((y + 5 - 4) * 60 + x + 10 - 3)]);
}

// Oracle: definition. Drawn at half the film's width the shift is halved, and the gain multiplies.
TEST(FilmFrame, ScalesWithTheCanvasAndTheGain)
{
    CameraModel camera = smallCamera(120, 96);
    const double focal = pixelsPerRadian(camera)[0];
    const std::vector<CameraVibration> vibrations{{0, Vector3cd(4 / focal, 0, 0)}};
    const Sheet scene = ramp(100, 80, false);
    EXPECT_EQ(grey(filmed(scene, {camera, vibrations, 1, 0}, 60, 48).at(30, 20)), 128 - 2);
    EXPECT_EQ(grey(filmed(scene, {camera, vibrations, 3, 0}, 60, 48).at(30, 20)), 128 - 6);
    EXPECT_EQ(grey(filmed(scene, {camera, vibrations, 10, 0}, 60, 48).at(30, 20)), 128 - 20);
}

// Oracle: plane geometry. A counter-clockwise turn by φ carries what was at angle α about the
// middle to α + φ; the middle stays. On the ramp, x = r cos α becomes r cos(α − φ).
TEST(FilmFrame, RollTurnsAboutTheMiddle)
{
    constexpr int kSide = 61;
    const double turn = 0.2;
    const Shot shot{smallCamera(kSide, kSide), {{0, Vector3cd(0, 0, turn)}}, 1, 0};
    for (const bool downwards : {false, true}) {
        Sheet out = filmed(ramp(101, 101, downwards), shot, kSide, kSide);
        for (int y = 0; y < kSide; y += 6)
            for (int x = 0; x < kSide; x += 6) {
                const double right = x - 30, up = 30 - y;
                const double r = std::hypot(right, up), alpha = std::atan2(up, right) - turn;
                const double expected =
                    128 + (downwards ? -r * std::sin(alpha) : r * std::cos(alpha));
                EXPECT_NEAR(grey(out.at(x, y)), expected, 0.52) << x << " " << y;
            }
        EXPECT_EQ(grey(out.at(30, 30)), 128);
    }
}

// Oracle: mean of a sine over a whole period is zero, over half of one 2/π at its crest. A ramp
// keeps the mean place of what is smeared over it.
TEST(FilmFrame, AnExposureOfAPeriodBlursToNothing)
{
    CameraModel camera = smallCamera(60, 40);
    const double focal = pixelsPerRadian(camera)[0];
    const std::vector<CameraVibration> vibrations{{50, Vector3cd(12 / focal, 0, 0)}};
    const Sheet scene = ramp(100, 80, false);
    camera.readout = 0;  // all rows at the crest
    EXPECT_EQ(grey(filmed(scene, {camera, vibrations, 1, 0}, 60, 40).at(30, 20)), 128 - 12);
    camera.exposure = 10e-3;
    EXPECT_NEAR(grey(filmed(scene, {camera, vibrations, 1, 0}, 60, 40).at(30, 20)),
                128 - 12 * 2 / std::numbers::pi, 0.6);
    camera.exposure = 20e-3;
    camera.readout = 16e-3;
    Sheet out = filmed(scene, {camera, vibrations, 1, 0}, 60, 40);
    for (int row = 0; row < 40; ++row)
        EXPECT_NEAR(grey(out.at(30, row)), 128, 0.6) << row;
}

// Oracle: definition. A thin line that swings by ±6 px in a whole period is spread over 12 px and
// loses nothing: its light stays.
TEST(FilmFrame, ExposureSmearsALineOverItsPath)
{
    CameraModel camera = smallCamera(60, 4);
    camera.exposure = 20e-3;
    Sheet scene(100, 10);
    for (int y = 0; y < 10; ++y)
        scene.at(50, y) = 0xFFFFFFFFU;
    const double focal = pixelsPerRadian(camera)[0];
    Sheet out = filmed(scene, {camera, {{50, Vector3cd(6 / focal, 0, 0)}}, 1, 0}, 60, 4);
    int lit = 0, light = 0;
    for (int x = 0; x < 60; ++x) {
        lit += grey(out.at(x, 2)) > 2 ? 1 : 0;
        light += grey(out.at(x, 2));
    }
    EXPECT_GE(lit, 11);
    EXPECT_LE(lit, 15);
    EXPECT_NEAR(light, 255, 8);  // half a grey for each of 15 pixels
}

// Oracle: identity. Two halves make the whole; columns outside are left alone; a swing beyond the
// scene shows its edge.
TEST(FilmFrame, DrawsOnlyTheColumnsAskedFor)
{
    const Sheet scene = confetti(60, 40);
    const CameraModel camera = smallCamera(40, 30);
    const Shot shot{camera, {{70, Vector3cd(0.05, Complex(0.02, 0.1), 0.03)}}, 1, 2};
    const Sheet whole = filmed(scene, shot, 40, 30);
    Sheet parts(40, 30);
    filmFrame(scene.scene(), shot, parts.canvas(), 0, 17);
    EXPECT_EQ(parts.at(17, 4), 0U);
    filmFrame(scene.scene(), shot, parts.canvas(), 17, 40);
    EXPECT_EQ(parts.pixels, whole.pixels);
    const Shot wild{camera, {{0, Vector3cd(1e6, 0, 0)}}, 1, 0};
    Sheet edge = filmed(scene, wild, 40, 30);
    EXPECT_EQ(edge.at(20, 7), scene.pixels[std::size_t{12} * 60]);
    EXPECT_THROW(filmFrame(scene.scene(), shot, Sheet(61, 30).canvas(), 0, 1), std::logic_error);
    EXPECT_THROW(filmFrame(scene.scene(), shot, parts.canvas(), 0, 41), std::logic_error);
}

// Oracle: identity, powers add. Eight motors of skew phases, axes weighed differently; and none or
// one, which stay as they are.
TEST(AddOutOfStep, KeepsThePower)
{
    const Vector3d pixels(2288, 2288, 1272);
    std::vector<Vector3cd> rotations;
    double power = 0;
    EXPECT_EQ(addOutOfStep(rotations, pixels), Vector3cd::Zero());
    for (int k = 0; k < 8; ++k) {
        rotations.push_back({std::polar(1e-5 * (k + 1), 0.9 * k), std::polar(2e-5, -1.3 * k),
                             std::polar(3e-5 / (k + 1), 2.1 * k * k)});
        power += pixels.cwiseProduct(rotations.back().cwiseAbs()).squaredNorm();
        const Vector3cd sum = addOutOfStep(rotations, pixels);
        EXPECT_NEAR(pixels.cwiseProduct(sum.cwiseAbs()).squaredNorm(), power, 1e-13 * power);
    }
    EXPECT_EQ(addOutOfStep({rotations.data(), 1}, pixels), rotations[0]);
    // Twins in step would double the sum; a quarter turn apart they give √2.
    const std::array twins{Vector3cd(1, 0, 0), Vector3cd(1, 0, 0)};
    EXPECT_NEAR(std::abs(addOutOfStep(twins, pixels)[0]), std::sqrt(2.0), 1e-15);
}

}  // namespace
}  // namespace stillbay
