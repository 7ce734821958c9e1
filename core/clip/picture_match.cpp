// SPDX-License-Identifier: MIT
#include "core/clip/picture_match.h"

#include "core/clip/tile_fit.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace stillbay {

namespace {

constexpr int kNear = 2;        // whole pixels of the smallest picture tried about the guess
constexpr int kFar = 9;         // … where none of the near ones is alike
constexpr double kAlike = 0.8;  // correlation that ends the search
// Vibration stays in the tiles: no frame is the smooth thing it is fitted as.
constexpr double kSlack = 0.02;
constexpr std::size_t kTileRows = 8;
constexpr std::size_t kTileColumns = 8;

// Correlation of two pictures, the frame moved by whole pixels against the reference.
double correlation(const Plane& reference, const Plane& frame, int right, int down)
{
    const auto width = static_cast<int>(frame.width), height = static_cast<int>(frame.height);
    const int x0 = std::max(0, right), x1 = std::min(width, width + right);
    const int y0 = std::max(0, down), y1 = std::min(height, height + down);
    if ((x1 - x0) * 2 < width || (y1 - y0) * 2 < height)
        return -1.0;
    constexpr std::size_t kLanes = 4;
    std::array<float, kLanes> f{}, r{}, ff{}, rr{}, fr{};
    const auto count = static_cast<std::size_t>(x1 - x0) / kLanes * kLanes;
    for (int y = y0; y < y1; ++y) {
        const float* const a = frame.row(static_cast<std::size_t>(y)) + x0;
        const float* const b = reference.row(static_cast<std::size_t>(y - down)) + (x0 - right);
        for (std::size_t x = 0; x < count; x += kLanes)
            for (std::size_t l = 0; l < kLanes; ++l) {
                const float va = a[x + l] - 128.0F, vb = b[x + l] - 128.0F;
                f[l] += va;
                r[l] += vb;
                ff[l] += va * va;
                rr[l] += vb * vb;
                fr[l] += va * vb;
            }
    }
    const auto sum = [](const std::array<float, kLanes>& lanes) {
        double total = 0.0;
        for (const float lane : lanes)
            total += static_cast<double>(lane);
        return total;
    };
    const double pixels = static_cast<double>(count) * (y1 - y0);
    const double F = sum(f) / pixels, R = sum(r) / pixels;
    const double powerF = sum(ff) / pixels - F * F, powerR = sum(rr) / pixels - R * R;
    if (!(powerF > 1e-3 && powerR > 1e-3))
        return -1.0;
    return (sum(fr) / pixels - F * R) / std::sqrt(powerF * powerR);
}

struct WholePixels {
    int right = 0;
    int down = 0;
};

WholePixels bestShift(const Plane& reference, const Plane& frame, WholePixels guess)
{
    WholePixels best = guess;
    double most = -1.0;
    for (const int reach : {kNear, kFar}) {
        for (int down = guess.down - reach; down <= guess.down + reach; ++down)
            for (int right = guess.right - reach; right <= guess.right + reach; ++right)
                if (const double alike = correlation(reference, frame, right, down); alike > most) {
                    most = alike;
                    best = {right, down};
                }
        const bool inside =
            std::abs(best.right - guess.right) < reach && std::abs(best.down - guess.down) < reach;
        if (inside && most > kAlike)
            break;
    }
    return best;
}

constexpr std::array<MotionTerm, 4> kFirst{
    {{false, 0, 0}, {true, 0, 0}, {false, 0, 1}, {true, 1, 0}}};
constexpr std::array<MotionTerm, 10> kAll{{{false, 0, 0},
                                           {false, 0, 1},
                                           {false, 0, 2},
                                           {false, 1, 0},
                                           {false, 1, 1},
                                           {true, 0, 0},
                                           {true, 0, 1},
                                           {true, 0, 2},
                                           {true, 1, 0},
                                           {true, 1, 1}}};

// Adds what was fitted at a halved size to the rows at full size.
void addFit(RowField& field, const std::vector<double>& motion, std::span<const MotionTerm> terms,
            double halfWidth, double scale)
{
    for (std::size_t y = 0; y < field.size(); ++y) {
        const double place =
            fromMiddle(y, field.size()) / (0.5 * static_cast<double>(field.size()));
        for (std::size_t i = 0; i < terms.size(); ++i) {
            double amount = scale * motion[i];
            for (int k = 0; k < terms[i].yPower; ++k)
                amount *= place;
            if (terms[i].xPower == 0)
                (terms[i].down ? field[y].down : field[y].right) += amount;
            else
                (terms[i].down ? field[y].tilt : field[y].stretch) += amount / halfWidth;
        }
    }
}

}  // namespace

std::optional<PictureMatch> matchPicture(const ReferencePicture& reference,
                                         std::span<const Plane> frame, const RowMotion& guess)
{
    const std::size_t smallest = frame.size() - 1;
    const auto scaleOf = [](std::size_t level) {
        return std::ldexp(1.0, static_cast<int>(level));
    };
    const auto whole = [&](double shift) {
        return static_cast<int>(std::lround(shift / scaleOf(smallest)));
    };
    const WholePixels shift = bestShift(reference.levels[smallest], frame[smallest],
                                        {whole(guess.right), whole(guess.down)});
    PictureMatch match;
    match.field.assign(frame[0].height, {.right = shift.right * scaleOf(smallest),
                                         .down = shift.down * scaleOf(smallest)});

    const auto refine = [&](std::size_t level, std::span<const MotionTerm> terms) {
        const Plane& plane = frame[level];
        const TileGrid grid = gridOver(plane.width, plane.height, kTileRows, kTileColumns);
        std::vector<TileSums> sums(grid.size());
        sumTiles(levelOf(reference, level), plane,
                 halvedField(match.field, static_cast<unsigned>(level), plane.height), grid, 0,
                 grid.bands, sums);
        const auto fit = fitTiles(sums, terms, 0.5 * static_cast<double>(plane.width),
                                  0.5 * static_cast<double>(plane.height), {.slack = kSlack});
        if (!fit)
            return false;
        addFit(match.field, fit->motion, terms, 0.5 * static_cast<double>(frame[0].width),
               scaleOf(level));
        match.gain = fit->gain;
        match.unexplained = fit->unexplained;
        return true;
    };
    const std::size_t finer = std::min<std::size_t>(2, smallest);
    if (!refine(smallest, kFirst) || !refine(smallest, kFirst) || !refine(finer, kAll) ||
        !refine(finer, kAll))
        return std::nullopt;
    return match;
}

}  // namespace stillbay
