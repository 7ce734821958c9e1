// SPDX-License-Identifier: MIT
#include "ui/document/safe_write.h"

#include <QFileInfo>
#include <QSaveFile>

#include <cerrno>
#include <fcntl.h>
#include <optional>
#include <system_error>
#include <unistd.h>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr int kMostLinks = 40;  // as the kernel's own limit

tl::unexpected<Error> refused(Phrase what)
{
    return fail(Errc::BadInput, std::move(what));
}

// The system's own words, where it has any.
Phrase reasonOf(const QFileDevice& file)
{
    return file.error() != QFileDevice::NoError ? verbatim(file.errorString().toStdString())
                                                : phrase("only a part could be written");
}

// The bytes are safe once the disk has them. What a full network disk, a quota or a failing disk
// refuses often comes to light here and nowhere before. None: flushed, or a file system that
// cannot do this at all.
std::optional<Phrase> flushToDisk(const QSaveFile& file)
{
    int done = 0;
    do
        done = ::fdatasync(file.handle());
    while (done != 0 && errno == EINTR);
    if (done == 0 || errno == EINVAL || errno == ENOSYS)
        return {};
    return verbatim(std::generic_category().message(errno));
}

// A link that leads back to itself never ends at a file or a free name.
bool linksInCircles(const QString& path)
{
    QFileInfo info(path);
    for (int k = 0; k < kMostLinks; ++k) {
        if (!info.isSymLink())
            return false;
        info.setFile(info.symLinkTarget());
    }
    return true;
}

// The new name must survive a power cut too; a file system that cannot do this is no failure.
void syncFolderOf(const QString& path)
{
    const QByteArray folder =
        QFile::encodeName(QFileInfo(QFileInfo(path).canonicalFilePath()).path());
    const int descriptor = ::open(folder.constData(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (descriptor < 0)
        return;
    ::fsync(descriptor);
    ::close(descriptor);
}

}  // namespace

Result<void> safeWrite(const QString& path, const QByteArray& bytes,
                       std::optional<QFileDevice::Permissions> permissions)
{
    const QFileInfo target(path);
    if (target.exists() && !target.isFile())
        return refused(phrase("it is not a regular file"));
    if (linksInCircles(path))
        return refused(phrase("the link points to itself"));

    QSaveFile file(path);  // without the fallback that writes in place
    if (!file.open(QIODevice::WriteOnly))
        return refused(reasonOf(file));
    if (permissions)
        file.setPermissions(*permissions);
    const bool whole =
        file.write(bytes) == bytes.size() && file.flush() && file.error() == QFileDevice::NoError;
    const std::optional<Phrase> fault = whole ? flushToDisk(file) : reasonOf(file);
    if (fault) {
        file.cancelWriting();
        file.commit();  // removes what was begun
        return refused(*fault);
    }
    if (!file.commit())
        return refused(reasonOf(file));
    syncFolderOf(path);
    return {};
}

}  // namespace stillbay::ui
