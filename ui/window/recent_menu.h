// SPDX-License-Identifier: MIT
#pragma once

#include <QMenu>

namespace stillbay::ui {

class RecentFiles;

/// The files opened last, as a menu; those that are gone are greyed.
class RecentMenu final : public QMenu {
    Q_OBJECT
public:
    explicit RecentMenu(RecentFiles& recent, QWidget* parent = nullptr);

    void refresh();  ///< the list on disk may have grown, files may be gone

signals:
    void chosen(const QString& path);

private:
    RecentFiles& m_recent;
};

}  // namespace stillbay::ui
