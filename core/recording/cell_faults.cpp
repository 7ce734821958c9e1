// SPDX-License-Identifier: MIT
#include "core/recording/cell_faults.h"

namespace stillbay {
namespace {

constexpr std::size_t kShownCell = 24;  // bytes of a cell in a sentence

// What can be shown of a cell: its beginning, cut at a whole character.
std::string shownCell(std::string_view cell)
{
    if (cell.size() <= kShownCell)
        return std::string(cell);
    std::size_t end = kShownCell;
    while (end > 0 && (static_cast<unsigned char>(cell[end]) & 0xC0) == 0x80)
        --end;
    return std::string(cell.substr(0, end)) + "…";
}

}  // namespace

void CellFaults::add(std::size_t line, std::string_view cell)
{
    if (count++ == 0) {
        first = line;
        shown = shownCell(cell);
    }
}

Phrase saysShortRow(const CellFaults& rows)
{
    return phrase("line %1 ends too early (lines like it: %2)", whole(rows.first),
                  whole(rows.count));
}

Phrase saysTextRow(const CellFaults& rows)
{
    return phrase("line %1 holds no numbers and is left out (lines like it: %2)", whole(rows.first),
                  whole(rows.count));
}

Phrase saysCutRow(std::size_t line)
{
    return phrase("the file ends within line %1, which is left out", whole(line));
}

Phrase saysTextCell(const std::string& name, const CellFaults& cells)
{
    return phrase("%1 holds no number in line %2: “%3” (lines like it: %4)", name,
                  whole(cells.first), cells.shown, whole(cells.count));
}

Phrase saysEmptyCell(const std::string& name, const CellFaults& cells)
{
    return phrase("%1 is empty in line %2 (lines like it: %3)", name, whole(cells.first),
                  whole(cells.count));
}

}  // namespace stillbay
