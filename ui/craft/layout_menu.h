// SPDX-License-Identifier: MIT
#pragma once

#include "ui/document/document.h"

#include <QWidget>

#include <functional>
#include <vector>

namespace stillbay::ui {

/// One way to set all rows of a list at once.
struct RowLayout {
    QString title;  ///< in the menu
    QString undoText;
    std::function<void(Setup&)> apply;
};

/// The ways to set a list's rows.
struct RowLayouts {
    QString title;      ///< on the button
    QString meaning;    ///< on hover
    QString unchanged;  ///< what to say when a layout changes nothing
    std::vector<RowLayout> layouts;
};

/// A button with a menu of layouts, and below it why one was not taken; each is one undo step.
class LayoutMenu final : public QWidget {
    Q_OBJECT
public:
    LayoutMenu(Document& document, const RowLayouts& layouts, QWidget* parent = nullptr);
};

}  // namespace stillbay::ui
