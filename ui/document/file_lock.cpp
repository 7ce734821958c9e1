// SPDX-License-Identifier: MIT
#include "ui/document/file_lock.h"

#include <cerrno>
#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>
#include <utility>

namespace stillbay::ui {

FileLock::Taken FileLock::take()
{
    constexpr int kMostTries = 100;
    for (int k = 0; k < kMostTries && !isTaken(); ++k) {
        const int descriptor =
            ::open(m_path.c_str(), O_RDWR | O_CREAT | O_NOFOLLOW | O_CLOEXEC, 0600);
        if (descriptor < 0)
            return Taken::NoPlace;
        const bool isLocked = ::flock(descriptor, LOCK_EX | LOCK_NB) == 0;
        const int why = errno;
        struct stat status {};
        if (isLocked && ::fstat(descriptor, &status) == 0 && status.st_nlink > 0) {
            m_descriptor = descriptor;
            break;
        }
        ::close(descriptor);
        if (!isLocked)
            return why == EWOULDBLOCK ? Taken::ByAnother : Taken::NoLocks;
        // whoever had it took the file away in between: there is a new one to make
    }
    return isTaken() ? Taken::Yes : Taken::ByAnother;
}

void FileLock::release()
{
    if (!isTaken())
        return;
    ::unlink(m_path.c_str());
    ::close(std::exchange(m_descriptor, -1));
}

}  // namespace stillbay::ui
