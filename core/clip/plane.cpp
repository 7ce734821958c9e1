// SPDX-License-Identifier: MIT
#include "core/clip/plane.h"

#include "core/base/check.h"

#include <algorithm>
#include <span>
#include <utility>

namespace stillbay {

namespace {

constexpr std::size_t kMeasuredPixels = std::size_t{1280} * 720;

// Half as many columns and rows of whatever the rows hold; a row beyond the edge is the edge's.
template <class Pixel>
Plane halvedRows(std::span<const Pixel> pixels, std::size_t width, std::size_t height)
{
    Plane half(width / 2, height / 2);
    std::vector<float> sum(width + 2);
    for (std::size_t y = 0; y < half.height; ++y) {
        const std::size_t last = height - 1;
        const Pixel* const a = pixels.data() + (y == 0 ? 0 : 2 * y - 1) * width;
        const Pixel* const b = pixels.data() + 2 * y * width;
        const Pixel* const c = pixels.data() + std::min(2 * y + 1, last) * width;
        const Pixel* const d = pixels.data() + std::min(2 * y + 2, last) * width;
        float* const inner = sum.data() + 1;
        for (std::size_t x = 0; x < width; ++x)
            inner[x] = static_cast<float>(a[x]) + static_cast<float>(d[x]) +
                       3.0F * (static_cast<float>(b[x]) + static_cast<float>(c[x]));
        sum.front() = inner[0];
        sum.back() = inner[width - 1];
        float* const out = half.row(y);
        for (std::size_t x = 0; x < half.width; ++x)
            out[x] = (sum[2 * x] + sum[2 * x + 3] + 3.0F * (sum[2 * x + 1] + sum[2 * x + 2])) *
                     (1.0F / 64.0F);
    }
    return half;
}

// By the filter 1 2 1 both ways.
Plane softened(const Plane& plane)
{
    Plane soft(plane.width, plane.height);
    std::vector<float> sum(plane.width + 2);
    for (std::size_t y = 0; y < plane.height; ++y) {
        const float* const a = plane.row(y == 0 ? 0 : y - 1);
        const float* const b = plane.row(y);
        const float* const c = plane.row(std::min(y + 1, plane.height - 1));
        for (std::size_t x = 0; x < plane.width; ++x)
            sum[x + 1] = a[x] + c[x] + 2.0F * b[x];
        sum.front() = sum[1];
        sum.back() = sum[plane.width];
        float* const out = soft.row(y);
        for (std::size_t x = 0; x < plane.width; ++x)
            out[x] = (sum[x] + sum[x + 2] + 2.0F * sum[x + 1]) * (1.0F / 16.0F);
    }
    return soft;
}

}  // namespace

unsigned halvingsOf(std::size_t width, std::size_t height)
{
    unsigned halvings = 0;
    for (; width * height > kMeasuredPixels; width /= 2, height /= 2)
        ++halvings;
    return halvings;
}

Plane shrunk(const Frame& frame, unsigned halvings)
{
    check(frame.luma.size() == std::size_t{frame.width} * frame.height, "a frame without gaps");
    if (halvings > 0) {
        Plane plane = halvedRows(frame.luma, frame.width, frame.height);
        for (unsigned k = 1; k < halvings; ++k)
            plane = halved(plane);
        return plane;
    }
    Plane plane(frame.width, frame.height);
    std::copy(frame.luma.begin(), frame.luma.end(), plane.values.begin());
    return softened(plane);
}

Plane halved(const Plane& plane)
{
    return halvedRows(std::span<const float>(plane.values), plane.width, plane.height);
}

std::vector<Plane> pyramidOf(Plane plane, std::size_t least)
{
    std::vector<Plane> levels;
    levels.push_back(std::move(plane));
    while (levels.back().width / 2 >= least)
        levels.push_back(halved(levels.back()));
    return levels;
}

}  // namespace stillbay
