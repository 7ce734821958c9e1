// SPDX-License-Identifier: MIT
#pragma once

#include <QPointF>
#include <QRectF>
#include <QSizeF>

#include <map>
#include <optional>
#include <vector>

namespace stillbay::ui {

/// Finds room for the labels of marks, so that none covers another or a mark. A label keeps its
/// side of the mark for as long as it is free there, so that it does not flicker while the marks
/// move.
class MarkLabels {
public:
    /// The next picture; sides are remembered.
    void begin(const QRectF& room, std::vector<QRectF> marks = {});
    void forgetSides() { m_sides.clear(); }

    struct Spot {
        QRectF box;
        bool apart = false;  ///< so far from its mark that a line should lead there
    };
    /// @param key which label, the same in every picture. @param gap from the mark's middle.
    Spot place(int key, const QPointF& mark, double gap, const QSizeF& size);
    /// The same, but nothing where there is no room.
    std::optional<Spot> placeWhereFree(int key, const QPointF& mark, double gap,
                                       const QSizeF& size);

private:
    int freeSide(int key, const QPointF& mark, double gap, const QSizeF& size) const;
    Spot take(int key, int side, const QPointF& mark, double gap, const QSizeF& size);
    bool isFree(const QRectF& box) const;

    QRectF m_room;
    std::vector<QRectF> m_taken;
    std::map<int, int> m_sides;
};

}  // namespace stillbay::ui
