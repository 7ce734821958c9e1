// SPDX-License-Identifier: MIT
#pragma once

#include "core/clip/tile_sums.h"

#include <optional>
#include <span>
#include <vector>

/// The motion that many tiles agree on.
namespace stillbay {

/// One unknown: a motion to the right or downwards that grows with powers of the place.
struct MotionTerm {
    bool down = false;
    int xPower = 0;
    int yPower = 0;
};

struct TileFit {
    std::vector<double> motion;         ///< one a term [px]; to be added to the field
    std::vector<double> variance;       ///< of each, by how little the tiles agree
    std::vector<double> whiteVariance;  ///< of each, were the noise of all pixels independent
    double gain = 1.0;                  ///< brightness of the frame over the reference's
    double unexplained = 1.0;  ///< share of the tiles' contrast, the middle one of the richer half
    std::size_t tiles = 0;     ///< that had a counterpart
};

struct FitManner {
    double pull = 0.0;   ///< > 0: each unknown is drawn to 0 as if known to so many pixels
    double slack = 0.0;  ///< share of a tile's contrast that may stay without it being doubted
    bool withVariance = false;  ///< else there is none in the answer
    /// Begins at the middle one of what the tiles say each for itself: what has strong edges and
    /// moves by itself cannot lead then. For tiles that all but agree.
    bool fromMiddle = false;
};

/// Least squares over tiles, those that fit far worse than the rest weighted down: what moves by
/// itself.
///
/// @param terms  at most 10; places in halves of the picture: x/xScale, y/yScale
/// @return none where the tiles do not fix the unknowns
/// @source Lucas & Kanade 1981 on tiles; weights 1/(1 + (s²/5e²)²) of a tile's unexplained power
///         s² and the expected e², its median and the slack; variance N⁻¹(Σ q qᵀ/(1 − h))N⁻¹ of the
///         tiles' scores q and levers h (MacKinnon & White 1985), so that pixels of one tile may
///         err together.
std::optional<TileFit> fitTiles(std::span<const TileSums> tiles, std::span<const MotionTerm> terms,
                                double xScale, double yScale, const FitManner& manner);

}  // namespace stillbay
