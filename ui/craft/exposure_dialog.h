// SPDX-License-Identifier: MIT
#pragma once

#include "ui/craft/helper_dialog.h"

namespace stillbay::ui {

/// The camera's exposure from a shutter angle and a neutral-density filter.
class ExposureDialog final : public HelperDialog {
    Q_OBJECT
public:
    explicit ExposureDialog(Document& document, QWidget* parent = nullptr);

private:
    void recompute();
    Result<void> apply() override;
    double exposure_ms() const;
    QString filterLine() const;
    QString adviceLine(double now_ms) const;

    NumberBox* m_shutter;
    NumberBox* m_exposure;
    NumberBox* m_stops;
};

}  // namespace stillbay::ui
