// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/cut_length.h"
#include "core/setup/setup.h"

#include <QWidget>

namespace stillbay::ui {

/// What the drawing shows of one tube; lengths in millimetres.
struct TubeShape {
    double outer_mm = 8.0;
    double bore_mm = 5.0;
    double free_mm = 20.0;    ///< relaxed, between the clamps
    double fitted_mm = 23.0;  ///< as drawn, between the clamps
    double grip_mm = 6.0;     ///< held at each end
    Ends ends = Ends::Clamped;

    double cut_mm() const { return cutLength_mm(free_mm, grip_mm); }
    bool operator==(const TubeShape&) const = default;
};

/// One tube as cut and as fitted, side by side, to one scale.
class TubeDrawing final : public QWidget {
    Q_OBJECT
public:
    explicit TubeDrawing(QWidget* parent = nullptr);

    void setShape(const TubeShape& shape);

    QSize sizeHint() const override { return {300, 96}; }
    QSize minimumSizeHint() const override { return {220, 80}; }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    struct Ink;

    void drawAsCut(QPainter& painter, const Ink& ink, const QRectF& area, double scale) const;
    void drawAsFitted(QPainter& painter, const Ink& ink, const QRectF& area, double scale) const;

    TubeShape m_shape;
};

}  // namespace stillbay::ui
