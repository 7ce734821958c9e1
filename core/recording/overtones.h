// SPDX-License-Identifier: MIT
#pragma once

#include "core/recording/pole_fit.h"

#include <cstddef>
#include <optional>
#include <utility>
#include <vector>

/// Lines that are no modes: what two modes make together where the motion is large.
namespace stillbay {

/// Which two stronger poles (or one, twice) a fitted pole is the product of, if it is one.
///
/// What bends with the square of the motion answers to two decays a exp(s₁t) and b exp(s₂t) with
/// κ a b exp((s₁ ± s₂)t): at the sum or difference of their frequencies, dying as fast as both
/// together, and in every pluck as large, and of such a phase, as their product has it. All three
/// are asked for, so it takes two plucks; of one pluck every pole is taken for a mode.
///
/// @param shares  of the energy, a pole each
/// @source own derivation: second order of a perturbation
std::optional<std::pair<std::size_t, std::size_t>> parentsOf(const PoleFit& fit,
                                                             const std::vector<double>& shares,
                                                             std::size_t pole);

}  // namespace stillbay
