// SPDX-License-Identifier: MIT
#pragma once

#include "core/presets/apply.h"
#include "core/presets/plate.h"
#include "ui/craft/helper_dialog.h"

class QComboBox;
class QLineEdit;

namespace stillbay::ui {

class NumberBox;

/// Works out what a plate weighs from its outline, thickness and material, and adds it as a part.
class PlateDialog final : public HelperDialog {
    Q_OBJECT
public:
    PlateDialog(Document& document, PartList list, QWidget* parent = nullptr);

private:
    NumberBox* addSide(const QString& label, const QString& meaning, double usual_mm, double step);
    Result<Part> plate() const;
    const ArmPreset& material() const;
    void recompute();
    Result<void> apply() override;

    PartList m_list;
    QLineEdit* m_name;
    QComboBox* m_material;
    NumberBox* m_length;
    NumberBox* m_width;
    NumberBox* m_thickness;
    NumberBox* m_cutOut;
};

}  // namespace stillbay::ui
