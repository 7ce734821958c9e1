// SPDX-License-Identifier: MIT
#include "ui/widgets/two_sides.h"

#include <QSplitter>
#include <QVBoxLayout>

namespace stillbay::ui {

void layOutTwoSides(QWidget& view, QWidget* left, QWidget* right, const QString& name)
{
    auto* const splitter = new QSplitter(Qt::Horizontal);
    splitter->addWidget(left);
    splitter->addWidget(right);
    splitter->setChildrenCollapsible(false);
    splitter->setStretchFactor(0, 1);
    splitter->setStretchFactor(1, 0);
    splitter->setSizes({960, 310});
    splitter->setObjectName(name);
    auto* const layout = new QVBoxLayout(&view);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(splitter);
}

}  // namespace stillbay::ui
