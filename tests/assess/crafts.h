// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"

/// Invented crafts for tests of symmetry and scale.
namespace stillbay::test {

/// A sample of the project, e.g. "reedbed". Throws when it cannot be read.
Setup sampleCraft(const char* name);

/// The sample reedbed with all tubes at 14°: steeper than the bay needs, which rises 2 mm. It is
/// the craft of the independent solution. Throws when it cannot be read.
Setup steepReedbed();

/// Three to six unlike arms, cubes anywhere, a bay on four to six unlike tubes; no symmetry at all.
/// Parts are cubes and the lens turns a degree of pan, tilt and roll into the same shake of whole
/// frames, so that the craft may be turned by any angle.
Setup skewCraft(unsigned seed);

/// Two arms of carbon tube fore and aft, bay and airframe with two planes of symmetry and their
/// centres of mass above each other.
Setup twoPlaneCraft();

/// The whole craft turned about the vertical through the datum; the camera keeps looking along x.
/// Parts must be cubes or the angle a half turn.
Setup turned(const Setup& craft, double angle_deg);

/// Left and right exchanged. Spins stay opposite: neighbours in the list of arms, which must be
/// even, are exchanged as well.
Setup mirrored(const Setup& craft);

/// Everything moved up.
Setup raised(const Setup& craft, double height_mm);

/// Masses, moduli, unbalance and blade-pass force doubled.
Setup doubled(const Setup& craft);

}  // namespace stillbay::test
