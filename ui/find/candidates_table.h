// SPDX-License-Identifier: MIT
#pragma once

#include <QTableView>

namespace stillbay::ui {

class CandidatesModel;

/// The tunes found, one of them chosen: a line each with all columns, or where there is no room for
/// them two lines with what matters most. It is as high as its rows.
class CandidatesTable final : public QTableView {
    Q_OBJECT
public:
    explicit CandidatesTable(CandidatesModel& model, QWidget* parent = nullptr);

    int chosenRow() const;  ///< −1: none
    bool isNarrow() const { return m_isNarrow; }

signals:
    void chosenChanged();
    void taken();  ///< by Enter or a double click

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void fit();
    int widthOf(int column) const;

    bool m_isNarrow = false;
};

}  // namespace stillbay::ui
