// SPDX-License-Identifier: MIT
#pragma once

#include "core/recording/read_plan.h"

#include <optional>
#include <string>
#include <string_view>

/// What a column is called and what that says.
namespace stillbay {

/// "ax (m/s²)" or "ax [g]" in its two parts, "acc_x_g" with the unit behind its last underscore
/// and the name whole; without a unit that is known the unit stays empty.
struct ColumnHeading {
    std::string name, unit;
};
ColumnHeading columnHeading(std::string_view heading);

/// What a unit says of a column with this name; none where the unit is unknown or, as "g" of a
/// thrust, means something else.
struct UnitMeaning {
    Quantity quantity = Quantity::Other;
    double scale = 1.0;
};
std::optional<UnitMeaning> meaningOfUnit(std::string_view unit, std::string_view name);

/// [s] one unit of time; none where it is not one.
std::optional<double> secondsOf(std::string_view unit);

/// What a name says by itself.
Quantity quantityOfName(std::string_view name);
bool isNameOfTime(std::string_view name);
bool isNameOfCount(std::string_view name);

}  // namespace stillbay
