// SPDX-License-Identifier: MIT
#pragma once

#include "ui/bay/craft_shape.h"
#include "ui/bay/elastic_marks.h"
#include "ui/bay/lit_pieces.h"
#include "ui/bay/mark_labels.h"
#include "ui/bay/view_point.h"

#include <QPoint>
#include <QWidget>

#include <optional>
#include <vector>

namespace stillbay::ui {

/// Draws the craft in space. A drag or the arrow keys turn it, the wheel or + and − zoom, 0 goes
/// back to the whole craft.
class BayCanvas final : public QWidget {
    Q_OBJECT
public:
    explicit BayCanvas(QWidget* parent = nullptr);

    void setCraft(const Setup& setup);
    void setBay(const BayPlace& bay);
    void setElastic(const std::optional<ElasticMarks>& marks);  ///< none: not marked
    void setView(const ViewPoint& view);
    const ViewPoint& view() const { return m_view; }
    void setZoom(double zoom);  ///< 1: the whole craft fits
    double zoom() const { return m_zoom; }
    void setLit(const std::vector<LitPieces>& lit);  ///< what stands out
    const std::vector<LitPieces>& lit() const { return m_lit; }
    void setStale(bool stale);

    const std::optional<ElasticMarks>& elastic() const { return m_elastic; }
    const std::vector<QRectF>& labelBoxes() const { return m_labelBoxes; }  ///< of the last picture

    /// Where a point of the craft is drawn [logical pixels].
    QPointF placeOf(const Vector3d& p_mm) const;

    QSize minimumSizeHint() const override { return {320, 240}; }

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    struct Frame;
    struct Label {
        int key = 0;
        QPointF mark;
        double gap = 0.0;  // from the mark's middle [logical pixels]
        QString text;
    };

    Frame frame() const;
    void turn(double azimuth_deg, double elevation_deg);
    void drawFaces(QPainter& painter, const Frame& frame, const CraftShape& shape) const;
    void drawStrokes(QPainter& painter, const Frame& frame, const CraftShape& shape) const;
    void drawMarks(QPainter& painter, const Frame& frame, const CraftShape& shape);
    void drawElasticAxes(QPainter& painter, const Frame& frame) const;
    void drawElasticCentre(QPainter& painter, const Frame& frame) const;
    std::vector<Label> namesOf(const Frame& frame, const CraftShape& shape) const;
    void drawLabels(QPainter& painter, const std::vector<Label>& labels,
                    const std::vector<QRectF>& marks);
    void drawAxes(QPainter& painter, const Frame& frame) const;

    Setup m_setup;
    BayPlace m_bay;
    std::optional<ElasticMarks> m_elastic;
    std::vector<LitPieces> m_lit;
    MarkLabels m_labels;
    std::vector<QRectF> m_labelBoxes;
    ViewPoint m_view;
    double m_zoom = 1.0;
    Vector3d m_middle_mm = Vector3d::Zero();  // of the craft
    double m_reach_mm = 300.0;                // from there to its farthest point
    QPoint m_dragged;
    bool m_stale = false;
};

}  // namespace stillbay::ui
