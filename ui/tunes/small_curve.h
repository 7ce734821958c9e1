// SPDX-License-Identifier: MIT
#pragma once

#include <QStyledItemDelegate>

namespace stillbay::ui {

class TunesModel;

/// Draws a kept tune's wobble over the throttle into its cell.
class SmallCurve final : public QStyledItemDelegate {
    Q_OBJECT
public:
    SmallCurve(const TunesModel& model, QObject* parent);

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

private:
    const TunesModel& m_model;
};

}  // namespace stillbay::ui
