// SPDX-License-Identifier: MIT
#pragma once

#include <QWidget>

class QFormLayout;

namespace stillbay::ui {

class RecentFiles;

/// The few files opened last, for the welcome page: a button with the name, beside it the folder.
/// Empty and hidden until there is one.
class RecentList final : public QWidget {
    Q_OBJECT
public:
    explicit RecentList(RecentFiles& recent, QWidget* parent = nullptr);

signals:
    void chosen(const QString& path);

private:
    void refresh();
    void addRow(const QString& path);

    RecentFiles& m_recent;
    QFormLayout* m_rows;
};

}  // namespace stillbay::ui
