// SPDX-License-Identifier: MIT
#include "core/base/format.h"

#include "core/base/check.h"

#include <array>
#include <charconv>
#include <cmath>

namespace stillbay {

PlainNumbers::PlainNumbers()
{
    static const locale_t plain = ::newlocale(LC_ALL_MASK, "C", nullptr);
    check(plain != nullptr, "the C library has its own locale");
    m_before = ::uselocale(plain);
}

PlainNumbers::~PlainNumbers()
{
    ::uselocale(m_before);
}

std::string toText(double value)
{
    // Plain digits where a builder expects them: the shortest form of 100000 would be 1e+05.
    const double size = std::abs(value);
    const bool plain = size >= 1.0 && size < 1e15;
    std::array<char, 64> buffer;
    const auto [end, code] =
        std::to_chars(buffer.data(), buffer.data() + buffer.size(), value + 0.0,  // no "-0"
                      plain ? std::chars_format::fixed : std::chars_format::general);
    return {buffer.data(), end};
}

}  // namespace stillbay
