// SPDX-License-Identifier: MIT
#pragma once

#include "core/search/map.h"
#include "ui/charts/chart.h"
#include "ui/map/map_field.h"

#include <array>
#include <optional>
#include <vector>

class QwtPlotMarker;

namespace stillbay::ui {

class MapItem;
class MapLabels;
class ReasonItem;

/// A tune on the map, in the variables' units.
struct MapMark {
    double x = 0.0, y = 0.0;
    QString name;
    bool isElsewhere = false;  ///< it differs in more than what the map sets
};

/// Wobble over two variables: colours with level lines, hatched where a design is out of the
/// question; the present tune, the kept ones and the best place on it, with labels that keep apart.
/// Click or Enter asks for a place; pointing at one tells of it.
class MapChart final : public Chart {
    Q_OBJECT
public:
    explicit MapChart(QWidget* parent = nullptr);

    void setAxes(const MapAxis& x, const MapAxis& y);  ///< empties the map
    void setMap(const DesignMap& map, MapShows shows, const Limits& limits);
    void setMarks(const MapMark& present, const std::vector<MapMark>& kept);

    ChartTable table() const override;
    bool dragCursorTo(const QPointF& canvasPlace) override;
    void stepCursor(Step step) override;
    void hideCursor() override;

    /// Node under a place of the canvas; none outside the map.
    std::optional<std::size_t> nodeAt(const QPointF& canvasPlace) const;
    QPointF canvasPlaceOf(std::size_t i, std::size_t j) const;
    QString readoutOf(std::size_t node) const;
    const MapLabels& labels() const { return *m_labels; }
    const MapItem& item() const { return *m_item; }

signals:
    void tuneWanted(double x, double y);  ///< of a node, in the variables' units
    void pointedAt(double x, double y);   ///< another node than before, by mouse or keyboard
    void pointedAway();

protected:
    void restyle(const ChartTheme& theme) override;
    QString readout(const QPointF& place) const override;
    bool eventFilter(QObject* watched, QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    struct Node {
        std::size_t i = 0, j = 0;
    };

    Node nearest(double shownX, double shownY) const;
    void moveCursor(int right, int up);
    void showCursor();
    void take();
    void placeBest();
    void describe();
    void placeReasons();
    void placeLabels();
    void fitTitles();
    void point(std::optional<std::size_t> node);

    DesignMap m_map;
    MapShows m_shows = MapShows::BothPacks;
    Limits m_limits;
    MapItem* m_item;
    MapLabels* m_labels;
    std::vector<ReasonItem*> m_reasons;  // of this map
    QwtPlotMarker* m_present;
    QwtPlotMarker* m_best;
    QwtPlotMarker* m_cursor;
    std::vector<QwtPlotMarker*> m_kept;
    std::vector<MapMark> m_keptMarks;
    MapMark m_presentMark;
    std::optional<Node> m_at;              // where the cursor is
    std::optional<std::size_t> m_pointed;  // node that was told last
    bool m_isPressed = false;
};

}  // namespace stillbay::ui
