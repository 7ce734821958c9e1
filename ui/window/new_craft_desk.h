// SPDX-License-Identifier: MIT
#pragma once

#include <QObject>

class QAction;
class QWidget;

namespace stillbay::ui {

class FileActions;

/// The window's command for a new craft: asks about unsaved work, shows the guide, and opens what
/// comes out of it.
class NewCraftDesk final : public QObject {
    Q_OBJECT
public:
    NewCraftDesk(FileActions& files, QWidget& window);

    QAction* action() const { return m_action; }

private:
    void begin();

    FileActions& m_files;
    QWidget& m_window;
    QAction* m_action;
};

}  // namespace stillbay::ui
