// SPDX-License-Identifier: MIT
#pragma once

#include "ui/document/document.h"

#include <QWidget>

#include <cstddef>
#include <functional>
#include <vector>

class QLabel;
class QVBoxLayout;

namespace stillbay::ui {

/// What a list of like things in the craft needs to be shown and changed.
struct RowListSpec {
    QString thing;  ///< "arm": for buttons and undo texts
    std::function<std::size_t(const Setup&)> count;
    std::function<QWidget*(std::size_t)> makeRow;  ///< the fields of one row
    std::function<void(Setup&)> add;               ///< one more at the end
    std::function<void(Setup&, std::size_t)> remove;
    std::function<int(const Setup&)> kind = [](const Setup&) {
        return 0;
    };  ///< rows look alike
};

/// Cards, one a row, with a button to remove each and one to add another; every change is one
/// undo step. The cards are made anew when their number or kind changes.
class RowList final : public QWidget {
    Q_OBJECT
public:
    RowList(Document& document, RowListSpec spec, QWidget* parent = nullptr);

private:
    void refresh();
    QWidget* makeCard(std::size_t index);
    void change(const QString& text, const std::function<void(Setup&)>& change);

    Document& m_document;
    RowListSpec m_spec;
    std::vector<QWidget*> m_cards;
    int m_kind = 0;
    QVBoxLayout* m_cardLayout;
    QLabel* m_refusal;
};

}  // namespace stillbay::ui
