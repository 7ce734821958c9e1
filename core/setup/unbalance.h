// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"

namespace stillbay {

/// Whether a motor has an unbalance of its own.
bool hasOwnUnbalance(const Setup& setup);

/// The unbalance of a motor with its propeller, by its arm [g·mm].
double unbalanceOf_g_mm(const Setup& setup, const Arm& arm);

/// Multiplies the unbalance of every motor.
void scaleUnbalance(Setup& setup, double factor);

}  // namespace stillbay
