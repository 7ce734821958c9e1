// SPDX-License-Identifier: MIT
#pragma once

#include <QStyledItemDelegate>

namespace stillbay::ui {

/// What a row of the list "Suggestions" tells its painter beside its text.
enum HelpRole {
    NumbersRole = Qt::UserRole,  ///< "1.71 → 0.86 px"
    GainRole,                    ///< "−50 %"
    ShareRole,                   ///< wobble left, 0 to 1 of what it is
    DangerRole,                  ///< "a tube goes slack"; empty: none
};

/// Draws one step: its words and gain, a bar of the wobble that is left, and what it would spoil.
class SuggestionDelegate final : public QStyledItemDelegate {
    Q_OBJECT
public:
    using QStyledItemDelegate::QStyledItemDelegate;

    void setStale(bool stale) { m_stale = stale; }  ///< faded: the craft has moved on
    bool isStale() const { return m_stale; }

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

private:
    bool m_stale = false;
};

}  // namespace stillbay::ui
