// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/phrase.h"
#include "core/setup/setup.h"

#include <cstddef>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// Which numbers of a craft are uncertain, how far, and what would settle them.
namespace stillbay {

/// One craft as it might be: the setup with other numbers, and what a setup does not hold.
struct CraftSample {
    Setup setup;
    std::vector<double> cuts_mm;  ///< tube by tube, cut so much longer than planned
};

enum class Doubt {
    NotKnownYet,   ///< one number that a measurement settles
    BuildToBuild,  ///< differs in every build of one plan, whatever is measured
};

struct UncertainInput {
    std::string key;     ///< path of the number, "tube.youngs_modulus_mpa"; a word for a build's
    Phrase label;        ///< "Young's modulus of the tube"
    Phrase measurement;  ///< what settles it and at what cost, "hang test, ten minutes"; of a
                         ///< build's it says nothing
    Doubt doubt = Doubt::NotKnownYet;
    std::optional<double> spread = {};  ///< one standard deviation over the value; of a number
                                        ///< that is known up to a factor
    std::size_t dimensions = 1;         ///< coordinates of the unit cube that it takes
    /// Gives a craft the number of these coordinates.
    std::function<void(std::span<const double> u, CraftSample& craft)> apply;
};

/// What is uncertain of a craft, the not known first.
///
/// Ranges hold nine crafts of ten, evenly to both sides in the logarithm: a number x is
/// x exp(σz), z of the normal distribution, cut at ±2.5, and "a factor f either way" is
/// σ = ln f / 1.645. So a modulus from the hardness has σ = 0.25: published relations differ
/// 1.6-fold (two of them, ±0.24 about their middle), and 5 points of hardness add ±0.18. With the
/// factor 1.5 at one standard deviation 1 tube in 20 would be off by more than 2.25, with the
/// factor at two the relations in print alone would fill the range.
///
/// A source with a spread has that spread, a measured value without one 3 %. What a craft without
/// a word on its source gives where the program would otherwise estimate counts as measured with
/// less care: 5 % (modulus of the tube, thrust coefficient), 8 % (power coefficient, inertia), 20 %
/// (root stiffness). Where a throttle curve was laid through measured speeds, KV and power
/// coefficient act no further than those speeds are off. A root that is not given gives by a
/// compliance spread evenly from none to that of 1000 N·m/rad.
std::vector<UncertainInput> uncertainInputs(const Setup& setup);

/// How far one of these numbers may be off, one standard deviation over the value.
///
/// @return none of a key that is not among them, or is not known up to a factor
std::optional<double> spreadOf(const Setup& setup, std::string_view key);

/// Coordinates of the unit cube that all inputs take together.
std::size_t dimensionsOf(const std::vector<UncertainInput>& inputs);

/// The craft at a point of the unit cube of dimensionsOf(), the inputs' coordinates in turn.
CraftSample craftAt(const Setup& setup, const std::vector<UncertainInput>& inputs,
                    std::span<const double> point);

}  // namespace stillbay
