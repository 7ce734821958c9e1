// SPDX-License-Identifier: MIT
#pragma once

#include "ui/document/file_lock.h"

#include <QString>

#include <memory>
#include <string>

namespace stillbay::ui {

/// Says to other windows, also of other processes, that a file is open here. The mark lies in the
/// state folder, so it litters nobody's folder and works for files that may not be written; that
/// of a program that was killed counts as free.
class DocumentLock final {
public:
    /// Marks this file instead of the one before. False: another window has it open.
    bool take(const QString& path);

private:
    std::unique_ptr<FileLock> m_lock;
    std::string m_canonical;  // as bytes
};

}  // namespace stillbay::ui
