// SPDX-License-Identifier: MIT
#include "core/disk/whole_file.h"

#include <array>
#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <fcntl.h>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <sys/file.h>
#include <sys/random.h>
#include <sys/stat.h>
#include <system_error>
#include <unistd.h>
#include <utility>

namespace stillbay {
namespace {

namespace fs = std::filesystem;

// Short, however long the file's name. What may be another program's version is under a name that
// is not swept.
constexpr std::string_view kNamePart = ".stillbay-save-";
constexpr std::string_view kSwapPart = ".stillbay-swap-";
constexpr std::size_t kNameLetters = 8;
constexpr int kMostTries = 100;

tl::unexpected<Error> systemRefuses(int number)
{
    return fail(Errc::BadInput, verbatim(std::generic_category().message(number)));
}

fs::path folderOf(const fs::path& file)
{
    return file.has_parent_path() ? file.parent_path() : fs::path(".");
}

// What a name leads to over any number of links, be it nothing yet; a link where they never end.
fs::path endOfLinks(fs::path path)
{
    constexpr int kMostLinks = 40;  // as the kernel's own limit
    std::error_code code;
    for (int k = 0; k < kMostLinks && fs::is_symlink(path, code); ++k)
        path = path.parent_path() / fs::read_symlink(path, code);  // which may be absolute
    return path;
}

// A call that a signal interrupted is made again.
template <class Call>
auto uninterrupted(const Call& call)
{
    auto result = call();
    while (result < 0 && errno == EINTR)
        result = call();
    return result;
}

int openFile(const fs::path& path, int flags, mode_t mode = 0)
{
    return uninterrupted([&] { return ::open(path.c_str(), flags | O_CLOEXEC, mode); });
}

int renameFile(const fs::path& from, const fs::path& to, unsigned flags = 0)
{
    return uninterrupted(
        [&] { return ::renameat2(AT_FDCWD, from.c_str(), AT_FDCWD, to.c_str(), flags); });
}

// Names that two programs, or two starts of one, do not choose alike.
fs::path freshName(const fs::path& folder, std::string_view part = kNamePart)
{
    constexpr std::string_view letters = "abcdefghijklmnopqrstuvwxyz012345";
    std::array<unsigned char, kNameLetters> random{};
    if (::getrandom(random.data(), random.size(), 0) < 0)
        random.fill(static_cast<unsigned char>(::getpid()));
    std::string name(part);
    for (const unsigned char byte : random)
        name += letters[byte % letters.size()];
    return folder / name;
}

bool isOurName(const std::string& name)
{
    return name.size() == kNamePart.size() + kNameLetters && name.starts_with(kNamePart);
}

bool isUnchanged(const fs::path& name, const struct stat& before)
{
    struct stat now {};
    return ::lstat(name.c_str(), &now) == 0 && now.st_dev == before.st_dev &&
           now.st_ino == before.st_ino && now.st_size == before.st_size &&
           now.st_mtim.tv_sec == before.st_mtim.tv_sec &&
           now.st_mtim.tv_nsec == before.st_mtim.tv_nsec;
}

// Written in place within one tick of the clock, a file has other bytes only.
bool holdsOther(const fs::path& name, std::string_view bytes)
{
    std::ifstream file(name, std::ios::binary);
    const std::string held{std::istreambuf_iterator<char>(file), {}};
    return file.is_open() && !file.bad() && held != bytes;
}

/// The bytes on their way: a file without a name or of a name of its own, gone again unless it took
/// the one it is for. It is locked, by which a sweep knows that somebody still writes it.
class Beside {
public:
    explicit Beside(fs::path folder) : m_folder(std::move(folder)) {}
    ~Beside()
    {
        drop();
        if (m_descriptor >= 0)
            ::close(m_descriptor);
    }
    Beside(const Beside&) = delete;
    Beside& operator=(const Beside&) = delete;

    bool open(mode_t mode) { return openUnnamed(mode) || openNamed(mode); }

    bool setMode(mode_t mode) const { return ::fchmod(m_descriptor, mode) == 0; }

    // The bytes, down to the disk: what a full network disk, a quota or a failing disk refuses
    // often comes to light there only. A file system that cannot flush is no failure.
    bool hold(std::string_view bytes)
    {
        m_bytes = bytes;
        while (!bytes.empty()) {
            const ssize_t written =
                uninterrupted([&] { return ::write(m_descriptor, bytes.data(), bytes.size()); });
            if (written < 0)
                return false;
            bytes.remove_prefix(static_cast<std::size_t>(written));
        }
        return uninterrupted([&] { return ::fdatasync(m_descriptor); }) == 0 || errno == EINVAL ||
               errno == ENOSYS;
    }

    // A link takes no name that is in use, a rename does. Where the file system has no links, the
    // name was free a moment ago.
    bool take(const fs::path& target, bool replace, const auto& mayGo)
    {
        if (!replace) {
            if (linkTo(target))
                return true;
            if (errno == EEXIST || m_name.empty())
                return false;
        }
        if (m_name.empty() && !linkToFreshName())
            return false;
        if (replace && mayGo)
            return exchange(target, mayGo);
        if (renameFile(m_name, target) != 0)
            return false;
        m_name.clear();
        return true;
    }

    /// Why take() failed: what was there must not go.
    bool isKept() const { return m_isKept; }

private:
    // Ours takes the name and the other file ours, in one step: whoever writes by name writes
    // either before, which is seen, or into ours. Where this cannot be, the question comes before.
    bool exchange(const fs::path& target, const auto& mayGo)
    {
        const auto swap = [&] {
            return renameFile(m_name, target, RENAME_EXCHANGE) == 0;
        };
        struct stat ours {
        }, theirs{};
        if (moveToSwapName() && ::fstat(m_descriptor, &ours) == 0 && swap()) {
            if (::lstat(m_name.c_str(), &theirs) != 0 && errno == ENOENT)
                m_name.clear();  // a file system that does not know the flag has replaced it
            else if (mayGo(m_name.string()))
                drop();
            else
                m_isKept = true;
            if (m_isKept)
                giveBack(swap, ours, theirs);
            return !m_isKept;
        }
        if (!mayGo(target.string())) {
            m_isKept = true;
            return false;
        }
        if (renameFile(m_name, target) != 0)
            return false;
        m_name.clear();
        return true;
    }

    // Their version gets its name back, unless a still newer one has taken ours meanwhile: that one
    // stays. What is neither ours nor superseded is better left over than lost.
    void giveBack(const auto& swap, const struct stat& ours, const struct stat& theirs)
    {
        const auto swapSurely = [&] {
            for (int k = 0; k < kMostTries; ++k)
                if (swap())
                    return true;
            return false;
        };
        const bool isBack = swapSurely();
        const bool isNewer = isBack && (!isUnchanged(m_name, ours) || holdsOther(m_name, m_bytes));
        if (!isBack || (isNewer && (!swapSurely() || !isUnchanged(m_name, theirs))))
            m_name.clear();
    }

    bool moveToSwapName()
    {
        const fs::path name = freshName(m_folder, kSwapPart);
        if (renameFile(m_name, name, RENAME_NOREPLACE) != 0)
            return false;
        m_name = name;
        return true;
    }

    void drop()
    {
        if (!m_name.empty() && ::unlink(m_name.c_str()) != 0)
            renameFile(m_name, freshName(m_folder));  // by which it is swept
        m_name.clear();
    }

    bool openUnnamed(mode_t mode)
    {
        if (::access("/proc/self/fd", X_OK) != 0)  // by which it gets its name
            return false;
        m_descriptor = openFile(m_folder, O_TMPFILE | O_WRONLY, mode);
        if (m_descriptor < 0)
            return false;
        ::flock(m_descriptor, LOCK_EX | LOCK_NB);
        return true;
    }

    bool openNamed(mode_t mode)
    {
        for (int k = 0; k < kMostTries; ++k) {
            const fs::path name = freshName(m_folder);
            m_descriptor = openFile(name, O_CREAT | O_EXCL | O_WRONLY | O_NOFOLLOW, mode);
            if (m_descriptor < 0 && errno == EEXIST)
                continue;
            if (m_descriptor < 0)
                return false;
            const bool isHeld = ::flock(m_descriptor, LOCK_EX | LOCK_NB) == 0;
            struct stat now {};
            if ((isHeld || errno != EWOULDBLOCK) && ::fstat(m_descriptor, &now) == 0 &&
                now.st_nlink > 0) {
                m_name = name;
                return true;
            }
            ::close(std::exchange(m_descriptor, -1));  // swept before it was locked
        }
        errno = EEXIST;
        return false;
    }

    bool linkTo(const fs::path& name) const
    {
        if (!m_name.empty())
            return uninterrupted([&] { return ::link(m_name.c_str(), name.c_str()); }) == 0;
        const std::string self = "/proc/self/fd/" + std::to_string(m_descriptor);
        return uninterrupted([&] {
                   return ::linkat(AT_FDCWD, self.c_str(), AT_FDCWD, name.c_str(),
                                   AT_SYMLINK_FOLLOW);
               }) == 0;
    }

    bool linkToFreshName()
    {
        for (int k = 0; k < kMostTries; ++k) {
            const fs::path name = freshName(m_folder);
            if (linkTo(name)) {
                m_name = name;
                return true;
            }
            if (errno != EEXIST)
                return false;
        }
        return false;
    }

    fs::path m_folder;
    fs::path m_name;  // empty: none, or it took the target's
    std::string_view m_bytes;
    int m_descriptor = -1;
    bool m_isKept = false;
};

// The new name must survive a power cut too; a file system that cannot do this is no failure.
void flushFolder(const fs::path& folder)
{
    const int descriptor = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (descriptor < 0)
        return;
    ::fsync(descriptor);
    ::close(descriptor);
}

}  // namespace

Result<void> writeWhole(const std::string& path, std::string_view bytes,
                        const WriteOptions& options)
{
    std::error_code code;
    if (options.taken && fs::exists(fs::symlink_status(path, code)))
        return tl::unexpected(*options.taken);
    const fs::path target = endOfLinks(path);
    if (fs::is_symlink(target, code))
        return fail(Errc::BadInput, phrase("the link points to itself"));
    struct stat present {};
    const bool isThere = ::stat(target.c_str(), &present) == 0;
    if (isThere && !S_ISREG(present.st_mode))
        return fail(Errc::BadInput, phrase("it is not a regular file"));
    // A file that may not be written is not replaced behind its owner's back.
    if (isThere && ::faccessat(AT_FDCWD, target.c_str(), W_OK, AT_EACCESS) != 0)
        return systemRefuses(errno);
    const std::optional<mode_t> mode =
        options.mode || !isThere ? options.mode : std::optional(present.st_mode & 07777);

    Beside beside(folderOf(target));
    if (!beside.open(mode ? 0600 : 0666) || (mode && !beside.setMode(*mode)) || !beside.hold(bytes))
        return systemRefuses(errno);
    if (!beside.take(target, !options.taken, options.mayGo)) {
        const int why = errno;
        if (beside.isKept())
            return fail(Errc::BadInput, phrase("another program has changed it just now"));
        return options.taken && why == EEXIST ? tl::unexpected(*options.taken) : systemRefuses(why);
    }
    flushFolder(folderOf(target));
    return {};
}

std::size_t sweepBeside(const std::string& path)
{
    std::size_t swept = 0;
    std::error_code code;
    const fs::path folder = folderOf(endOfLinks(path));
    for (fs::directory_iterator entry(folder, code), end; !code && entry != end;
         entry.increment(code)) {
        if (!isOurName(entry->path().filename().string()))
            continue;
        const int descriptor =
            ::open(entry->path().c_str(), O_RDONLY | O_NOFOLLOW | O_NONBLOCK | O_CLOEXEC);
        if (descriptor < 0)
            continue;
        struct stat status {};
        const bool isOurs = ::fstat(descriptor, &status) == 0 && S_ISREG(status.st_mode) &&
                            status.st_uid == ::geteuid() && status.st_nlink == 1;
        if (isOurs && ::flock(descriptor, LOCK_EX | LOCK_NB) == 0 &&
            ::unlink(entry->path().c_str()) == 0)
            ++swept;
        ::close(descriptor);
    }
    return swept;
}

}  // namespace stillbay
