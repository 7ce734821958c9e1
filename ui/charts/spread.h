// SPDX-License-Identifier: MIT
#pragma once

#include <span>
#include <vector>

namespace stillbay::ui {

/// Moves labels apart so that none overlap, each as near its wished place as the others allow
/// (least squares, by pooling neighbours).
///
/// @param wished  wished centres, rising
/// @param widths  widths of the labels
/// @param gap     least space between two labels
/// @return centres, rising; within [left, right] where all labels fit there
std::vector<double> spread(std::span<const double> wished, std::span<const double> widths,
                           double gap, double left, double right);

}  // namespace stillbay::ui
