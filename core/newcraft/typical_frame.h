// SPDX-License-Identifier: MIT
#pragma once

#include "core/newcraft/answers.h"
#include "core/setup/setup.h"

#include <cstddef>

/// Arms and plates as they follow from the answers. Proportions are those of the samples.
namespace stillbay {

/// How large the craft is, the builder's own words kept.
struct CraftSize {
    ArmLayout layout = ArmLayout::FourX;
    double propeller_diameter_in = 10.0;
    double arm_length_mm = 175.0;
    double root_radius_mm = 50.0;
};

int armsOf(ArmLayout layout);
CraftSize sizeOf(const CraftAnswers& answers);

/// Index into armPresets(): the builder's, or the usual one for arms of that length.
std::size_t armMaterialFor(const CraftAnswers& answers, const CraftSize& size);

/// Arms, their material with its sources, plates; what sits on the plates needs the motors.
Setup withFrame(Setup setup, const CraftSize& size, const CraftAnswers& answers);

/// The electronics, 15 g and about a quarter of the motors that they feed (common practice, no
/// source); on the plates, which are there.
void addElectronics(Setup& setup);

}  // namespace stillbay
