// SPDX-License-Identifier: MIT
#pragma once

#include "core/design/design.h"
#include "core/setup/fields.h"

#include <array>
#include <cstddef>

namespace stillbay::ui {

/// What a tube in the tube stock is told by.
inline constexpr std::array<double StockTube::*, 3> kStockMembers{
    &StockTube::outer_diameter_mm, &StockTube::bore_mm, &StockTube::hardness_shore_a};

/// Digits of their numbers.
inline constexpr int kStockDigits = 6;

/// The field table's entry for a member, in the order above.
const Field<TubeKind>& stockField(std::size_t member);

}  // namespace stillbay::ui
