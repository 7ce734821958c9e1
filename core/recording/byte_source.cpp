// SPDX-License-Identifier: MIT
#include "core/recording/byte_source.h"

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <optional>
#include <string>
#include <sys/stat.h>
#include <system_error>
#include <unistd.h>
#include <utility>

namespace stillbay {
namespace {

std::string systemSays(int code)
{
    return std::generic_category().message(code);
}

tl::unexpected<Error> cannotOpen(int code)
{
    return fail(Errc::BadInput, phrase("the recording cannot be opened: %1", systemSays(code)));
}

tl::unexpected<Error> cannotRead(int code)
{
    return fail(Errc::BadInput, phrase("the recording cannot be read: %1", systemSays(code)));
}

// Why nothing is read from what has this name; none: it is a file that holds something.
std::optional<Error> refusalOf(const struct stat& what)
{
    const auto refuse = [](Phrase why) {
        return Error{Errc::BadInput, std::move(why), {}};
    };
    if (S_ISDIR(what.st_mode))
        return refuse(phrase("this is a folder: name one file in it"));
    if (!S_ISREG(what.st_mode))
        return refuse(phrase("this is no ordinary file: save the recording first"));
    if (what.st_size == 0)
        return refuse(phrase("the file is empty"));
    return {};
}

}  // namespace

Result<std::size_t> MemoryBytes::read(std::uint64_t offset, std::span<char> into) const
{
    if (offset >= m_bytes.size())
        return 0;
    const std::string_view piece = m_bytes.substr(static_cast<std::size_t>(offset), into.size());
    std::copy(piece.begin(), piece.end(), into.begin());
    return piece.size();
}

Result<FileBytes> FileBytes::open(const std::filesystem::path& file)
{
    // Without O_NONBLOCK opening a pipe waits until somebody writes into it.
    const int descriptor = ::open(file.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK);
    if (descriptor < 0)
        return cannotOpen(errno);
    FileBytes bytes(descriptor, 0);
    struct stat what = {};
    if (::fstat(descriptor, &what) != 0)
        return cannotOpen(errno);
    if (auto refused = refusalOf(what))
        return tl::unexpected(*std::move(refused));
    bytes.m_size = static_cast<std::uint64_t>(what.st_size);
    return bytes;
}

FileBytes::FileBytes(FileBytes&& other) noexcept
    : m_descriptor(std::exchange(other.m_descriptor, -1)), m_size(other.m_size)
{
}

FileBytes::~FileBytes()
{
    if (m_descriptor >= 0)
        ::close(m_descriptor);
}

Result<std::size_t> FileBytes::read(std::uint64_t offset, std::span<char> into) const
{
    std::size_t done = 0;
    while (done < into.size()) {
        const ssize_t got = ::pread(m_descriptor, into.data() + done, into.size() - done,
                                    static_cast<off_t>(offset + done));
        if (got < 0 && errno == EINTR)
            continue;
        if (got < 0)
            return cannotRead(errno);
        if (got == 0)
            break;
        done += static_cast<std::size_t>(got);
    }
    return done;
}

}  // namespace stillbay
