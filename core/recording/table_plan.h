// SPDX-License-Identifier: MIT
#pragma once

#include "core/recording/byte_source.h"
#include "core/recording/read_plan.h"

namespace stillbay {

/// The plan of a table of numbers, from its beginning.
///
/// @error BadInput  no row of numbers where one could be expected, or no plain text.
Result<ReadPlan> planTable(const ByteSource& bytes);

}  // namespace stillbay
