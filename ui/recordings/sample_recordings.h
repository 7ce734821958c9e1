// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"

#include <QStringList>

namespace stillbay::ui {

/// Whether the sample recordings are of this craft.
bool areSamplesOf(const Setup& setup);

/// Lays the invented recordings that are part of the program into its own folder, where they can
/// be read.
///
/// @return their paths; empty where that folder cannot be written
QStringList laidOutSamples();
/// What is said of a sample beside its file: its sensor, the throttle of a film, as the sample's
/// own file and its README tell it.
void describeSample(NamedRecording& recording);

}  // namespace stillbay::ui
