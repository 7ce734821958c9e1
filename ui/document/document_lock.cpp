// SPDX-License-Identifier: MIT
#include "ui/document/document_lock.h"

#include "ui/document/native_path.h"
#include "ui/document/state_folder.h"

#include <QCryptographicHash>
#include <QDir>

#include <filesystem>
#include <string>
#include <system_error>

namespace stillbay::ui {

bool DocumentLock::take(const QString& path)
{
    std::error_code gone;
    const std::string canonical = std::filesystem::canonical(nativePath(path), gone).string();
    if (m_lock && canonical == m_canonical)
        return m_lock->isTaken();
    m_lock.reset();
    m_canonical = canonical;
    if (canonical.empty())
        return true;
    const QByteArray name =
        QCryptographicHash::hash(QByteArray::fromStdString(canonical), QCryptographicHash::Sha256)
            .toHex();
    m_lock = std::make_unique<FileLock>(
        nativePath(QDir(stateFolder(QStringLiteral("open"))).filePath(QString::fromLatin1(name))));
    return m_lock->take() != FileLock::Taken::ByAnother;
}

}  // namespace stillbay::ui
