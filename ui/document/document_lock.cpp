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
        return m_lock->isLocked();
    m_lock.reset();
    m_canonical = canonical;
    if (canonical.empty())
        return true;
    const QByteArray name =
        QCryptographicHash::hash(QByteArray::fromStdString(canonical), QCryptographicHash::Sha256)
            .toHex();
    m_lock = std::make_unique<QLockFile>(
        QDir(stateFolder(QStringLiteral("open"))).filePath(QString::fromLatin1(name)));
    m_lock->setStaleLockTime(0);
    return m_lock->tryLock(0) || m_lock->error() != QLockFile::LockFailedError;
}

}  // namespace stillbay::ui
