// SPDX-License-Identifier: MIT
#pragma once

#include <QObject>
#include <QStringList>

namespace stillbay::ui {

/// The files opened or saved last, newest first. Kept on disk and read anew each time, because
/// other windows add to it. A list that cannot be read counts as empty; one that cannot be written
/// is no reason to disturb anybody.
class RecentFiles final : public QObject {
    Q_OBJECT
public:
    static constexpr qsizetype kMost = 12;

    explicit RecentFiles(QObject* parent = nullptr);

    QStringList paths() const;  ///< absolute; some may be gone by now
    void add(const QString& path);
    void clear();

signals:
    void changed();

private:
    void write(const QStringList& paths);

    QString m_file;
};

}  // namespace stillbay::ui
