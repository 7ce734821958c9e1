// SPDX-License-Identifier: MIT
#pragma once

#include "core/calibrate/speed_at_throttle.h"
#include "core/recording/rotor_speed.h"

#include <QWidget>

#include <cstddef>
#include <vector>

class QGridLayout;
class QLabel;

namespace stillbay::ui {

class NumberBox;

/// The steady speeds found in a sound, and the throttle that was held at each, to be typed.
class SpeedPane final : public QWidget {
    Q_OBJECT
public:
    explicit SpeedPane(QWidget* parent = nullptr);

    /// Hidden where there are none. What was typed stays while they are the same.
    void setStretches(const std::vector<SteadyStretch>& stretches);
    /// Those whose throttle is known.
    std::vector<SteadySpeed> readings() const;

signals:
    void changed();

private:
    struct Row {
        QLabel* label;
        NumberBox* throttle;
    };
    void addRow();

    QGridLayout* m_grid;
    std::vector<Row> m_rows;
    std::vector<SteadyStretch> m_stretches;
};

}  // namespace stillbay::ui
