// SPDX-License-Identifier: MIT
#pragma once

#include "core/search/map.h"
#include "ui/map/map_field.h"

#include <QWidget>

#include <array>

class QCheckBox;
class QComboBox;
class QHBoxLayout;
class QLabel;
class QToolButton;

namespace stillbay::ui {

class NumberBox;

/// What the map sets, how far, and what it shows.
class MapControls final : public QWidget {
    Q_OBJECT
public:
    explicit MapControls(QWidget* parent = nullptr);

    /// Another craft: the usual ranges around its design, and only variables that it leaves free.
    void offer(const Setup& setup);

    MapAxis across() const;
    MapAxis up() const;
    MapShows shows() const;
    bool keepsLevel() const;  ///< every design is hung level, which decides the elevation

signals:
    void axesChanged();
    void showsChanged();

private:
    struct Side {
        QComboBox* variable = nullptr;
        NumberBox* from = nullptr;
        NumberBox* to = nullptr;
    };

    struct SideTexts {
        QString title, variable, from, to;
    };

    QHBoxLayout* makePairs();
    void setVariables(Variable across, Variable up);
    QWidget* makeSide(Side& side, const QString& objectName, const SideTexts& text);
    void fillVariables();
    bool isOffered(Variable variable) const;
    void variableChosen(std::size_t which);
    void rangeTyped(std::size_t which);
    void showRange(Side& side);
    Variable variableOf(const Side& side) const;
    MapAxis axisOf(const Side& side) const;

    std::array<Side, 2> m_sides;  // across, up
    QComboBox* m_shows;
    QCheckBox* m_level;
    QLabel* m_holes;
    QToolButton* m_place = nullptr;
    Mounts m_mounts;
    std::array<VariableRange, kVariables.size()> m_ranges;  // by variable
    bool m_isFilling = false;
};

}  // namespace stillbay::ui
