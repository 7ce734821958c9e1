// SPDX-License-Identifier: MIT
// STILLBAY_FAULT_FOLDER, _CALLS, _AT, _HOW and _LOG (a file outside of the folder, to which each
// counted call adds its letter) give the order to a program that is only started.
#include "tests/ui/faults/disk_fault.h"

#include <array>
#include <atomic>
#include <cerrno>
#include <climits>
#include <csignal>
#include <cstdarg>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <fcntl.h>
#include <sys/file.h>
#include <sys/syscall.h>
#include <sys/uio.h>
#include <unistd.h>

namespace {

enum class How { Errno, Short, Kill, Act };

constexpr int kMostCalls = 255;

std::array<char, PATH_MAX> g_folder{};
std::array<char, 16> g_wanted{};
std::array<char, kMostCalls + 1> g_calls{};
std::atomic<int> g_count{0};
std::atomic<bool> g_armed{false};
int g_at = 0;
int g_errno = 0;
How g_how = How::Errno;
bool g_fromThenOn = false;
int g_log = -1;
void (*g_act)() = nullptr;

bool isInside(const char* path)
{
    const std::size_t length = std::strlen(g_folder.data());
    return std::strncmp(path, g_folder.data(), length) == 0 &&
           (path[length] == '/' || path[length] == '\0');
}

bool isInside(int descriptor)
{
    std::array<char, 64> self{};
    std::array<char, PATH_MAX> path{};
    std::snprintf(self.data(), self.size(), "/proc/self/fd/%d", descriptor);
    return ::readlink(self.data(), path.data(), path.size() - 1) > 0 && isInside(path.data());
}

bool isInside(int folder, const char* path)
{
    if (path[0] == '/')
        return isInside(path);
    std::array<char, PATH_MAX> here{};
    return folder == AT_FDCWD ? ::getcwd(here.data(), here.size()) && isInside(here.data())
                              : isInside(folder);
}

// Whether this call is the one.
bool isDue(char letter)
{
    if (g_wanted[0] != '\0' && !std::strchr(g_wanted.data(), letter))
        return false;
    const int before = errno;
    const int number = ++g_count;
    if (number <= kMostCalls)
        g_calls[static_cast<std::size_t>(number - 1)] = letter;
    if (g_log >= 0)
        ::syscall(SYS_write, g_log, &letter, 1);
    const bool isIt = g_at > 0 && (number == g_at || (g_fromThenOn && number > g_at));
    if (isIt && g_how == How::Act && g_act) {
        g_armed = false;
        g_act();
        g_armed = true;
    }
    errno = before;
    return isIt && g_how != How::Act;
}

void die()
{
    ::kill(::getpid(), SIGKILL);
    ::pause();
}

// What a call other than write() comes to when it is due. @return whether it fails
bool fails()
{
    if (g_how == How::Kill)
        die();
    if (g_how == How::Errno)
        errno = g_errno;
    return g_how == How::Errno;
}

int openFile(int folder, const char* path, int flags, mode_t mode)
{
    const bool writes = (flags & O_ACCMODE) != O_RDONLY || (flags & (O_CREAT | O_TRUNC)) != 0;
    if (g_armed && writes && isInside(folder, path) && isDue('o') && fails())
        return -1;
    return static_cast<int>(::syscall(SYS_openat, folder, path, flags, mode));
}

mode_t modeOf(int flags, std::va_list& rest)
{
    const bool hasMode = (flags & O_CREAT) != 0 || (flags & O_TMPFILE) == O_TMPFILE;
    return hasMode ? va_arg(rest, mode_t) : 0;
}

int callOn(int descriptor, char letter, long number, off_t length = 0)
{
    if (g_armed && isInside(descriptor) && isDue(letter) && fails())
        return -1;
    return static_cast<int>(::syscall(number, descriptor, length));
}

ssize_t writeTo(int descriptor, const void* bytes, std::size_t size)
{
    if (g_armed && isInside(descriptor) && isDue('w')) {
        if (g_how == How::Errno) {
            errno = g_errno;
            return -1;
        }
        const long part = ::syscall(SYS_write, descriptor, bytes, (size + 1) / 2);
        if (g_how == How::Kill)
            die();
        return part;
    }
    return ::syscall(SYS_write, descriptor, bytes, size);
}

int renameAt(int from, const char* name, int to, const char* fresh, unsigned flags)
{
    if (g_armed && isInside(to, fresh) && isDue('r') && fails())
        return -1;
    return static_cast<int>(::syscall(SYS_renameat2, from, name, to, fresh, flags));
}

int linkAt(int from, const char* name, int to, const char* fresh, int flags)
{
    if (g_armed && isInside(to, fresh) && isDue('l') && fails())
        return -1;
    return static_cast<int>(::syscall(SYS_linkat, from, name, to, fresh, flags));
}

int unlinkAt(int folder, const char* name, int flags)
{
    if (g_armed && isInside(folder, name) && isDue('u') && fails())
        return -1;
    return static_cast<int>(::syscall(SYS_unlinkat, folder, name, flags));
}

[[gnu::constructor]] void takeOrderOfEnvironment()
{
    const char* const folder = std::getenv("STILLBAY_FAULT_FOLDER");
    if (!folder)
        return;
    const char* const at = std::getenv("STILLBAY_FAULT_AT");
    const char* const how = std::getenv("STILLBAY_FAULT_HOW");
    if (const char* const log = std::getenv("STILLBAY_FAULT_LOG"))
        g_log = static_cast<int>(
            ::syscall(SYS_openat, AT_FDCWD, log, O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0600));
    stillbayDiskFault(folder, std::getenv("STILLBAY_FAULT_CALLS"), at ? std::atoi(at) : 0,
                      how ? how : "5");
}

}  // namespace

extern "C" {

void stillbayDiskFault(const char* folder, const char* calls, int at, const char* how)
{
    g_armed = false;
    if (!folder || *folder == '\0')
        return;
    std::snprintf(g_folder.data(), g_folder.size(), "%s",
                  std::strcmp(folder, "/") == 0 ? "" : folder);
    std::snprintf(g_wanted.data(), g_wanted.size(), "%s", calls ? calls : "");
    g_calls.fill('\0');
    g_count = 0;
    g_at = at;
    g_how = std::strncmp(how, "short", 5) == 0  ? How::Short
            : std::strncmp(how, "kill", 4) == 0 ? How::Kill
            : std::strncmp(how, "act", 3) == 0  ? How::Act
                                                : How::Errno;
    g_errno = std::atoi(how);
    g_fromThenOn = std::strchr(how, '+') != nullptr;
    g_armed = true;
}

void stillbayAtDiskCall(void (*act)())
{
    g_act = act;
}

const char* stillbayDiskCalls()
{
    return g_calls.data();
}

int open(const char* path, int flags, ...)
{
    std::va_list rest;
    va_start(rest, flags);
    const mode_t mode = modeOf(flags, rest);
    va_end(rest);
    return openFile(AT_FDCWD, path, flags, mode);
}

int open64(const char* path, int flags, ...)
{
    std::va_list rest;
    va_start(rest, flags);
    const mode_t mode = modeOf(flags, rest);
    va_end(rest);
    return openFile(AT_FDCWD, path, flags, mode);
}

int openat(int folder, const char* path, int flags, ...)
{
    std::va_list rest;
    va_start(rest, flags);
    const mode_t mode = modeOf(flags, rest);
    va_end(rest);
    return openFile(folder, path, flags, mode);
}

ssize_t write(int descriptor, const void* bytes, std::size_t size)
{
    return writeTo(descriptor, bytes, size);
}

ssize_t pwrite64(int descriptor, const void* bytes, std::size_t size, off64_t at)
{
    if (g_armed && isInside(descriptor) && isDue('w') && fails())
        return -1;
    return ::syscall(SYS_pwrite64, descriptor, bytes, size, at);
}

ssize_t writev(int descriptor, const iovec* pieces, int count)
{
    if (g_armed && isInside(descriptor) && isDue('w') && fails())
        return -1;
    return ::syscall(SYS_writev, descriptor, pieces, count);
}

int fsync(int descriptor)
{
    return callOn(descriptor, 's', SYS_fsync);
}

int fdatasync(int descriptor)
{
    return callOn(descriptor, 's', SYS_fdatasync);
}

int ftruncate(int descriptor, off_t length) noexcept
{
    return callOn(descriptor, 't', SYS_ftruncate, length);
}

int ftruncate64(int descriptor, off64_t length) noexcept
{
    return callOn(descriptor, 't', SYS_ftruncate, length);
}

int flock(int descriptor, int operation) noexcept
{
    if (g_armed && std::strchr(g_wanted.data(), 'k') && isInside(descriptor) && isDue('k') &&
        fails())
        return -1;
    return static_cast<int>(::syscall(SYS_flock, descriptor, operation));
}

int rename(const char* name, const char* fresh) noexcept
{
    return renameAt(AT_FDCWD, name, AT_FDCWD, fresh, 0);
}

int renameat2(int from, const char* name, int to, const char* fresh, unsigned flags) noexcept
{
    return renameAt(from, name, to, fresh, flags);
}

int link(const char* name, const char* fresh) noexcept
{
    return linkAt(AT_FDCWD, name, AT_FDCWD, fresh, 0);
}

int linkat(int from, const char* name, int to, const char* fresh, int flags) noexcept
{
    return linkAt(from, name, to, fresh, flags);
}

int unlink(const char* name) noexcept
{
    return unlinkAt(AT_FDCWD, name, 0);
}

int unlinkat(int folder, const char* name, int flags) noexcept
{
    return unlinkAt(folder, name, flags);
}
}
