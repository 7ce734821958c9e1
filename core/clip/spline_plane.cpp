// SPDX-License-Identifier: MIT
#include "core/clip/spline_plane.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace stillbay {

namespace {

constexpr float kPole = -0.26794919243112270F;  // √3 − 2
constexpr float kGain = 6.0F;
constexpr std::size_t kReach = 16;  // 0.268¹⁶ is below a float's last digit

// The filter along rows that lie `stride` apart, `lanes` neighbours at once.
void filterLines(float* first, std::size_t count, std::size_t stride, std::size_t lanes)
{
    const auto at = [&](std::size_t k) {
        return first + k * stride;
    };
    for (std::size_t k = 0; k < count; ++k)
        for (std::size_t l = 0; l < lanes; ++l)
            at(k)[l] *= kGain;
    // Mirrored at the edge: c⁺(0) = Σ zᵏ s(k).
    float power = kPole;
    for (std::size_t k = 1; k < std::min(count, kReach); ++k, power *= kPole)
        for (std::size_t l = 0; l < lanes; ++l)
            first[l] += power * at(k)[l];
    for (std::size_t k = 1; k < count; ++k)
        for (std::size_t l = 0; l < lanes; ++l)
            at(k)[l] += kPole * at(k - 1)[l];
    if (count > 1)
        for (std::size_t l = 0; l < lanes; ++l)
            at(count - 1)[l] =
                kPole / (kPole * kPole - 1.0F) * (at(count - 1)[l] + kPole * at(count - 2)[l]);
    for (std::size_t k = count - 1; k-- > 0;)
        for (std::size_t l = 0; l < lanes; ++l)
            at(k)[l] = kPole * (at(k + 1)[l] - at(k)[l]);
}

struct Taps {
    std::array<float, 4> value;
    std::array<float, 4> slope;
};

Taps tapsAt(float t)
{
    const float s = 1.0F - t;
    return {{s * s * s / 6.0F, 2.0F / 3.0F - t * t * (1.0F - t / 2.0F),
             2.0F / 3.0F - s * s * (1.0F - s / 2.0F), t * t * t / 6.0F},
            {-s * s / 2.0F, t * (1.5F * t - 2.0F), -s * (1.5F * s - 2.0F), t * t / 2.0F}};
}

}  // namespace

Plane splineOf(const Plane& plane)
{
    Plane spline = plane;
    constexpr std::size_t kLanes = 64;
    for (std::size_t x = 0; x < plane.width; x += kLanes)
        filterLines(spline.values.data() + x, plane.height, plane.width,
                    std::min(kLanes, plane.width - x));
    for (std::size_t y = 0; y < plane.height; ++y)
        filterLines(spline.row(y), plane.width, 1, 1);
    return spline;
}

bool sampleRun(const Plane& spline, double x, double y, std::size_t count, SplineRun run)
{
    const double left = std::floor(x), top = std::floor(y);
    if (!(left >= 1.0 && top >= 1.0 &&
          left + static_cast<double>(count) + 2.0 <= static_cast<double>(spline.width) &&
          top + 2.0 < static_cast<double>(spline.height)))
        return false;
    const Taps across = tapsAt(static_cast<float>(x - left));
    const Taps down = tapsAt(static_cast<float>(y - top));

    const float* const a =
        spline.row(static_cast<std::size_t>(top) - 1) + static_cast<std::size_t>(left) - 1;
    const float* const b = a + spline.width;
    const float* const c = b + spline.width;
    const float* const d = c + spline.width;
    std::array<float, kLongestRun + 4> line, slope;
    const auto& v = down.value;
    for (std::size_t k = 0; k < count + 3; ++k)
        line[k] = v[0] * a[k] + v[1] * b[k] + v[2] * c[k] + v[3] * d[k];
    const auto& u = across.value;
    for (std::size_t k = 0; k < count; ++k)
        run.value[k] =
            u[0] * line[k] + u[1] * line[k + 1] + u[2] * line[k + 2] + u[3] * line[k + 3];
    if (!run.slopeX)
        return true;
    const auto& w = down.slope;
    for (std::size_t k = 0; k < count + 3; ++k)
        slope[k] = w[0] * a[k] + w[1] * b[k] + w[2] * c[k] + w[3] * d[k];
    const auto& s = across.slope;
    for (std::size_t k = 0; k < count; ++k) {
        run.slopeX[k] =
            s[0] * line[k] + s[1] * line[k + 1] + s[2] * line[k + 2] + s[3] * line[k + 3];
        run.slopeY[k] =
            u[0] * slope[k] + u[1] * slope[k + 1] + u[2] * slope[k + 2] + u[3] * slope[k + 3];
    }
    return true;
}

}  // namespace stillbay
