// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"

#include <optional>
#include <string_view>

/// How far the craft's numbers may be off. A spread is one standard deviation over the value.
namespace stillbay {

/// How far one number is off, before anything is said of its source.
struct UsualSpread {
    double unknown;               ///< of a value that nobody measured
    std::optional<double> given;  ///< where the value stands in for an estimate of ours
};

/// Of a number that is known up to a factor either way which holds nine of ten.
double spreadOfFactor(double factor);

/// A source with a spread has that spread, a measured value without one 3 %.
///
/// @param isGiven  whether the craft has the value; else it is estimated and its source not heard
double spreadOfNumber(const Setup& setup, std::string_view key, bool isGiven,
                      const UsualSpread& usual);

/// Of the tube's Young's modulus; where it is given or not is seen from the setup.
double modulusSpread(const Setup& setup);

}  // namespace stillbay
