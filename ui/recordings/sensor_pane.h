// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"

#include <QWidget>

#include <array>

class QCheckBox;
class QLineEdit;

namespace stillbay::ui {

class NumberBox;

/// Where the sensor of a pluck sat on the bay, what it weighs, and where its axes point.
class SensorPane final : public QWidget {
    Q_OBJECT
public:
    explicit SensorPane(QWidget* parent = nullptr);

    void setSensor(const NamedRecording& recording);

signals:
    /// As the builder has it now; only what is about the sensor counts.
    void changed(const stillbay::NamedRecording& sensor);

private:
    void tell();

    QCheckBox* m_isKnown;
    std::array<NumberBox*, 3> m_place;
    NumberBox* m_mass;
    QLineEdit* m_axes;
};

}  // namespace stillbay::ui
