// SPDX-License-Identifier: MIT
#pragma once

#include <QString>
#include <QWidget>

#include <array>
#include <vector>

class QGridLayout;
class QLabel;

namespace stillbay::ui {

/// A few figures by rows, aligned: quick to change, and of a size that only grows, so that another
/// number lays nothing out anew.
class FigureTable final : public QWidget {
    Q_OBJECT
public:
    static constexpr std::size_t kColumns = 3;
    using Row = std::array<QString, kColumns>;  ///< name, figure as fitted, figure that counts

    explicit FigureTable(QWidget* parent = nullptr);

    void display(const std::vector<Row>& rows);
    QString text() const;  ///< all that is shown, a line a row

private:
    QGridLayout* m_grid;
    QSize m_room;  // that it ever needed
    std::vector<std::array<QLabel*, kColumns>> m_rows;
};

}  // namespace stillbay::ui
