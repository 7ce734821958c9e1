// SPDX-License-Identifier: MIT
#pragma once

#include <QWidget>

namespace stillbay::ui {

/// Filled by one widget. Words that change inside lay out what is inside; those around hear of it
/// only where the room that they need became another, so that a number does not repaint the whole
/// window.
class Pane final : public QWidget {
    Q_OBJECT
public:
    explicit Pane(QWidget* content, QWidget* parent = nullptr);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;
    bool hasHeightForWidth() const override;
    int heightForWidth(int width) const override;

protected:
    bool event(QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    QSize room() const;  // the least that the content needs at this width

    QWidget* m_content;
    QSize m_room;
};

}  // namespace stillbay::ui
