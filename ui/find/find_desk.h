// SPDX-License-Identifier: MIT
#pragma once

#include "ui/document/document.h"

#include <QList>
#include <QObject>

class QAction;
class QWidget;

namespace stillbay::ui {

class FindWindow;

/// The window's command for finding a tune: opens the search beside it.
class FindDesk final : public QObject {
    Q_OBJECT
public:
    /// @param shared  commands of the window that are at hand in the search too
    FindDesk(Document& document, QList<QAction*> shared, QWidget& window);

    QAction* action() const { return m_action; }
    void show();
    void craftOpened();

private:
    Document& m_document;
    QList<QAction*> m_shared;
    QWidget& m_window;
    QAction* m_action;
    FindWindow* m_search = nullptr;  // once it was wanted
};

}  // namespace stillbay::ui
