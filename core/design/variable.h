// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/tunes.h"

#include <array>
#include <cstddef>

/// The numbers of a design that may change, told once: search, maps, suggestions, window and
/// command follow this table.
namespace stillbay {

/// A design variable.
enum class Variable {
    FreeLength,
    Stretch,
    Elevation,
    Hardness,
    OuterDiameter,
    Height,  // from here on: where the bay is held
    Direction,
    SpreadX,
    SpreadY,
    BalanceX,
    BalanceZ
};

inline constexpr std::size_t kVariableCount = 11;

/// In the order of the enumerators.
inline constexpr std::array<Variable, kVariableCount> kVariables{
    Variable::FreeLength,    Variable::Stretch,  Variable::Elevation, Variable::Hardness,
    Variable::OuterDiameter, Variable::Height,   Variable::Direction, Variable::SpreadX,
    Variable::SpreadY,       Variable::BalanceX, Variable::BalanceZ};

/// Words and range of a variable, in the setup's units.
struct VariableField {
    const char* key;    ///< "free_length_mm"
    const char* label;  ///< sentence case, no unit; for translation
    const char* unit;   ///< "" when it has none
    double min, max, step;
    int decimals;
};

/// Between which values a variable may be.
struct VariableRange {
    Variable variable = Variable::FreeLength;
    double from = 0.0, to = 0.0;  ///< in the variable's unit, from ≤ to

    /// Whether the design's value is within, both ends included.
    bool contains(const Design& design) const;

    bool operator==(const VariableRange&) const = default;
};

/// What can be said of any variable: the next one is one more row.
struct VariableRow {
    VariableField field;
    const char* name;  ///< one or two words, for titles; for translation
    /// Steps that a knife, a ruler or a protractor can follow, in the variable's unit; what is
    /// recommended is a multiple of them.
    double grain;
    const char* option;    ///< of the command search; "" where the command does not offer it
    const char* question;  ///< whether it may change, for translation; "" where a stock decides it
    bool movesHoles;       ///< the holes of a drilled craft decide it
    double (*value)(const Design&);
    void (*set)(Design&, double);
    /// A range worth looking through; it is widened to hold the present value.
    VariableRange (*usual)(const Setup&);
};
const VariableRow& rowOf(Variable variable);

VariableField fieldOf(Variable variable);
double grainOf(Variable variable);

/// Whether the variable is free: in a drilled craft the holes decide stretch, elevation and where
/// the tubes are.
bool canSet(const Mounts& mounts, Variable variable);

/// Whether it says where the bay is held, and not by which tube: height, direction and spread of
/// the points, balance of the bay.
bool placesBay(Variable variable);

/// The variable as it stands. Stretch, elevation, height and direction are means over the tubes;
/// a spread is half the distance between mirrored points; a direction is told off the
/// fore-and-aft axis, 0 to 90°, whichever way the tube points. A balance is a coordinate of the
/// heaviest part's centre.
///
/// @param design  with the place of the heaviest part for a balance
double valueOf(const Design& design, Variable variable);

/// Sets a variable that is free. Elevations and heights keep their differences, directions and
/// spreads as well, mirrored; own stretches theirs to the common one, own free lengths their ratio
/// to it; a measured modulus keeps its ratio to what the hardness says; the bore stays. The result
/// may be outside the allowed range.
void setValue(Design& design, Variable variable, double value);

/// A range worth looking through around a craft's present design; contains its value. In a drilled
/// craft the free lengths that stretch the tubes between nothing and their limit. Mount points stay
/// within the outline of the bay grown by its travel, or as far out as they are.
VariableRange usualRange(const Setup& setup, Variable variable);

}  // namespace stillbay
