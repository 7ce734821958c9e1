// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "ui/document/document.h"

#include <QPointer>
#include <QPushButton>

namespace stillbay::ui {

class BalanceDialog;

/// Opens the calculation of an unbalance by tape.
class BalanceButton final : public QPushButton {
    Q_OBJECT
public:
    explicit BalanceButton(Document& document, QWidget* parent = nullptr);

    /// Takes the speed at hover; it holds until the craft changes.
    void setAssessment(const Assessment& assessment);

private:
    void setHoverSpeed(std::optional<double> speed_rpm);

    std::optional<double> m_hoverSpeed_rpm;
    QPointer<BalanceDialog> m_dialog;
};

/// Opens the calculation of an exposure by shutter angle and filter.
class ExposureButton final : public QPushButton {
    Q_OBJECT
public:
    explicit ExposureButton(Document& document, QWidget* parent = nullptr);
};

/// Opens the calculation of a propeller's coefficients from a thrust table.
class ThrustButton final : public QPushButton {
    Q_OBJECT
public:
    explicit ThrustButton(Document& document, QWidget* parent = nullptr);
};

}  // namespace stillbay::ui
