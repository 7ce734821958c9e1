// SPDX-License-Identifier: MIT
#pragma once

namespace stillbay {

/// Balance quality grade G = eω [mm/s] of a rotor, e = U/m.
///
/// @param unbalance U [kg·m], @param rotorMass [kg] > 0, @param speed [rev/s].
/// @source ISO 21940-11:2016, rigid rotors.
double balanceGrade_mm_s(double unbalance, double rotorMass, double speed);

}  // namespace stillbay
