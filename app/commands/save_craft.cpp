// SPDX-License-Identifier: MIT
#include "app/commands/save_craft.h"

#include "app/commands/command.h"
#include "core/setup/text.h"

#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <fcntl.h>
#include <filesystem>
#include <string_view>
#include <sys/stat.h>
#include <system_error>
#include <unistd.h>

namespace stillbay {
namespace {

namespace fs = std::filesystem;

tl::unexpected<Error> systemRefuses()
{
    return fail(Errc::BadInput, verbatim(std::generic_category().message(errno)));
}

/// A file of its own beside the one to be written, gone again unless it took that one's name.
class BesideFile {
public:
    explicit BesideFile(const fs::path& target) : m_path(target.string() + ".XXXXXX")
    {
        m_descriptor = ::mkostemp(m_path.data(), O_CLOEXEC);
    }
    ~BesideFile()
    {
        if (m_descriptor < 0)
            return;
        ::close(m_descriptor);
        ::unlink(m_path.c_str());  // no harm where it was renamed: that name is free again
    }
    BesideFile(const BesideFile&) = delete;
    BesideFile& operator=(const BesideFile&) = delete;

    // The bytes, down to the disk; what a full one refuses often comes to light there only.
    bool hold(std::string_view bytes, mode_t mode)
    {
        if (m_descriptor < 0 || ::fchmod(m_descriptor, mode) != 0)
            return false;
        while (!bytes.empty()) {
            const ssize_t written = ::write(m_descriptor, bytes.data(), bytes.size());
            if (written < 0 && errno != EINTR)
                return false;
            bytes.remove_prefix(static_cast<std::size_t>(written > 0 ? written : 0));
        }
        return ::fdatasync(m_descriptor) == 0 || errno == EINVAL || errno == ENOSYS;
    }

    // A link takes no name that is in use, a rename does. Where the file system has no links, the
    // name was free a moment ago.
    bool take(const fs::path& target, bool replace)
    {
        if (!replace && ::link(m_path.c_str(), target.c_str()) == 0)
            return true;
        if (!replace && errno == EEXIST)
            return false;
        return ::rename(m_path.c_str(), target.c_str()) == 0;
    }

private:
    std::string m_path;
    int m_descriptor = -1;
};

// What a name leads to over any number of links, be it nothing yet; a link where they never end.
fs::path endOfLinks(fs::path path)
{
    constexpr int kMostLinks = 40;  // as the kernel's own limit
    std::error_code code;
    for (int k = 0; k < kMostLinks && fs::is_symlink(path, code); ++k)
        path = path.parent_path() / fs::read_symlink(path, code);  // which may be absolute
    return path;
}

// As the file that is replaced, or as any new one.
mode_t modeFor(const fs::path& target)
{
    struct stat present {};
    if (::stat(target.c_str(), &present) == 0)
        return present.st_mode & 07777;
    const mode_t mask = ::umask(0);
    ::umask(mask);
    return 0666 & ~mask;
}

}  // namespace

Result<void> saveCraft(const Setup& setup, const std::string& path, bool replace)
{
    const auto text = writeSetup(setup);
    if (!text)
        return tl::unexpected(text.error());
    if (!replace && isThere(path))
        return tl::unexpected(alreadyThere());
    std::error_code code;
    const fs::path target = endOfLinks(path);
    if (fs::is_symlink(target, code))
        return fail(Errc::BadInput, phrase("the link points to itself"));
    if (fs::exists(target, code) && !fs::is_regular_file(target, code))
        return fail(Errc::BadInput, phrase("it is not a regular file"));
    BesideFile beside(target);
    if (!beside.hold(*text, modeFor(target)))
        return systemRefuses();
    if (beside.take(target, replace))
        return {};
    return errno == EEXIST ? tl::unexpected(alreadyThere()) : systemRefuses();
}

}  // namespace stillbay
