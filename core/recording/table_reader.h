// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/progress.h"
#include "core/recording/byte_source.h"
#include "core/recording/read_plan.h"
#include "core/recording/recording.h"

#include <cstddef>
#include <stop_token>
#include <utility>
#include <vector>

namespace stillbay {

/// The used columns of a table as they stand in the file, in the file's units.
struct RawTable {
    std::vector<std::size_t> columns;         ///< of the plan, rising; the time column among them
    std::vector<std::vector<double>> values;  ///< one a column; NaN where a cell holds no number
    std::vector<std::size_t> holes;           ///< how many such cells each column has
    /// (row, line) where the rows' lines do not follow on each other, from (0, line of the first).
    std::vector<std::pair<std::size_t, std::size_t>> lines;
    std::vector<RecordingFlaw> flaws;

    std::size_t rows() const { return values.empty() ? 0 : values.front().size(); }
    /// Of the text, from 1.
    std::size_t lineOf(std::size_t row) const;
};

/// So many values are read of the columns in use: 1 GiB, as of a sound.
inline constexpr std::size_t kMostTableValues = std::size_t{1} << 27;

/// Reads all rows of a table, block by block. Lines of comment and empty ones are passed over.
///
/// @param most  values of all columns in use together
/// @error BadInput  no column in use, one that the table has not, no row, more values.
/// @error NoAnswer  stopped.
Result<RawTable> readTable(const ByteSource& bytes, const ReadPlan& plan,
                           const std::stop_token& stop, const Progress& progress,
                           std::size_t most = kMostTableValues);

}  // namespace stillbay
