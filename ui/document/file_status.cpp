// SPDX-License-Identifier: MIT
#include "ui/document/file_status.h"

#include "ui/document/native_path.h"

#include <filesystem>
#include <sys/stat.h>
#include <system_error>

namespace stillbay::ui {

std::optional<FileStatus> statusOf(const QString& path)
{
    struct stat status {};
    if (::stat(nativePath(path).c_str(), &status) != 0)
        return std::nullopt;
    const qint64 modified_ms =
        qint64{status.st_mtim.tv_sec} * 1000 + status.st_mtim.tv_nsec / 1'000'000;
    return FileStatus{S_ISREG(status.st_mode), status.st_size,
                      QDateTime::fromMSecsSinceEpoch(modified_ms),
                      static_cast<mode_t>(status.st_mode & 07777)};
}

bool isFile(const QString& path)
{
    return statusOf(path).value_or(FileStatus{}).isFile;
}

bool isGone(const QString& path)
{
    std::error_code fault;
    const auto kind = std::filesystem::status(nativePath(path), fault).type();
    return kind == std::filesystem::file_type::not_found;
}

bool areOneFile(const QString& a, const QString& b)
{
    std::error_code fault;
    return a == b || std::filesystem::equivalent(nativePath(a), nativePath(b), fault);
}

}  // namespace stillbay::ui
