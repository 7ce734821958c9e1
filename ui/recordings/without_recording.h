// SPDX-License-Identifier: MIT
#pragma once

#include "ui/recordings/measured_craft.h"

namespace stillbay::ui {

class FlightNotesPane;
class HangPane;
class SaidPane;

/// Says what the masses that are filled in tell of the tube.
void sayHang(SaidPane& said, const HangPane& hang, const Setup& craft);

/// Shows the craft's flight notes, and says what they tell of its limits.
void showAndSayNotes(SaidPane& said, FlightNotesPane& notes, const PredictedCraft& craft);

}  // namespace stillbay::ui
