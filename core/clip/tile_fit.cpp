// SPDX-License-Identifier: MIT
#include "core/clip/tile_fit.h"

#include "core/base/check.h"
#include "core/base/quantile.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace stillbay {

namespace {

constexpr std::size_t kMost = 11;  // ten terms and the gain
constexpr int kRounds = 4;
constexpr double kLeastSlope = 1e-3;  // of a tile's, added to tell what it hardly does
constexpr std::size_t kFewestForMiddle = 5;
constexpr double kFaintest = 0.05;  // gain of a frame that shows the reference at all

// Of a tile's contrast: counted as noise until it is known which tiles agree.
constexpr double kCalm = 0.05;

using Row = std::array<double, kMost>;

// A symmetric positive matrix and its factor L Lᵀ, of the first n unknowns.
struct Normal {
    std::array<Row, kMost> a{};
    std::size_t n = 0;

    bool factor()
    {
        for (std::size_t i = 0; i < n; ++i)
            for (std::size_t j = 0; j <= i; ++j) {
                const double before = a[i][j];
                for (std::size_t k = 0; k < j; ++k)
                    a[i][j] -= a[i][k] * a[j][k];
                if (i != j)
                    a[i][j] /= a[j][j];
                else if (a[i][i] > 1e-9 * before)
                    a[i][i] = std::sqrt(a[i][i]);
                else
                    return false;
            }
        return true;
    }

    Row solve(Row b) const
    {
        for (std::size_t i = 0; i < n; ++i) {
            for (std::size_t k = 0; k < i; ++k)
                b[i] -= a[i][k] * b[k];
            b[i] /= a[i][i];
        }
        for (std::size_t i = n; i-- > 0;) {
            for (std::size_t k = i + 1; k < n; ++k)
                b[i] -= a[k][i] * b[k];
            b[i] /= a[i][i];
        }
        return b;
    }
};

// One tile in the terms' unknowns: what they explain of each other and of the frame.
struct Equations {
    std::array<Row, kMost> products;
    Row right;
    double frame = 0.0;
    double pixels = 0.0;
    double contrast = 0.0;  // of the reference, a pixel
};

double product(const TileSums& tile, std::size_t a, std::size_t b)
{
    constexpr std::array<std::array<std::size_t, 3>, 3> kAt{{{0, 1, 2}, {1, 3, 4}, {2, 4, 5}}};
    return tile.products[kAt[a][b]];
}

// A motion takes from the frame's brightness so much of the slope, the gain adds of the reference.
Equations equationsOf(const TileSums& tile, std::span<const MotionTerm> terms, double x, double y)
{
    const std::size_t n = terms.size() + 1;
    Row amount;
    std::array<std::size_t, kMost> of;
    for (std::size_t i = 0; i < terms.size(); ++i) {
        amount[i] = -1.0;
        for (int k = 0; k < terms[i].xPower; ++k)
            amount[i] *= x;
        for (int k = 0; k < terms[i].yPower; ++k)
            amount[i] *= y;
        of[i] = terms[i].down ? 1 : 0;
    }
    amount[n - 1] = 1.0;
    of[n - 1] = 2;
    Equations equations;
    equations.frame = tile.frame;
    equations.pixels = tile.pixels;
    equations.contrast = tile.products[5] / tile.pixels;
    for (std::size_t i = 0; i < n; ++i) {
        for (std::size_t j = 0; j < n; ++j)
            equations.products[i][j] = amount[i] * amount[j] * product(tile, of[i], of[j]);
        equations.right[i] = amount[i] * tile.withFrame[of[i]];
    }
    return equations;
}

double dotOf(const Row& a, const Row& b, std::size_t n)
{
    double sum = 0.0;
    for (std::size_t i = 0; i < n; ++i)
        sum += a[i] * b[i];
    return sum;
}

Row timesProducts(const Equations& tile, const Row& vector, std::size_t n)
{
    Row product{};
    for (std::size_t i = 0; i < n; ++i)
        product[i] = dotOf(tile.products[i], vector, n);
    return product;
}

// Power a pixel that a solution does not explain.
double noiseOf(const Equations& tile, const Row& solution, std::size_t n)
{
    const Row explained = timesProducts(tile, solution, n);
    double left = tile.frame;
    for (std::size_t i = 0; i < n; ++i)
        left -= solution[i] * (2.0 * tile.right[i] - explained[i]);
    return std::max(left, 0.0) / tile.pixels;
}

// The same when the tile may move and be lit as it alone likes best: large where it shows
// something else than the reference.
double noiseAlone(const TileSums& tile)
{
    std::array<std::array<double, 4>, 4> a;  // the three, and the frame behind them
    for (std::size_t i = 0; i < 3; ++i) {
        for (std::size_t j = 0; j < 3; ++j)
            a[i][j] = product(tile, i, j);
        a[i][3] = a[3][i] = tile.withFrame[i];
        a[i][i] *= 1.0 + 1e-6;
    }
    a[3][3] = tile.frame;
    for (std::size_t k = 0; k < 3; ++k) {
        if (!(a[k][k] > 0.0))
            continue;
        for (std::size_t i = k + 1; i < 4; ++i)
            for (std::size_t j = k + 1; j < 4; ++j)
                a[i][j] -= a[i][k] * a[k][j] / a[k][k];
    }
    return std::max(a[3][3], 0.0) / tile.pixels;
}

struct OwnMotion {
    double right = 0.0, down = 0.0, gain = 0.0;
};

// What one tile would say alone; none where its slopes do not tell.
std::optional<OwnMotion> motionAlone(const TileSums& tile)
{
    Normal normal;
    normal.n = 3;
    Row right{};
    for (std::size_t i = 0; i < 3; ++i) {
        for (std::size_t j = 0; j <= i; ++j)
            normal.a[i][j] = product(tile, i, j);
        right[i] = tile.withFrame[i];
    }
    for (std::size_t i = 0; i < 2; ++i)
        normal.a[i][i] *= 1.0 + kLeastSlope;
    if (!normal.factor())
        return {};
    const Row own = normal.solve(right);
    if (!(own[2] > kFaintest))
        return {};
    return OwnMotion{-own[0] / own[2], -own[1] / own[2], own[2]};
}

// The middle ones of what the tiles say alone, in the terms' unknowns; none of too few.
std::optional<Row> middleOfTiles(std::span<const TileSums> tiles, std::span<const MotionTerm> terms)
{
    std::vector<double> right, down, gain;
    for (const TileSums& tile : tiles)
        if (tile.pixels > 0.0 && tile.products[5] > 0.0)
            if (const auto own = motionAlone(tile)) {
                right.push_back(own->right);
                down.push_back(own->down);
                gain.push_back(own->gain);
            }
    if (right.size() < kFewestForMiddle)
        return {};
    Row start{};
    start[terms.size()] = median(gain);
    for (std::size_t i = 0; i < terms.size(); ++i)
        if (terms[i].xPower == 0 && terms[i].yPower == 0)
            start[i] = start[terms.size()] * (terms[i].down ? median(down) : median(right));
    return start;
}

double weightOf(double noise, double usual, double contrast, double slack)
{
    const double ratio = noise / (5.0 * (usual + slack * contrast));
    return 1.0 / (1.0 + ratio * ratio);
}

// Adds the variances to a fit of these weights.
void addVariances(TileFit& fit, const std::vector<Equations>& tiles, const Row& solution,
                  const std::vector<double>& weights, const std::vector<double>& noise,
                  const Normal& normal)
{
    const std::size_t n = normal.n;
    std::array<Row, kMost> inverse{};
    for (std::size_t i = 0; i < n; ++i) {
        Row unit{};
        unit[i] = 1.0;
        inverse[i] = normal.solve(unit);
    }
    std::vector<Row> scores;
    for (const Equations& tile : tiles) {
        Row score = timesProducts(tile, solution, n);
        for (std::size_t i = 0; i < n; ++i)
            score[i] = tile.right[i] - score[i];
        scores.push_back(score);
    }
    for (std::size_t i = 0; i + 1 < n; ++i) {
        const Row& along = inverse[i];  // how the unknown follows the scores
        double variance = 0.0, white = 0.0;
        for (std::size_t t = 0; t < tiles.size(); ++t) {
            const Row push = timesProducts(tiles[t], along, n);
            const double power = dotOf(along, push, n);
            const double pulled = weights[t] * dotOf(along, scores[t], n);
            // The part of the tile's own pull that the solution has already given way to.
            double yielded = 0.0;
            for (std::size_t a = 0; a < n; ++a)
                yielded += push[a] * dotOf(inverse[a], push, n);
            const double lever = power > 0.0 ? std::min(weights[t] * yielded / power, 0.9) : 0.0;
            variance += pulled * pulled / (1.0 - lever);
            white += weights[t] * weights[t] * noise[t] * power;
        }
        fit.variance.push_back(variance / (fit.gain * fit.gain));
        fit.whiteVariance.push_back(white / (fit.gain * fit.gain));
    }
}

// Share of the contrast that stays, the middle one of the tiles that have more than most.
double unexplainedShare(const std::vector<Equations>& tiles, const std::vector<double>& noise)
{
    std::vector<double> contrast;
    for (const Equations& tile : tiles)
        contrast.push_back(tile.contrast);
    const double rich = median(contrast);
    std::vector<double> shares;
    for (std::size_t t = 0; t < tiles.size(); ++t)
        if (tiles[t].contrast >= rich)
            shares.push_back(noise[t] * tiles[t].pixels / std::max(tiles[t].frame, 1e-9));
    return median(shares);
}

}  // namespace

std::optional<TileFit> fitTiles(std::span<const TileSums> all, std::span<const MotionTerm> terms,
                                double xScale, double yScale, const FitManner& manner)
{
    const std::size_t n = terms.size() + 1;
    check(n <= kMost, "no more unknowns than there is room for");
    std::vector<Equations> tiles;
    std::vector<double> noise;
    for (const TileSums& tile : all)
        if (tile.pixels > 0.0 && tile.products[5] > 0.0) {
            tiles.push_back(equationsOf(tile, terms, tile.x / xScale, tile.y / yScale));
            noise.push_back(noiseAlone(tile));
        }
    if (tiles.size() < n + 2)
        return std::nullopt;

    const auto start = manner.fromMiddle ? middleOfTiles(all, terms) : std::nullopt;
    if (start)
        for (std::size_t t = 0; t < tiles.size(); ++t)
            noise[t] = noiseOf(tiles[t], *start, n);
    std::vector<double> weights(tiles.size());
    Normal normal;
    Row solution{};
    for (int round = 0; round < kRounds; ++round) {
        const double usual = std::max(median(noise), 1e-6);
        normal = {};
        normal.n = n;
        Row right{};
        for (std::size_t t = 0; t < tiles.size(); ++t) {
            const Equations& tile = tiles[t];
            weights[t] = weightOf(noise[t], usual, tile.contrast, manner.slack);
            // What moves by itself often has the strongest edges: it may not lead at the start.
            if (round == 0)
                weights[t] *= usual / (usual + kCalm * tile.contrast);
            for (std::size_t i = 0; i < n; ++i) {
                for (std::size_t j = 0; j <= i; ++j)
                    normal.a[i][j] += weights[t] * tile.products[i][j];
                right[i] += weights[t] * tile.right[i];
            }
        }
        if (manner.pull > 0.0)
            for (std::size_t i = 0; i + 1 < n; ++i)
                normal.a[i][i] += 10.0 * usual / (manner.pull * manner.pull);
        if (!normal.factor())
            return std::nullopt;
        solution = normal.solve(right);
        for (std::size_t t = 0; t < tiles.size(); ++t)
            noise[t] = noiseOf(tiles[t], solution, n);
    }

    double sum = 0.0, sumOfSquares = 0.0;
    for (const double weight : weights) {
        sum += weight;
        sumOfSquares += weight * weight;
    }
    TileFit fit{.gain = solution[n - 1], .tiles = tiles.size()};
    if (!(fit.gain > kFaintest) || sum * sum < (static_cast<double>(n) + 1.0) * sumOfSquares)
        return std::nullopt;
    for (std::size_t i = 0; i + 1 < n; ++i)
        fit.motion.push_back(solution[i] / fit.gain);
    if (manner.withVariance)
        addVariances(fit, tiles, solution, weights, noise, normal);
    fit.unexplained = unexplainedShare(tiles, noise);
    return fit;
}

}  // namespace stillbay
