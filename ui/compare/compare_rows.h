// SPDX-License-Identifier: MIT
#pragma once

#include "ui/compare/compared_craft.h"

#include <QStringList>

#include <vector>

namespace stillbay::ui {

/// One line of a comparison: the same of each craft, so that what differs reads differently.
struct CompareRow {
    QString name;
    QStringList cells;
    QStringList meanings = {};  ///< tool tips; fewer than the cells: none
    bool isNumber = true;

    /// Whether it is another than the first one, which is the present craft's.
    bool differs(int craft) const { return cells[craft] != cells.front(); }
};

/// @param crafts  the present one first
std::vector<CompareRow> compareRows(const std::vector<ComparedCraft>& crafts);

}  // namespace stillbay::ui
