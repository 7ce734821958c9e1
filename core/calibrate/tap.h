// SPDX-License-Identifier: MIT
#pragma once

#include "core/calibrate/correction.h"

#include <cstddef>
#include <optional>
#include <span>

/// From the ringing of a tapped arm to what the arms are made of and how they are held.
namespace stillbay {

/// The first mode of a tapped arm in one direction. Spreads are over the value.
struct TappedMode {
    double frequency_hz = 0.0;
    std::optional<double> lossFactor;
    double frequencySpread = 0.003;
    double lossSpread = 0.1;
};

/// One arm, its motor and propeller on, the rotor still.
struct TappedArm {
    std::size_t arm = 0;
    std::optional<TappedMode> vertical, horizontal;
};

struct TapOptions {
    bool isHeld = true;         ///< the hub is held fast; else the craft is free
    double calliper_mm = 0.05;  ///< spread of the section's measured sides
};

/// Young's modulus, root stiffness and loss factor of the arms.
///
/// Modulus and joint soften both directions, each by its share of the strain. Two directions of a
/// section with unlike sides tell them apart where the covariance leaves the modulus less than half
/// of its usual doubt; else the joint stays as it is, the modulus takes in what the joint gives,
/// and a warning says so. The loss factor is the mode's over the arm's share of the strain; the
/// joint is taken to lose nothing.
///
/// @param taps  at least one arm and direction
/// @error BadInput  no such arm, nothing tapped, a frequency or loss that is not above 0.
/// @error NoAnswer  no modulus gives these frequencies.
/// @source own derivation; the strain's share by how the frequency goes with the modulus
/// (Rayleigh's
///         quotient).
Result<Correction> tapTest(const Setup& setup, std::span<const TappedArm> taps,
                           const TapOptions& options = {});

}  // namespace stillbay
