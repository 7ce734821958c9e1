// SPDX-License-Identifier: MIT
#include "core/film/filmed.h"

#include "core/base/check.h"
#include "core/base/sinc.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

constexpr int kMostDoublings = 4;       // at most 16 instants a row: sums of 16 bytes fit 16 bits
constexpr std::int64_t kOne = 1 << 16;  // fixed point
constexpr std::uint32_t kLanes = 0x00FF00FF;
constexpr std::uint32_t kHalfLanes = 0x00800080;

// Two channels at once, each in the low byte of 16 bits; exact at both ends.
std::uint32_t between(std::uint32_t a, std::uint32_t b, std::uint32_t share_256)
{
    return ((a * (256 - share_256) + b * share_256 + kHalfLanes) >> 8) & kLanes;
}

struct Lanes {
    std::uint32_t low = 0, high = 0;
};

Lanes lanesOf(std::uint32_t pixel)
{
    return {pixel & kLanes, (pixel >> 8) & kLanes};
}

Lanes between(Lanes a, Lanes b, std::uint32_t share_256)
{
    return {between(a.low, b.low, share_256), between(a.high, b.high, share_256)};
}

// The scene at a place in fixed point, linear between pixel middles.
Lanes sample(const Scene& scene, std::int64_t x, std::int64_t y)
{
    const auto split = [](std::int64_t place, int count, std::size_t& first, std::size_t& next) {
        const std::int64_t whole = place >> 16, last = count - 1;
        first = static_cast<std::size_t>(std::clamp<std::int64_t>(whole, 0, last));
        next = static_cast<std::size_t>(std::clamp<std::int64_t>(whole + 1, 0, last));
        return static_cast<std::uint32_t>((place >> 8) & 0xFF);
    };
    std::size_t x0 = 0, x1 = 0, y0 = 0, y1 = 0;
    const std::uint32_t sx = split(x, scene.width, x0, x1);
    const std::uint32_t sy = split(y, scene.height, y0, y1);
    const auto width = static_cast<std::size_t>(scene.width);
    const std::uint32_t* const top = &scene.pixels[y0 * width];
    const std::uint32_t* const bottom = &scene.pixels[y1 * width];
    return between(between(lanesOf(top[x0]), lanesOf(top[x1]), sx),
                   between(lanesOf(bottom[x0]), lanesOf(bottom[x1]), sx), sy);
}

// The same excitations as their mean over a span of time, at its middle.
std::vector<CameraVibration> meanOver(std::vector<CameraVibration> vibrations, double span)
{
    for (CameraVibration& vibration : vibrations)
        vibration.rotation *= sinc(std::numbers::pi * vibration.frequency_hz * span);
    return vibrations;
}

// How often to halve a row's exposure so that no piece smears over much more than a pixel.
int doublings(const Shot& shot, double scale)
{
    const Vector3d pixels = pixelsPerRadian(shot.camera);
    double travel_px = 0.0;
    for (const CameraVibration& vibration : shot.vibrations)
        travel_px += pixels.cwiseProduct(vibration.rotation.cwiseAbs()).norm() *
                     std::min(2.0, 2 * std::numbers::pi * std::abs(vibration.frequency_hz) *
                                       shot.camera.exposure);
    const double pieces = std::max(1.0, scale * travel_px);
    return static_cast<int>(std::clamp(std::ceil(std::log2(pieces)), 0.0, 1.0 * kMostDoublings));
}

// Adds the scene as seen by one row at one instant.
void addRow(const Scene& scene, const Canvas& canvas, const PictureMotion& motion, int row,
            int from, std::span<Lanes> sums)
{
    const double c = std::cos(motion.roll), s = std::sin(motion.roll);
    const double right = 0.5 - 0.5 * canvas.width - motion.across_px;
    const double up = 0.5 * canvas.height - row - 0.5 - motion.up_px;
    const auto fixed = [](double place) {
        return static_cast<std::int64_t>(std::llround(place * static_cast<double>(kOne)));
    };
    // Where the first pixel comes from: turned back, from the canvas' middle to the scene's corner.
    const std::int64_t dx = fixed(c), dy = fixed(s);
    std::int64_t x = fixed(c * right + s * up + 0.5 * scene.width - 0.5) + from * dx;
    std::int64_t y = fixed(s * right - c * up + 0.5 * scene.height - 0.5) + from * dy;
    for (Lanes& sum : sums) {
        const Lanes seen = sample(scene, x, y);
        sum.low += seen.low;
        sum.high += seen.high;
        x += dx;
        y += dy;
    }
}

}  // namespace

Vector3cd addOutOfStep(std::span<const Vector3cd> rotations, const Vector3d& pixels)
{
    Vector3cd sum = Vector3cd::Zero();
    for (const Vector3cd& rotation : rotations) {
        // sᴴa in pixels: dot() conjugates its left side.
        const Complex overlap =
            pixels.cwiseProduct(sum).eval().dot(pixels.cwiseProduct(rotation).eval());
        const double phase =
            std::abs(overlap) > 0 ? 0.5 * std::numbers::pi - std::arg(overlap) : 0.0;
        sum += std::polar(1.0, phase) * rotation;
    }
    return sum;
}

void filmFrame(const Scene& scene, const Shot& shot, Canvas canvas, int from, int to)
{
    check(scene.width >= canvas.width && scene.height >= canvas.height, "a scene is too small");
    check(0 <= from && from <= to && to <= canvas.width, "columns lie outside the picture");
    const double scale = shot.gain * canvas.width / shot.camera.width_px;
    const int halvings = doublings(shot, scale);
    const int pieces = 1 << halvings;
    const double piece = shot.camera.exposure / pieces;
    const std::vector<CameraVibration> vibrations = meanOver(shot.vibrations, piece);
    const double far = scene.width + scene.height;  // beyond it there is only the edge
    std::vector<Lanes> sums(static_cast<std::size_t>(to - from));
    for (int row = 0; row < canvas.height; ++row) {
        std::fill(sums.begin(), sums.end(), Lanes());
        const double middle = rowTime(shot.camera, shot.frame, (row + 0.5) / canvas.height);
        for (int k = 0; k < pieces; ++k) {
            PictureMotion motion =
                pictureMotion(vibrations, shot.camera, middle + (k + 0.5 - 0.5 * pieces) * piece);
            motion.across_px = std::clamp(scale * motion.across_px, -far, far);
            motion.up_px = std::clamp(scale * motion.up_px, -far, far);
            motion.roll *= shot.gain;
            addRow(scene, canvas, motion, row, from, sums);
        }
        const std::uint32_t half = static_cast<std::uint32_t>(pieces / 2) * 0x00010001;
        std::uint32_t* out =
            &canvas.pixels[static_cast<std::size_t>(row) * static_cast<std::size_t>(canvas.width) +
                           static_cast<std::size_t>(from)];
        for (const Lanes& sum : sums)
            *out++ = (((sum.low + half) >> halvings) & kLanes) |
                     ((((sum.high + half) >> halvings) & kLanes) << 8);
    }
}

}  // namespace stillbay
