// SPDX-License-Identifier: MIT
#pragma once

#include <QVBoxLayout>
#include <QWidget>

namespace stillbay::ui {

/// Room for a widget that two pages share: the one that is looked at has it.
class Holder final : public QWidget {
    Q_OBJECT
public:
    explicit Holder(QWidget* parent = nullptr) : QWidget(parent)
    {
        auto* const layout = new QVBoxLayout(this);
        layout->setContentsMargins(0, 0, 0, 0);
    }
};

}  // namespace stillbay::ui
