// SPDX-License-Identifier: MIT
#pragma once

#include "core/search/recommend.h"

#include <QAbstractTableModel>
#include <QStringList>

#include <array>

namespace stillbay::ui {

/// What a search found as a table, the most robust first, the present tune for comparison. The
/// numbers of a column have equal decimals.
class CandidatesModel final : public QAbstractTableModel {
    Q_OBJECT
public:
    enum Column {
        Mark,
        Tube,
        Length,
        Stretch,
        Elevation,
        Place,
        FullPack,
        EmptyPack,
        Clean,
        Robust,
        ColumnCount
    };
    /// Of Mark, FullPack and Robust: what stands in a second line where there is no room for the
    /// other columns.
    static constexpr int kSecondLine = Qt::UserRole + 1;

    using QAbstractTableModel::QAbstractTableModel;

    void setAnswer(const Recommendation& answer);
    void clear();
    /// The craft's tune now: its row says so.
    void setPresent(const Design& present);
    void setStale(bool stale);  ///< of another craft: fainter

    const Candidate& candidate(int row) const { return m_rows.at(static_cast<std::size_t>(row)); }
    /// Whether a design is one of the rows.
    bool has(const Design& design) const;

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    void writeNumbers();
    QString marks(std::size_t row) const;
    QString text(int row, int column) const;
    QString secondLine(int row, int column) const;
    QString toolTip(int row, int column) const;
    void repaint();

    std::vector<Candidate> m_rows;
    std::array<QStringList, ColumnCount> m_numbers;  // of the columns that are numbers, with units
    std::size_t m_mostRobust = 0;
    bool m_isSearch = false;  // not of the present tune alone
    Design m_best, m_before, m_present;
    bool m_isStale = false;
};

}  // namespace stillbay::ui
