// SPDX-License-Identifier: MIT
#pragma once

#include "ui/widgets/field_row.h"
#include "ui/widgets/field_spec.h"

namespace stillbay::ui {

/// A row of the form for one field of the table, bound to the document in both directions.
template <class Owner>
FieldRow* bindField(Document& document, const Field<Owner>& field, const Place<Owner>& place,
                    const QString& noneWord = {}, double start = 0.0)
{
    return new FieldRow(document, specOf(field, place), noneWord, start);
}

}  // namespace stillbay::ui
