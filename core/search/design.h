// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"

#include <array>
#include <vector>

/// What a search may change on a craft.
namespace stillbay {

/// What is cut and how it is hung; all else is the craft's.
struct Design {
    TubeStock tube;
    Mounts mounts;

    bool operator==(const Design&) const = default;
};

Design designOf(const Setup& setup);
Setup withDesign(Setup setup, const Design& design);

/// A number of the design that can be turned, in the setup's units.
enum class Knob { FreeLength, Stretch, Elevation, Hardness, OuterDiameter };

inline constexpr std::array<Knob, 5> kKnobs{Knob::FreeLength, Knob::Stretch, Knob::Elevation,
                                            Knob::Hardness, Knob::OuterDiameter};

/// The field table's words and range for a knob.
struct KnobField {
    const char* key;    ///< "free_length_mm"
    const char* label;  ///< sentence case, no unit; for translation
    const char* unit;   ///< "" when it has none
    double min, max, step;
    int decimals;
};
KnobField fieldOf(Knob knob);

/// Whether the knob is free: in a drilled craft the holes decide stretch and elevation.
bool canTurn(const Mounts& mounts, Knob knob);

/// The knob as it stands; stretch and elevation as the mean over the tubes.
double valueOf(const Design& design, Knob knob);

/// Turns a knob that is free. Elevations keep their differences; a measured modulus keeps its
/// ratio to what the hardness says; the bore stays. The result may be outside the allowed range.
void turn(Design& design, Knob knob, double value);

/// Part of a knob's way.
struct KnobRange {
    Knob knob = Knob::FreeLength;
    double from = 0.0, to = 0.0;  ///< in the knob's unit, from ≤ to

    bool operator==(const KnobRange&) const = default;
};

/// A range worth looking through around a design; contains its value. In a drilled craft the free
/// lengths that stretch the tubes between nothing and their limit.
KnobRange usualRange(const Design& design, Knob knob);

/// A tube that lies in the drawer.
struct StockTube {
    double outer_diameter_mm = 8.0;
    double bore_mm = 5.0;
    double hardness_shore_a = 60.0;

    bool operator==(const StockTube&) const = default;
};

StockTube stockOf(const TubeStock& tube);

/// Takes a tube out of the drawer. Loss, density and limits stay those of the present tube, which
/// the drawer does not know; a measured modulus goes unless it is the same tube.
void takeTube(Design& design, const StockTube& stock);

}  // namespace stillbay
