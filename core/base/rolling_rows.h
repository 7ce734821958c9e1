// SPDX-License-Identifier: MIT
#pragma once

/// What the rows of a rolling shutter see of a sine: mean squares over a frame and over all phases,
/// of a sine's complex amplitude 1.
namespace stillbay {

/// Mean squares of what is left of the sine e^{ias} once slow motion is out, s = −1 … 1 down the
/// frame.
struct LeftInRows {
    double sine = 0.0;   ///< of e^{ias}, mean and straight line taken out
    double place = 0.0;  ///< of s e^{ias}, likewise: a roll moves a row across by its height
    double turn = 0.0;   ///< of e^{ias}, mean taken out: and its pixels up by their place across
};

/// @param a  πft_r, ≥ 0
/// @source 1 − j₀² − 3j₁², ⅓ − j₁² − (j₀ − 2j₂)²/3 and 1 − j₀²: Legendre series of a plane wave,
///         DLMF 10.60.7; own derivation
LeftInRows leftInRows(double a);

}  // namespace stillbay
