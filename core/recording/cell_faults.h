// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/phrase.h"

#include <cstddef>
#include <string>
#include <string_view>

namespace stillbay {

/// What is told of a column: where first, how often.
struct CellFaults {
    std::size_t first = 0, count = 0;
    std::string shown;

    void add(std::size_t line, std::string_view cell);
};

// What is said of rows and cells that hold no numbers.
Phrase saysShortRow(const CellFaults& rows);
Phrase saysTextRow(const CellFaults& rows);
Phrase saysCutRow(std::size_t line);
Phrase saysTextCell(const std::string& name, const CellFaults& cells);
Phrase saysEmptyCell(const std::string& name, const CellFaults& cells);

}  // namespace stillbay
