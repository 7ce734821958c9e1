// SPDX-License-Identifier: MIT
#pragma once

#include "ui/bay/craft_shape.h"
#include "ui/bay/depth_picture.h"
#include "ui/bay/elastic_marks.h"
#include "ui/bay/lit_pieces.h"
#include "ui/bay/view_point.h"
#include "ui/widgets/mark_labels.h"

#include <QPoint>
#include <QWidget>

#include <optional>
#include <vector>

namespace stillbay::ui {

/// Draws the craft in space, as large as it fits. A drag or the arrow keys turn it, with Shift or
/// the middle button a drag moves it, the wheel or + and − zoom, 0 goes back to the whole craft.
class BayCanvas final : public QWidget {
    Q_OBJECT
public:
    explicit BayCanvas(QWidget* parent = nullptr);

    void setCraft(const Setup& setup);
    void setBay(const BayPlace& bay);    ///< at this instant
    void setStill(const BayPlace& bay);  ///< what it swings about; the scale is such that this fits
    void setGhost(bool shows);           ///< dashed outlines of the bay where it is drawn
    bool hasGhost() const { return m_ghost; }
    void setMassKnown(bool known);  ///< else the bay's centre of mass is not marked
    void setElastic(const std::optional<ElasticMarks>& marks);  ///< none: not marked
    void setView(const ViewPoint& view);
    const ViewPoint& view() const { return m_view; }
    enum class Subject { Craft, Bay };
    void setSubject(Subject subject);  ///< what fills the drawing when the zoom is 1
    Subject subject() const { return m_subject; }
    void setZoom(double zoom);  ///< about the middle
    double zoom() const { return m_zoom; }
    void setLit(const std::vector<LitPieces>& lit);  ///< what stands out
    const std::vector<LitPieces>& lit() const { return m_lit; }
    void setStale(bool stale);

    const std::optional<ElasticMarks>& elastic() const { return m_elastic; }
    const std::vector<QRectF>& labelBoxes() const { return m_labelBoxes; }  ///< of the last picture

    /// Where a point of the craft is drawn [logical pixels].
    QPointF placeOf(const Vector3d& p_mm) const { return frame().place(p_mm); }
    QRectF room() const;  ///< what fits, fits in here [logical pixels]

    QSize minimumSizeHint() const override { return {200, 150}; }

signals:
    void subjectChanged();

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    struct Label {
        int key = 0;
        QPointF mark;
        double gap = 0.0;  // from the mark's middle [logical pixels]
        QString text;
    };

    ViewFrame frame() const;
    void changed();
    void findOutline();
    void turn(double azimuth_deg, double elevation_deg);
    void zoomAt(double zoom, const QPointF& fixed);
    void drawMarks(QPainter& painter, const ViewFrame& frame, const CraftShape& shape);
    std::vector<Label> namesOf(const ViewFrame& frame, const CraftShape& shape) const;
    void drawLabels(QPainter& painter, const std::vector<Label>& labels,
                    const std::vector<QRectF>& marks);
    QRectF axesBox() const;
    void drawAxes(QPainter& painter, const ViewFrame& frame) const;

    Setup m_setup;
    BayPlace m_bay, m_still;
    DepthPicture m_picture;
    bool m_ghost = false, m_massKnown = false;
    std::optional<ElasticMarks> m_elastic;
    std::vector<LitPieces> m_lit;
    MarkLabels m_labels;
    std::vector<QRectF> m_labelBoxes;
    ViewPoint m_view;
    Subject m_subject = Subject::Craft;
    double m_zoom = 1.0;
    QPointF m_aside_mm;                  // how far the drawing was moved: right, down
    std::vector<Vector3d> m_outline_mm;  // of the subject: what must fit
    QPoint m_dragged;
    bool m_stale = false;
};

}  // namespace stillbay::ui
