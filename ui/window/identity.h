// SPDX-License-Identifier: MIT
#pragma once

#include <QIcon>
#include <QString>

namespace stillbay::ui {

/// The program's name among the desktop's files: app/desktop/ has entry, icon and metainfo of it.
inline const QString kDesktopId = QStringLiteral("org.stillbay.Stillbay");

/// The program's own icon, for windows; needs no installed theme.
QIcon programIcon();

}  // namespace stillbay::ui
