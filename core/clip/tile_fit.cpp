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

// What a unit of each unknown adds to the frame's brightness: so much of the slope to the right,
// of the slope downwards, of the reference.
struct Effect {
    std::array<double, kMost> amount{};
    std::array<std::size_t, kMost> of{};
};

Effect effectAt(std::span<const MotionTerm> terms, double x, double y)
{
    Effect effect;
    for (std::size_t i = 0; i < terms.size(); ++i) {
        double size = 1.0;
        for (int k = 0; k < terms[i].xPower; ++k)
            size *= x;
        for (int k = 0; k < terms[i].yPower; ++k)
            size *= y;
        effect.amount[i] = -size;
        effect.of[i] = terms[i].down ? 1 : 0;
    }
    effect.amount[terms.size()] = 1.0;
    effect.of[terms.size()] = 2;
    return effect;
}

double product(const TileSums& tile, std::size_t a, std::size_t b)
{
    constexpr std::array<std::array<std::size_t, 3>, 3> kAt{{{0, 1, 2}, {1, 3, 4}, {2, 4, 5}}};
    return tile.products[kAt[a][b]];
}

// What a solution leaves of one tile.
struct Leftover {
    std::array<double, 3> score;  // with the slopes and the reference
    double power = 0.0;           // of the brightness not explained
};

Leftover leftover(const TileSums& tile, const Effect& effect, const Row& solution, std::size_t n)
{
    std::array<double, 3> amount{};
    for (std::size_t i = 0; i < n; ++i)
        amount[effect.of[i]] += effect.amount[i] * solution[i];
    Leftover left{tile.withFrame, tile.frame};
    for (std::size_t a = 0; a < 3; ++a) {
        for (std::size_t b = 0; b < 3; ++b)
            left.score[a] -= product(tile, a, b) * amount[b];
        left.power -= amount[a] * (tile.withFrame[a] + left.score[a]);
    }
    left.power = std::max(left.power, 0.0);
    return left;
}

// The power that stays when a tile may move and be lit as it alone likes best: large where it
// shows something else than the reference.
double leftAlone(const TileSums& tile)
{
    Normal normal;
    normal.n = 3;
    Row right{};
    for (std::size_t a = 0; a < 3; ++a) {
        for (std::size_t b = 0; b <= a; ++b)
            normal.a[a][b] = product(tile, a, b);
        normal.a[a][a] *= 1.0 + 1e-6;
        right[a] = tile.withFrame[a];
    }
    if (!normal.factor())
        return tile.frame;
    const Row solution = normal.solve(right);
    double left = tile.frame;
    for (std::size_t a = 0; a < 3; ++a)
        left -= solution[a] * right[a];
    return std::max(left, 0.0);
}

}  // namespace

std::optional<TileFit> fitTiles(std::span<const TileSums> all, std::span<const MotionTerm> terms,
                                double xScale, double yScale, const FitManner& manner)
{
    const std::size_t n = terms.size() + 1;
    check(n <= kMost, "no more unknowns than there is room for");
    std::vector<const TileSums*> tiles;
    for (const TileSums& tile : all)
        if (tile.pixels > 0.0 && tile.products[5] > 0.0)
            tiles.push_back(&tile);
    if (tiles.size() < n + 2)
        return std::nullopt;

    std::vector<Effect> effects;
    for (const TileSums* const tile : tiles)
        effects.push_back(effectAt(terms, tile->x / xScale, tile->y / yScale));
    std::vector<double> noise;
    for (const TileSums* const tile : tiles)
        noise.push_back(leftAlone(*tile) / tile->pixels);
    std::vector<double> weights(tiles.size());
    Normal normal;
    Row solution{};
    double usual = 0.0;
    for (int round = 0; round < kRounds; ++round) {
        usual = std::max(median(noise), 1e-6);
        for (std::size_t t = 0; t < tiles.size(); ++t) {
            const double contrast = tiles[t]->products[5] / tiles[t]->pixels;
            const double expected = usual + manner.slack * contrast;
            const double ratio = noise[t] / (5.0 * expected);
            weights[t] = 1.0 / (1.0 + ratio * ratio);
            // What moves by itself often has the strongest edges: it may not lead at the start.
            if (round == 0)
                weights[t] *= usual / (usual + kCalm * contrast);
        }
        normal = {};
        normal.n = n;
        Row right{};
        for (std::size_t t = 0; t < tiles.size(); ++t) {
            const Effect& effect = effects[t];
            for (std::size_t i = 0; i < n; ++i) {
                const double share = weights[t] * effect.amount[i];
                for (std::size_t j = 0; j <= i; ++j)
                    normal.a[i][j] +=
                        share * effect.amount[j] * product(*tiles[t], effect.of[i], effect.of[j]);
                right[i] += share * tiles[t]->withFrame[effect.of[i]];
            }
        }
        if (manner.pull > 0.0)
            for (std::size_t i = 0; i + 1 < n; ++i)
                normal.a[i][i] += 10.0 * usual / (manner.pull * manner.pull);
        if (!normal.factor())
            return std::nullopt;
        solution = normal.solve(right);
        for (std::size_t t = 0; t < tiles.size(); ++t)
            noise[t] = leftover(*tiles[t], effects[t], solution, n).power / tiles[t]->pixels;
    }

    TileFit fit;
    fit.gain = solution[n - 1];
    if (!(fit.gain > 0.05))
        return std::nullopt;
    fit.tiles = tiles.size();
    for (std::size_t i = 0; i + 1 < n; ++i)
        fit.motion.push_back(solution[i] / fit.gain);
    std::vector<Row> scores(tiles.size());
    double sum = 0.0, sumOfSquares = 0.0;
    for (std::size_t t = 0; t < tiles.size(); ++t) {
        const Leftover left = leftover(*tiles[t], effects[t], solution, n);
        sum += weights[t];
        sumOfSquares += weights[t] * weights[t];
        for (std::size_t i = 0; i < n; ++i)
            scores[t][i] = weights[t] * effects[t].amount[i] * left.score[effects[t].of[i]];
    }
    if (sum * sum / sumOfSquares < static_cast<double>(n) + 1.0)
        return std::nullopt;
    std::array<Row, kMost> inverse{};
    for (std::size_t i = 0; i < n; ++i) {
        Row unit{};
        unit[i] = 1.0;
        inverse[i] = normal.solve(unit);
    }
    for (std::size_t i = 0; manner.withVariance && i + 1 < n; ++i) {
        const Row& along = inverse[i];  // how the unknown follows the scores
        double variance = 0.0, white = 0.0;
        for (std::size_t t = 0; t < tiles.size(); ++t) {
            const Effect& effect = effects[t];
            std::array<double, 3> amount{}, push{};
            double pulled = 0.0, power = 0.0;
            for (std::size_t k = 0; k < n; ++k) {
                amount[effect.of[k]] += along[k] * effect.amount[k];
                pulled += along[k] * scores[t][k];
            }
            for (std::size_t a = 0; a < 3; ++a) {
                for (std::size_t b = 0; b < 3; ++b)
                    push[a] += product(*tiles[t], a, b) * amount[b];
                power += amount[a] * push[a];
            }
            // The part of the tile's own pull that the solution has already given way to.
            double yielded = 0.0;
            for (std::size_t a = 0; a < n; ++a)
                for (std::size_t b = 0; b < n; ++b)
                    yielded += effect.amount[a] * push[effect.of[a]] * inverse[a][b] *
                               effect.amount[b] * push[effect.of[b]];
            const double lever = power > 0.0 ? std::min(weights[t] * yielded / power, 0.9) : 0.0;
            variance += pulled * pulled / (1.0 - lever);
            white += weights[t] * weights[t] * noise[t] * power;
        }
        fit.variance.push_back(variance / (fit.gain * fit.gain));
        fit.whiteVariance.push_back(white / (fit.gain * fit.gain));
    }

    std::vector<double> contrast;
    for (const TileSums* const tile : tiles)
        contrast.push_back(tile->products[5]);
    const double rich = median(contrast);
    std::vector<double> shares;
    for (std::size_t t = 0; t < tiles.size(); ++t)
        if (tiles[t]->products[5] >= rich)
            shares.push_back(noise[t] * tiles[t]->pixels / std::max(tiles[t]->frame, 1e-9));
    fit.unexplained = median(shares);
    return fit;
}

}  // namespace stillbay
