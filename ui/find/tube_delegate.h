// SPDX-License-Identifier: MIT
#pragma once

#include <QStyledItemDelegate>

namespace stillbay::ui {

class NumberBox;

/// A box for one number of a tube in the tube stock, with the field table's range.
NumberBox* makeTubeBox(std::size_t member, QWidget* parent);

/// Lets the tube stock's numbers be typed in place.
class TubeDelegate final : public QStyledItemDelegate {
    Q_OBJECT
public:
    using QStyledItemDelegate::QStyledItemDelegate;

    QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const override;
    void setEditorData(QWidget* editor, const QModelIndex& index) const override;
    void setModelData(QWidget* editor, QAbstractItemModel* model,
                      const QModelIndex& index) const override;

signals:
    void refused(const QString& why);
};

}  // namespace stillbay::ui
