// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/calibrate/correction.h"
#include "core/setup/setup.h"

#include <cstddef>
#include <span>

namespace stillbay {

/// A mass that hung on a piece of tube, and two marks on the tube without and with it.
struct HungMass {
    double mass_g = 0.0;     ///< > 0, clip included
    double free_mm = 0.0;    ///< between the marks, relaxed; > 0
    double length_mm = 0.0;  ///< between the marks, loaded; above free_mm
};

inline constexpr std::size_t kMostHungMasses = 5;

/// How well scale and ruler tell.
struct HangReadings {
    double length_mm = 0.5;    ///< what each mark is read to
    double mass_g = 1.0;       ///< what the scale shows
    double massShare = 0.005;  ///< how far the scale may be off, one standard deviation
};

/// Young's modulus of the tube from masses hung on it: G = m g/(A₀(λ − λ⁻²)) of each, E = 3 G as
/// their mean weighted by how well each is read. Where E runs with the stretch beyond what is read,
/// as of rubber that softens, it is taken at the stretch of the craft's tubes, within what was
/// measured.
///
/// @param masses  one to five; those of one free length are taken as one piece whose marks were
///                read once without a mass
/// @return key tube.youngs_modulus_mpa; the residual is that of the forces.
/// @error BadInput  no mass or more than five, a number that is not above zero, a tube that is not
///                  longer with the mass than without; the sentence says which.
/// @source L. R. G. Treloar, The Physics of Rubber Elasticity (neo-Hookean, uniaxial); the error of
///         a length read at two marks, r/√6, JCGM 100:2008 4.3.7, from memory; scatter beyond what
///         is read widens the spread as R. T. Birge, Phys. Rev. 40 (1932), from memory.
Result<Correction> hangTest(const Setup& setup, std::span<const HungMass> masses,
                            const HangReadings& readings = {});

}  // namespace stillbay
