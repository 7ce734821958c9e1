// SPDX-License-Identifier: MIT
#pragma once

#include <QObject>
#include <QString>
#include <QStringList>

class QMimeData;
class QWidget;

namespace stillbay::ui {

inline const QString kCraftSuffix = QStringLiteral(".stillbay");

/// Lets one craft file be dropped anywhere on a window, or recordings once a craft is open, also on
/// fields that take dropped text. Any other file gets the cursor that says no; text that is dragged
/// is left to the fields.
class FileDrop final : public QObject {
    Q_OBJECT
public:
    explicit FileDrop(QWidget& window);

    void takeRecordings() { m_takesRecordings = true; }
    bool eventFilter(QObject* watched, QEvent* event) override;

signals:
    void dropped(const QString& path);
    void recordingsDropped(const QStringList& paths);

private:
    QStringList recordingsIn(const QMimeData& data) const;

    bool m_takesRecordings = false;
    QWidget& m_window;
};

}  // namespace stillbay::ui
