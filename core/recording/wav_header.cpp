// SPDX-License-Identifier: MIT
#include "core/recording/wav_header.h"

#include <algorithm>
#include <array>
#include <cstring>
#include <optional>
#include <string_view>

namespace stillbay {
namespace {

constexpr std::size_t kMostChunks = 1000;        // before the samples
constexpr std::uint64_t kOpenSize = 0xFFFFFF00;  // from here on a recorder did not know the size

/// A few bytes of the file, little endian.
struct Bytes {
    std::array<char, 64> data = {};
    std::size_t size = 0;

    std::uint64_t number(std::size_t at, std::size_t width) const
    {
        std::uint64_t value = 0;
        for (std::size_t k = 0; k < width && at + k < size; ++k)
            value |= std::uint64_t{static_cast<unsigned char>(data[at + k])} << (8 * k);
        return value;
    }
    std::string_view text(std::size_t at, std::size_t width) const
    {
        return std::string_view(data.data(), size).substr(std::min(at, size), width);
    }
};

Result<Bytes> bytesAt(const ByteSource& source, std::uint64_t offset, std::size_t count)
{
    Bytes bytes;
    return source.read(offset, std::span(bytes.data).first(std::min(count, bytes.data.size())))
        .map([&bytes](std::size_t got) {
            bytes.size = got;
            return bytes;
        });
}

tl::unexpected<Error> damaged()
{
    return fail(Errc::BadInput, phrase("the header of the sound is damaged"));
}

Result<void> readFormat(const Bytes& format, WavHeader& header)
{
    if (format.size < 16)
        return damaged();
    std::uint64_t tag = format.number(0, 2);
    if (tag == 0xFFFE && format.size >= 26)  // extensible: what it is stands further behind
        tag = format.number(24, 2);
    header.channels = static_cast<std::size_t>(format.number(2, 2));
    header.rate_hz = static_cast<double>(format.number(4, 4));
    const auto frame = static_cast<std::size_t>(format.number(12, 2));
    if (header.channels == 0 || frame == 0 || frame % header.channels != 0)
        return damaged();
    header.bytes = frame / header.channels;
    const auto isOf = [&header](std::initializer_list<std::size_t> widths) {
        return std::find(widths.begin(), widths.end(), header.bytes) != widths.end();
    };
    const bool isKnown = tag == 1   ? isOf({1, 2, 3, 4})
                         : tag == 3 ? isOf({4, 8})
                                    : (tag == 6 || tag == 7) && isOf({1});
    if (!isKnown)
        return fail(Errc::BadInput, phrase("the sound is packed in a way that is not read here: "
                                           "save it as WAV with plain samples, or as FLAC"));
    header.sample = tag == 1   ? WavHeader::Sample::Pcm
                    : tag == 3 ? WavHeader::Sample::Float
                    : tag == 6 ? WavHeader::Sample::ALaw
                               : WavHeader::Sample::MuLaw;
    return {};
}

// A chunk that other programs put behind the samples, so there are none between.
bool isChunkName(std::string_view id)
{
    constexpr std::array kNames{"LIST", "fact", "cue ", "id3 ", "bext", "JUNK", "PEAK", "smpl"};
    return std::find(kNames.begin(), kNames.end(), id) != kNames.end();
}

Result<WavHeader> withSamples(const ByteSource& source, WavHeader header, std::uint64_t promised)
{
    if (header.bytes == 0)
        return damaged();  // samples before their format
    const std::uint64_t frame = header.bytes * header.channels;
    const std::uint64_t left = source.size() - std::min(source.size(), header.dataAt);
    if (promised == 0) {
        const Result<Bytes> next = bytesAt(source, header.dataAt, 4);
        if (!next)
            return tl::unexpected(next.error());
        if (left < frame || isChunkName(next->text(0, 4)))
            return fail(Errc::BadInput, phrase("the sound holds no samples"));
        promised = kOpenSize;  // cut off before its length was written
    }
    const bool isOpen = promised >= kOpenSize && promised <= 0xFFFFFFFF;
    header.frames = (isOpen ? left : std::min(left, promised)) / frame;
    header.promisedFrames = isOpen ? header.frames : promised / frame;
    if (header.frames == 0)
        return fail(Errc::BadInput, phrase("the sound holds no samples"));
    return header;
}

}  // namespace

Result<WavHeader> readWavHeader(const ByteSource& source)
{
    WavHeader header;
    std::optional<std::uint64_t> longSize;  // of the samples, beyond 32 bits
    std::uint64_t at = 12;
    for (std::size_t chunk = 0; chunk < kMostChunks; ++chunk) {
        const Result<Bytes> head = bytesAt(source, at, 8);
        if (!head)
            return tl::unexpected(head.error());
        if (head->size < 8)
            break;
        const std::string_view id = head->text(0, 4);
        const std::uint64_t size = head->number(4, 4);
        at += 8;
        if (id == "data") {
            header.dataAt = at;
            return withSamples(source, header, size == 0xFFFFFFFF && longSize ? *longSize : size);
        }
        if (size > source.size() - std::min(source.size(), at))
            return damaged();
        const Result<Bytes> body =
            bytesAt(source, at, static_cast<std::size_t>(std::min<std::uint64_t>(size, 64)));
        if (!body)
            return tl::unexpected(body.error());
        if (id == "ds64" && body->size >= 16)
            longSize = body->number(8, 8);
        if (id == "fmt ")
            if (const auto format = readFormat(*body, header); !format)
                return tl::unexpected(format.error());
        at += size + size % 2;  // chunks begin at even bytes
    }
    return fail(Errc::BadInput, phrase("the sound holds no samples"));
}

}  // namespace stillbay
