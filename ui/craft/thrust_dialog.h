// SPDX-License-Identifier: MIT
#pragma once

#include "core/drive/thrust_fit.h"
#include "ui/craft/helper_dialog.h"

#include <optional>

class QCheckBox;

namespace stillbay::ui {

class ColumnTable;
class ElidedLabel;
class FitChart;

/// The propeller's coefficients, and KV, from a table that was noted on a thrust stand.
class ThrustDialog final : public HelperDialog {
    Q_OBJECT
public:
    explicit ThrustDialog(Document& document, QWidget* parent = nullptr);

    void openTable(const QString& path);

private:
    void askForTable();
    QWidget* makeCharts();
    ThrustStand stand() const;
    double spreadOf(const Fitted& fitted) const;
    void recompute();
    void showFit(const ThrustReadings& readings);
    void showNothing();
    QStringList outcomeLines() const;
    Result<void> apply() override;

    NumberBox* m_density;
    NumberBox* m_accuracy;
    ElidedLabel* m_file;
    ColumnTable* m_columns;
    FitChart* m_thrust;
    FitChart* m_power;
    QCheckBox* m_takesKv;
    QString m_fileName;
    std::optional<TextTable> m_table;
    std::optional<ThrustFit> m_fit;
};

}  // namespace stillbay::ui
