// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/recording/recording.h"
#include "core/recording/table_reader.h"

#include <cstddef>
#include <vector>

namespace stillbay {

/// The clock of a table's rows.
struct TimeBase {
    double rate = 0.0;   ///< [Hz]
    double start = 0.0;  ///< [s]
    bool isEven = true;  ///< the rows are samples of an even clock as they stand
    std::vector<RecordingFlaw> flaws;
};

/// @param stamps  of the rows [s]; NaN where a row has none
/// @param table   for the lines that flaws name
/// @error BadInput  no two stamps that differ, a rate beyond 1 MHz.
Result<TimeBase> timeBase(std::vector<double>& stamps, const RawTable& table);

}  // namespace stillbay
