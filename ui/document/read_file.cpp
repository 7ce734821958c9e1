// SPDX-License-Identifier: MIT
#include "ui/document/read_file.h"

#include "ui/document/native_path.h"

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <memory>
#include <string>
#include <sys/stat.h>
#include <system_error>

namespace stillbay::ui {
namespace {

tl::unexpected<Error> cannotBeRead(int number)
{
    return fail(Errc::BadInput, verbatim(std::generic_category().message(number)));
}

}  // namespace

Result<QByteArray> readFile(const QString& path, qint64 most_bytes)
{
    const std::string native = nativePath(path);
    struct stat status {};
    if (::stat(native.c_str(), &status) == 0 && !S_ISREG(status.st_mode))
        return fail(Errc::BadInput, phrase("it is not a regular file"));
    const std::unique_ptr<std::FILE, int (*)(std::FILE*)> file(std::fopen(native.c_str(), "rbe"),
                                                               std::fclose);
    if (!file)
        return cannotBeRead(errno);
    QByteArray bytes(std::min<qint64>(status.st_size, most_bytes) + 1, Qt::Uninitialized);
    qsizetype size = 0;  // the file may have grown meanwhile
    while (size <= most_bytes) {
        const std::size_t part = std::fread(
            bytes.data() + size, 1, static_cast<std::size_t>(bytes.size() - size), file.get());
        size += static_cast<qsizetype>(part);
        if (size < bytes.size())
            break;
        bytes.resize(std::min<qint64>(2 * size + 1, most_bytes + 1));
    }
    if (std::ferror(file.get()) != 0)
        return cannotBeRead(errno);
    if (size > most_bytes)
        return fail(Errc::BadInput,
                    phrase("the file is larger than %1 MB, far more than such a file needs",
                           std::to_string(most_bytes >> 20)));
    bytes.truncate(size);
    return bytes;
}

}  // namespace stillbay::ui
