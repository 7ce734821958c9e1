// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"

#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <span>
#include <string_view>

namespace stillbay {

/// Bytes that are read piece by piece.
class ByteSource {
public:
    virtual ~ByteSource() = default;
    ByteSource(const ByteSource&) = delete;
    ByteSource& operator=(const ByteSource&) = delete;

    virtual std::uint64_t size() const = 0;
    /// Fills the span from the offset on; less only at the end.
    virtual Result<std::size_t> read(std::uint64_t offset, std::span<char> into) const = 0;

protected:
    ByteSource() = default;
};

class MemoryBytes final : public ByteSource {
public:
    explicit MemoryBytes(std::string_view bytes) : m_bytes(bytes) {}
    std::uint64_t size() const override { return m_bytes.size(); }
    Result<std::size_t> read(std::uint64_t offset, std::span<char> into) const override;

private:
    std::string_view m_bytes;
};

/// An ordinary file, open as long as this lives.
class FileBytes final : public ByteSource {
public:
    /// @error BadInput  no such file, not readable, or no ordinary file; a pipe is not waited for.
    static Result<FileBytes> open(const std::filesystem::path& file);

    FileBytes(FileBytes&& other) noexcept;
    FileBytes& operator=(FileBytes&&) = delete;
    ~FileBytes() override;

    std::uint64_t size() const override { return m_size; }
    Result<std::size_t> read(std::uint64_t offset, std::span<char> into) const override;

private:
    FileBytes(int descriptor, std::uint64_t size) : m_descriptor(descriptor), m_size(size) {}

    int m_descriptor;
    std::uint64_t m_size;
};

}  // namespace stillbay
