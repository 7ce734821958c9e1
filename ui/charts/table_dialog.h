// SPDX-License-Identifier: MIT
#pragma once

#include "ui/charts/chart_table.h"

#include <QDialog>

namespace stillbay::ui {

/// A chart's numbers, for reading one by one or aloud; as they were when it was opened.
class TableDialog final : public QDialog {
    Q_OBJECT
public:
    TableDialog(const ChartTable& table, QWidget* parent);
};

}  // namespace stillbay::ui
