// SPDX-License-Identifier: MIT
#pragma once

#include <QStringView>

#include <optional>

namespace stillbay::ui {

/// What typed or pasted text means as a number; none when it means none, or not yet.
///
/// A point and a comma both mean the decimal point, whatever the desktop's language. Where both
/// occur the last one is the decimal point and the others group thousands; one kind alone that
/// occurs more than once groups thousands. Spaces, apostrophes and the Arabic thousands sign are
/// skipped; digits of every script, the true minus sign and an exponent are understood.
std::optional<double> parseNumber(QStringView text);

/// What a length may be told in without its unit.
enum class LengthUnit { Millimetre, Inch };

/// What typed text means as a length: a number as above or a fraction ("1/2", "4 1/2", "4½"), with
/// a unit behind it where it is in another one ("0.5 in", "½ Zoll", "2.5 cm").
///
/// @return in the unit given, freed of what the conversion adds behind the ninth decimal.
std::optional<double> parseLength(QStringView text, LengthUnit unit);

}  // namespace stillbay::ui
