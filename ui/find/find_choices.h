// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/search/best.h"

#include <QString>
#include <QWidget>

class QRadioButton;

namespace stillbay::ui {

class Section;
class StockPanel;
class VariableRanges;

/// What the builder lets a search choose from: what may change, and which tube; both fold.
class FindChoices final : public QWidget {
    Q_OBJECT
public:
    explicit FindChoices(QWidget* parent = nullptr);

    void openCraft(const Setup& setup);  ///< another craft: its usual ranges
    void follow(const Setup& setup);     ///< the same craft, changed
    void readTubeStock();                ///< anew

    /// @return none: something was refused before, and is to be read first.
    std::optional<SearchSpace> space();
    /// Why a search of that space makes no sense, in the window's language; empty: it does.
    QString faultOf(const SearchSpace& space) const;

signals:
    void changed();
    void refused(const QString& why);

private:
    QWidget* makeChange();
    QWidget* makeTube();
    void summarize();

    Section* m_change;
    Section* m_tube;
    VariableRanges* m_variables;
    QRadioButton* m_usePresent;
    QRadioButton* m_useStock;
    StockPanel* m_stock;
    Setup m_craft;
};

}  // namespace stillbay::ui
