// SPDX-License-Identifier: MIT
#pragma once

#include "core/clip/row_shifts.h"

namespace stillbay {

/// Widens the spreads where neighbouring bands differ by more than those allow. A coder moves
/// whole blocks of a picture by one step: all tiles of a band agree, and err together.
///
/// What a camera does from band to band is smooth: fourth differences leave (2 sin(πfΔ))⁴/√70 of
/// a sine, Δ the time between two bands; of 100 Hz in 64 bands of 16 ms less than a thousandth.
///
/// @param shifts bands by frame, within a frame by row
void widenSpreads(RowShifts& shifts);

}  // namespace stillbay
