// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/presets/presets.h"
#include "core/setup/setup.h"

#include <string>

namespace stillbay {

/// A flat plate, level, by its outline.
struct Plate {
    double length_mm = 160.0;    ///< along
    double width_mm = 120.0;     ///< across
    double thickness_mm = 2.0;   ///< high
    double cut_out_share = 0.0;  ///< of the outline's area that holes and slots take, 0 … 0.95
    Triple centre_mm{};
    std::string name;
};

/// The plate as a box of the outline's size, its mass from the material's density and what is left
/// between the cut-outs. Its inertia is that of an even plate.
///
/// @error BadInput  a side, the share or the mass is out of its range; `where` names it.
Result<Part> platePart(const Plate& plate, const ArmPreset& material);

}  // namespace stillbay
