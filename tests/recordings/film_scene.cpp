// SPDX-License-Identifier: MIT
#include "tests/recordings/sample_film.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>

namespace stillbay::test {
namespace {

// −1 … 1, the same at the same place.
double atCorner(std::int64_t i, std::int64_t j, std::uint64_t kind)
{
    std::uint64_t h = static_cast<std::uint64_t>(i) * 0x9E3779B97F4A7C15ULL ^
                      static_cast<std::uint64_t>(j) * 0xC2B2AE3D27D4EB4FULL ^
                      kind * 0x165667B19E3779F9ULL;
    h ^= h >> 29;
    h *= 0xBF58476D1CE4E5B9ULL;
    h ^= h >> 32;
    h *= 0x94D049BB133111EBULL;
    h ^= h >> 31;
    return static_cast<double>(h >> 11) * 0x1p-52 - 1.0;
}

double eased(double t)
{
    t = std::clamp(t, 0.0, 1.0);
    return t * t * (3 - 2 * t);
}

// Smooth, −1 … 1; x and y in patches.
double rough(double x, double y, std::uint64_t kind)
{
    const double i = std::floor(x), j = std::floor(y);
    const double u = eased(x - i), v = eased(y - j);
    const auto a = static_cast<std::int64_t>(i), b = static_cast<std::int64_t>(j);
    return std::lerp(std::lerp(atCorner(a, b, kind), atCorner(a + 1, b, kind), u),
                     std::lerp(atCorner(a, b + 1, kind), atCorner(a + 1, b + 1, kind), u), v);
}

// Patches of a size and its halves down to four pixels.
double ragged(double x, double y, double size, std::uint64_t kind)
{
    double sum = 0, strength = 1;
    for (; size >= 4; size /= 2, strength *= 0.6)
        sum += strength * rough(x / size, y / size, kind++);
    return sum;
}

// 1 inside of an edge, 0 outside, two pixels wide.
double within(double inside)
{
    return eased(inside / 2 + 0.5);
}

double sky(double x, double y)
{
    return 205 + 0.15 * y + 16 * ragged(x / 1.6, y, 40, 10);
}

double wood(double x, double y)
{
    return 92 + 30 * ragged(x, y, 24, 20);
}

// Planks, a door, two windows, and a roof above.
double hut(double x, double y)
{
    const double plank = 14 * std::sin(2 * std::numbers::pi * x / 11);
    const double wall = 168 + plank + 14 * ragged(x, y, 16, 30);
    const auto box = [&](double left, double right, double top, double bottom) {
        return within(std::min({x - left, right - x, y - top, bottom - y}));
    };
    const double dark =
        std::max({box(78, 104, -52, 10), box(118, 142, -48, -26), box(40, 62, -48, -26)});
    return std::lerp(wall, 48 + 8 * rough(x / 7, y / 7, 31), dark);
}

double roof(double x, double y)
{
    return 74 + 12 * std::sin(2 * std::numbers::pi * (y + 0.2 * x) / 9) + 16 * ragged(x, y, 16, 40);
}

double reeds(double x, double y)
{
    const double leaning = x + 0.22 * y * rough(x / 60, 0, 50);
    return 126 + 30 * rough(leaning / 5, y / 34, 51) + 22 * rough(leaning / 9, y / 21, 52) +
           12 * ragged(x, y, 24, 53);
}

// Stones are larger where they are nearer.
double gravel(double x, double y)
{
    const double near = 1 + std::max(0.0, y - 60) / 90, depth = 90 * std::log(near);
    return 150 + 30 * rough(x / (6 * near), depth / 4, 60) +
           24 * rough(x / (11 * near), depth / 7, 61) + 10 * ragged(x, y, 16, 62);
}

}  // namespace

// From far to near, each before what is behind it.
double filmedBank(double right, double down)
{
    const double x = right, y = down;
    double value = sky(x, y);
    const auto lay = [&](double inside, double brightness) {
        value = std::lerp(value, brightness, within(inside));
    };
    lay(y + 112 + 16 * rough(x / 90, 0, 1) + 5 * rough(x / 13, 0, 2), wood(x, y));
    lay(std::min(84 - std::abs(x - 91), y + 72), hut(x, y));
    lay(std::min(y + 150 - 0.75 * std::abs(x - 91), -66 - y), roof(x, y));
    lay(y - 2 + 12 * rough(x / 40, 0, 3) + 10 * rough(x / 6, 0, 4), reeds(x, y));
    lay(y - 74 + 9 * rough(x / 50, 0, 5) + 2 * rough(x / 9, 0, 6), gravel(x, y));
    return value;
}

}  // namespace stillbay::test
