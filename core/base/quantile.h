// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <vector>

namespace stillbay {

/// Smallest of `values` that a share of them does not exceed; none where that many have none.
///
/// @param values  in any order, infinite where a sample has no answer; not empty
/// @param share   0 < share ≤ 1
std::optional<double> quantile(std::vector<double> values, double share);

}  // namespace stillbay
