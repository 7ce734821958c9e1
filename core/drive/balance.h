// SPDX-License-Identifier: MIT
#pragma once

namespace stillbay {

/// What an unbalance is spread over: propeller and bell, half of the motor [kg].
///
/// @source half: common practice, no source.
double rotorMass(double motor, double propeller);

/// Balance quality grade G = eω [mm/s] of a rotor, e = U/m.
///
/// @param unbalance U [kg·m], @param rotorMass [kg] > 0, @param speed [rev/s].
/// @source ISO 21940-11:2016, rigid rotors.
double balanceGrade_mm_s(double unbalance, double rotorMass, double speed);

/// Where a strip of tape goes on a propeller of known unbalance.
enum class TapeSide {
    Light,     ///< opposite to the unbalance: takes from it
    Heavy,     ///< on the unbalance: adds to it
    Balances,  ///< it brought the propeller into balance, so it tells what the unbalance was
};

/// Unbalance [kg·m] that a strip of tape makes of another.
///
/// @param unbalance U ≥ 0 [kg·m], @param mass m ≥ 0 [kg], @param radius r ≥ 0 [m] of the tape.
/// @source U = m r, the definition in ISO 21940-11; the tape itself is common practice, no source.
double unbalanceWithTape(double unbalance, double mass, double radius, TapeSide side);

}  // namespace stillbay
