// SPDX-License-Identifier: MIT
#pragma once

#include "core/calibrate/hang.h"

#include <QWidget>

#include <array>
#include <vector>

namespace stillbay::ui {

class NumberBox;

/// The hang test: masses hung on a piece of the tube, and the marks on it without and with them.
class HangPane final : public QWidget {
    Q_OBJECT
public:
    explicit HangPane(QWidget* parent = nullptr);

    std::vector<HungMass> masses() const;  ///< the rows that are filled
    HangReadings readings() const;

signals:
    void changed();

private:
    struct Row {
        NumberBox* mass;
        NumberBox* free;
        NumberBox* loaded;
    };
    std::array<Row, kMostHungMasses> m_rows;
    NumberBox* m_ruler;
    NumberBox* m_scale;
};

}  // namespace stillbay::ui
