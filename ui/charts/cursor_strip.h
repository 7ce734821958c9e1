// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/setup/setup.h"

#include <QWidget>

#include <vector>

namespace stillbay::ui {

/// The numbers at the throttle cursor, side by side: throttle and speed, wobble and its grade, and
/// each excitation with its frequency, its share of the wobble, and its beat against the frame rate
/// in the film.
class CursorStrip final : public QWidget {
    Q_OBJECT
public:
    explicit CursorStrip(QWidget* parent = nullptr);

    void setAssessment(const Setup& setup, const Assessment& assessment);
    void setThrottle(double throttle);  ///< 0 to 1

    QString text() const;  ///< all of it, as read aloud
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return {0, sizeHint().height()}; }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    struct Cell {
        QString value, meaning;
    };

    void fill();

    Setup m_setup;
    Assessment m_assessment;
    double m_throttle = 0.5;
    std::vector<Cell> m_cells;
};

}  // namespace stillbay::ui
