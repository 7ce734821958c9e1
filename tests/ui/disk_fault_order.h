// SPDX-License-Identifier: MIT
#pragma once

#include <QProcessEnvironment>
#include <QString>

namespace stillbay::ui {

/// Has a program that is started with this environment load faults/, for the files of a folder.
inline void loadDiskFault(QProcessEnvironment& environment, const QString& folder)
{
    environment.insert(QStringLiteral("LD_PRELOAD"), QStringLiteral(STILLBAY_DISK_FAULT));
    environment.insert(QStringLiteral("STILLBAY_FAULT_FOLDER"), folder);
    // A build with the address sanitizer wants to come first otherwise.
    environment.insert(QStringLiteral("ASAN_OPTIONS"), QStringLiteral("verify_asan_link_order=0"));
}

}  // namespace stillbay::ui
