// SPDX-License-Identifier: MIT
#pragma once

#include "ui/document/document.h"

namespace stillbay::ui {

class FieldRow;

/// A row for what the bay weighs as a whole; a number typed there scales the masses of its parts.
FieldRow* bayMassRow(Document& document);

}  // namespace stillbay::ui
