// SPDX-License-Identifier: MIT
#pragma once

#include "ui/document/document.h"

#include <QWidget>

#include <cstddef>
#include <functional>
#include <vector>

class QPushButton;
class QToolButton;
class QVBoxLayout;

namespace stillbay::ui {

class ProblemLabel;

/// What a list of like things in the craft needs to be shown and changed.
struct RowListSpec {
    QString thing;  ///< "arm": for buttons and undo texts
    QString path;   ///< as in the file: "airframe.arms"
    std::function<std::size_t(const Setup&)> count;
    std::function<QWidget*(std::size_t)> makeRow;  ///< the fields of one row
    std::function<void(Setup&)> add;               ///< one more at the end
    std::function<void(Setup&, std::size_t)> remove;
    std::function<void(Setup&, std::size_t, std::size_t)> swap;  ///< two rows change places
    std::vector<QWidget*> extras = {};  ///< buttons below the rows, beside the one that adds
    std::function<int(const Setup&)> kind = [](const Setup&) {
        return 0;
    };  ///< rows look alike
};

/// Cards, one a row, with buttons to move and remove each, and below them one to add another and
/// whatever else sets rows; every change is one undo step. Alt+Up and Alt+Down move the card that
/// has the focus, and the focus goes with it. The cards are made anew when their number or kind
/// changes; the focus goes into the first field of a card that was added, and from one that was
/// removed into its neighbour's.
class RowList final : public QWidget {
    Q_OBJECT
public:
    RowList(Document& document, RowListSpec spec, QWidget* parent = nullptr);

    /// Puts the focus into the first field of the last card.
    void enterLast();

private:
    struct Card {
        QWidget* frame;
        QToolButton *up, *down;
        QWidget* fields;
    };
    enum class Way { Up, Down };

    void refresh();
    Card makeCard(std::size_t index);
    QToolButton* moveButton(std::size_t index, Way way, const QString& name, QWidget* frame);
    void move(std::size_t index, Way way);
    void focusAfterMove(std::size_t index, Way way, int place);
    void add();
    void remove(std::size_t index);
    void enter(std::size_t index);
    void focusNear(std::size_t index, int place);
    bool change(const QString& text, const std::function<void(Setup&)>& change);

    Document& m_document;
    RowListSpec m_spec;
    QPushButton* m_add;
    std::vector<Card> m_cards;
    int m_kind = 0;
    QVBoxLayout* m_cardLayout;
    ProblemLabel* m_refusal;
};

}  // namespace stillbay::ui
