// SPDX-License-Identifier: MIT
#pragma once

#include "core/mass/mass.h"
#include "core/setup/tunes.h"

#include <array>
#include <optional>
#include <vector>

/// What a search may change on a craft.
namespace stillbay {

/// A number of the design that can be set, in the setup's units.
enum class Variable { FreeLength, Stretch, Elevation, Hardness, OuterDiameter };

inline constexpr std::array<Variable, 5> kVariables{Variable::FreeLength, Variable::Stretch,
                                                    Variable::Elevation, Variable::Hardness,
                                                    Variable::OuterDiameter};

/// The field table's words and range for a variable.
struct VariableField {
    const char* key;    ///< "free_length_mm"
    const char* label;  ///< sentence case, no unit; for translation
    const char* unit;   ///< "" when it has none
    double min, max, step;
    int decimals;
};
VariableField fieldOf(Variable variable);

/// The steps that a knife, a ruler or a protractor can follow, in the variable's unit: half a
/// millimetre of length, half a percent of stretch; what is recommended is a multiple of them.
double grainOf(Variable variable);

/// Whether the variable is free: in a drilled craft the holes decide stretch and elevation.
bool canSet(const Mounts& mounts, Variable variable);

/// The variable as it stands; stretch and elevation as the mean over the tubes.
double valueOf(const Design& design, Variable variable);

/// Sets a variable that is free. Elevations keep their differences, own stretches theirs to the
/// common one, own free lengths their ratio to it; a measured modulus keeps its
/// ratio to what the hardness says; the bore stays. The result may be outside the allowed range.
void setValue(Design& design, Variable variable, double value);

/// How designs are hung before they are looked at.
struct Hanging {
    std::optional<MassFigures> level;  ///< the bay that each is hung level for; none: as it stands

    Design hung(Design design) const;
};
Hanging hangingOf(const Setup& setup, bool level);

/// Between which values a variable may be.
struct VariableRange {
    Variable variable = Variable::FreeLength;
    double from = 0.0, to = 0.0;  ///< in the variable's unit, from ≤ to

    /// Whether the design's value is within, both ends included.
    bool contains(const Design& design) const;

    bool operator==(const VariableRange&) const = default;
};

/// A range worth looking through around a design; contains its value. In a drilled craft the free
/// lengths that stretch the tubes between nothing and their limit.
VariableRange usualRange(const Design& design, Variable variable);

/// A tube of the tube stock.
struct StockTube {
    double outer_diameter_mm = 8.0;
    double bore_mm = 5.0;
    double hardness_shore_a = 60.0;

    bool operator==(const StockTube&) const = default;
};

StockTube stockOf(const TubeKind& tube);

/// Gives a design a tube of the stock. Loss, density and limits stay those of the present tube,
/// which the tube stock does not know; a measured modulus goes unless it is the same tube.
void useTube(Design& design, const StockTube& stock);

}  // namespace stillbay
