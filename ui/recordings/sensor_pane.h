// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"

#include <QWidget>

#include <array>
#include <vector>

class QCheckBox;
class QComboBox;
class QLabel;
class QLineEdit;

namespace stillbay::ui {

class NumberBox;

/// What a recording's sensor was on the craft: of a pluck where it sat, what it weighs and where
/// its axes point; of a sweep its place and axes; of a tap the arm.
class SensorPane final : public QWidget {
    Q_OBJECT
public:
    explicit SensorPane(QWidget* parent = nullptr);

    void setSensor(const NamedRecording& recording, const std::vector<Arm>& arms = {});

signals:
    /// As the builder has it now; only what is about the sensor counts.
    void changed(const stillbay::NamedRecording& sensor);

private:
    using Boxes = std::array<NumberBox*, 3>;

    QLabel* labelOf(const QString& text, QWidget& buddy);
    void dress(const Boxes& boxes, const std::array<QString, 3>& names, double least, double most);
    void showRows(RecordingKind kind);
    void tell();

    QCheckBox* m_isKnown;
    Boxes m_place;
    NumberBox* m_mass;
    QLineEdit* m_axes;
    QComboBox* m_arm;
    std::vector<QWidget*> m_ofPlace, m_ofMass, m_ofAxes, m_ofArm;  // shown together
};

}  // namespace stillbay::ui
