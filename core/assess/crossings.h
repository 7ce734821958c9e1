// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/base/phrase.h"
#include "core/setup/setup.h"

#include <vector>

/// Where the excitations of the rotors meet what can swing.
namespace stillbay {

/// A flight mode of the bay, or the first bending of the arms.
struct Resonance {
    double frequency_hz = 0.0;
    Phrase text;  ///< "pitch: bay nods", "arms swing sideways"
    bool ofArms = false;
};

/// The six flight modes, rising in frequency, then the arms: one entry when both their bendings
/// have one frequency, else two.
std::vector<Resonance> resonances(const Assessment& assessment);

/// An order that passes a resonance as the throttle opens, at the full pack.
struct Crossing {
    int order = 1;
    Resonance met;
    double throttle = 0.0;
    double speed_rpm = 0.0;
    double wobble_px = 0.0;  ///< rms, of this order alone
    bool inCruise = false;
};

/// Every crossing on the assessment's throttle grid, rising in throttle; straight between its
/// points.
std::vector<Crossing> crossings(const Setup& setup, const Assessment& assessment);

}  // namespace stillbay
