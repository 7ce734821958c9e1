// SPDX-License-Identifier: MIT
#include "ui/find/tube_delegate.h"

#include "ui/find/tube_fields.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/number_box.h"

namespace stillbay::ui {

NumberBox* makeTubeBox(std::size_t member, QWidget* parent)
{
    const Field<TubeKind>& field = stockField(member);
    auto* const box = new NumberBox(parent);
    box->setRange(field.min, field.max);
    box->setSingleStep(field.step);
    box->setUnit(QString::fromUtf8(field.unit));
    box->setToolTip(displayText(field.meaning));
    return box;
}

QWidget* TubeDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem&,
                                    const QModelIndex& index) const
{
    NumberBox* const box = makeTubeBox(static_cast<std::size_t>(index.column()), parent);
    box->setAccessibleName(
        index.model()->headerData(index.column(), Qt::Horizontal, Qt::DisplayRole).toString());
    connect(box, &NumberBox::refused, this, &TubeDelegate::refused);
    return box;
}

void TubeDelegate::setEditorData(QWidget* editor, const QModelIndex& index) const
{
    static_cast<NumberBox*>(editor)->show(index.data(Qt::EditRole).toDouble());
}

void TubeDelegate::setModelData(QWidget* editor, QAbstractItemModel* model,
                                const QModelIndex& index) const
{
    auto* const box = static_cast<NumberBox*>(editor);
    box->interpretText();
    model->setData(index, box->value(), Qt::EditRole);
}

}  // namespace stillbay::ui
