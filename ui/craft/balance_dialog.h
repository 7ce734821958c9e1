// SPDX-License-Identifier: MIT
#pragma once

#include "core/drive/balance.h"
#include "ui/craft/helper_dialog.h"

#include <optional>

class QComboBox;

namespace stillbay::ui {

/// What a strip of tape on a propeller does to the drive's unbalance.
class BalanceDialog final : public HelperDialog {
    Q_OBJECT
public:
    explicit BalanceDialog(Document& document, QWidget* parent = nullptr);

    /// The grade is told for this speed [rpm]; none: not told.
    void setHoverSpeed(std::optional<double> speed_rpm);

private:
    void recompute();
    Result<void> apply() override;
    TapeSide side() const;
    double unbalance_g_mm() const;
    QString gradeLine(double now_g_mm, double then_g_mm) const;

    NumberBox* m_mass;
    NumberBox* m_radius;
    QComboBox* m_side;
    std::optional<double> m_hoverSpeed_rpm;
};

}  // namespace stillbay::ui
