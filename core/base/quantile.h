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

/// The middle one of finite values, of an even number the upper of both; 0 where there are none.
double median(std::vector<double> values);

}  // namespace stillbay
