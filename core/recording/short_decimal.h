// SPDX-License-Identifier: MIT
#pragma once

#include <array>
#include <bit>
#include <cstddef>
#include <cstdint>
#include <cstring>

/// Numbers as logs write them, read where they stand. In a header, since most of a log's reading is
/// done here.
namespace stillbay {

inline constexpr std::array<std::uint64_t, 9> kWholePowers{
    1, 10, 100, 1'000, 10'000, 100'000, 1'000'000, 10'000'000, 100'000'000};
inline constexpr std::array kPowers{1e0,  1e1,  1e2,  1e3,  1e4,  1e5,  1e6,  1e7,  1e8, 1e9,
                                    1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18};
inline constexpr std::array kSigns{1.0, -1.0};

/// Digits that stand one after another, as a whole number; beyond eighteen it has overflowed.
class DigitRun {
public:
    const char* take(const char* at, const char* const end)
    {
        if constexpr (std::endian::native == std::endian::little)
            while (end - at >= 8) {
                const std::size_t count = takeEight(at);
                at += count;
                if (count < 8)
                    return at;
            }
        for (; at != end && static_cast<unsigned char>(*at - '0') < 10; ++at)
            m_value = 10 * m_value + static_cast<unsigned char>(*at - '0');
        return at;
    }

    std::uint64_t value() const { return m_value; }

private:
    // Up to eight in one step, since bytes side by side in a word can be worked on together; how
    // many there were (own derivation).
    std::size_t takeEight(const char* at)
    {
        std::uint64_t word = 0;
        std::memcpy(&word, at, sizeof word);
        word ^= 0x3030303030303030;  // a digit's byte is now its value, any other above 9
        const std::uint64_t others = (word | (word + 0x7676767676767676)) & 0x8080808080808080;
        const auto count = static_cast<std::size_t>(std::countr_zero(others)) / 8;
        if (count == 0)
            return 0;
        word <<= 64 - 8 * count;         // the last digit is in the highest byte
        word = 10 * word + (word >> 8);  // pairs, in every second byte
        constexpr std::uint64_t kEvenBytes = 0x000000FF000000FF;
        const std::uint64_t outer = (word & kEvenBytes) * (100 + (std::uint64_t{1'000'000} << 32));
        const std::uint64_t inner =
            ((word >> 16) & kEvenBytes) * (1 + (std::uint64_t{10'000} << 32));
        m_value = m_value * kWholePowers[count] + ((outer + inner) >> 32);
        return count;
    }

    std::uint64_t m_value = 0;
};

/// "-12.345", as nearly all logs write their numbers; null where it is another kind. Exact, since
/// digits and power of ten are whole doubles (W. D. Clinger, How to read floating point numbers
/// accurately, 1990, from memory). std::from_chars takes half as long again.
inline const char* shortDecimal(const char* at, const char* end, double& value)
{
    constexpr std::uint64_t kExact = std::uint64_t{1} << 53;
    DigitRun digits;
    const bool isNegative = at != end && *at == '-';
    const char* const first = at + (isNegative ? 1 : 0);
    const char* stop = digits.take(first, end);
    std::ptrdiff_t count = stop - first, places = 0;
    if (stop != end && *stop == '.') {
        const char* const point = stop + 1;
        stop = digits.take(point, end);
        places = stop - point;
        count += places;
    }
    const bool isOtherKind = count == 0 || count > 18 || digits.value() > kExact ||
                             (stop != end && (*stop == 'e' || *stop == 'E'));
    if (isOtherKind)
        return nullptr;
    // The sign by a product: no guess at what follows no rule.
    value = kSigns[isNegative ? 1 : 0] * static_cast<double>(digits.value()) /
            kPowers[static_cast<std::size_t>(places)];
    return stop;
}

}  // namespace stillbay
