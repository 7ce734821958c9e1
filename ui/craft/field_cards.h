// SPDX-License-Identifier: MIT
#pragma once

#include "ui/document/document.h"
#include "ui/widgets/field_spec.h"

#include <QWidget>

#include <vector>

namespace stillbay::ui {

class FieldRow;

/// A row for each field of a struct that counts in the setup as it stands, in the table's order and
/// without a parent yet. Instantiated once for every struct of the field table.
template <class Owner>
std::vector<FieldRow*> fieldRows(Document& document, const Place<Owner>& place);

/// Rows one below the other.
QWidget* fieldsCard(const std::vector<FieldRow*>& rows);

}  // namespace stillbay::ui
