// SPDX-License-Identifier: MIT
#pragma once

#include <QString>

namespace stillbay::ui {

/// A number of the user's locale without thousands separators, as it is typed into a field.
///
/// @param digits  significant ones at most, without trailing zeros
QString plainNumber(double value, int digits);

/// The same with so many decimals.
QString plainDecimals(double value, int decimals);

/// The same with the digits of toText(), the fewest that mean the same double.
QString exactNumber(double value);

}  // namespace stillbay::ui
