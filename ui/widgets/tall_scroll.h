// SPDX-License-Identifier: MIT
#pragma once

#include <QScrollArea>

namespace stillbay::ui {

/// Scrolls what is taller than its room, up and down only: it is never narrower than what it
/// holds. Tab goes to what is inside, and brings it into sight.
class TallScroll final : public QScrollArea {
    Q_OBJECT
public:
    explicit TallScroll(QWidget* content, QWidget* parent = nullptr);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
};

}  // namespace stillbay::ui
