// SPDX-License-Identifier: MIT
#include "ui/widgets/thin_progress.h"

namespace stillbay::ui {

ThinProgress::ThinProgress(const QString& name, int height, QWidget* parent) : QProgressBar(parent)
{
    setAccessibleName(name);
    setTextVisible(false);
    setFixedHeight(height);
    QSizePolicy keepsPlace = sizePolicy();
    keepsPlace.setRetainSizeWhenHidden(true);
    setSizePolicy(keepsPlace);
    hide();
}

void ThinProgress::advance(int step, int steps)
{
    setRange(0, steps);
    setValue(step);
    show();
}

}  // namespace stillbay::ui
