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

}  // namespace stillbay::ui
