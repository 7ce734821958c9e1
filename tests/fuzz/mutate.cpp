// SPDX-License-Identifier: MIT
#include "tests/fuzz/mutate.h"

#include <algorithm>
#include <array>
#include <random>
#include <string_view>

namespace {

// What a reader of numbers may stumble over.
constexpr std::array<std::string_view, 23> kNumbers{"0",
                                                    "-0",
                                                    "1",
                                                    "-1",
                                                    "7",
                                                    "1e308",
                                                    "-1e9",
                                                    "1e999",
                                                    "1e-320",
                                                    "nan",
                                                    "inf",
                                                    "-inf",
                                                    "0.1",
                                                    ".5",
                                                    "5.",
                                                    "1,5",
                                                    "007",
                                                    "0x10",
                                                    "1e",
                                                    "2147483648",
                                                    "4294967296",
                                                    "9007199254740993",
                                                    "18446744073709551616"};

class Change {
public:
    Change(std::span<const std::string> inputs, std::uint64_t number)
        : m_inputs(inputs), m_random(number)
    {
    }

    std::string mutant()
    {
        std::string text = anyInput();
        for (std::size_t ways = 1 + below(4); ways > 0; --ways)
            change(text);
        text.resize(std::min(text.size(), kLargestMutant_bytes));
        return text;
    }

private:
    // The library's distributions differ from one to the next.
    std::size_t below(std::size_t count) { return count == 0 ? 0 : m_random() % count; }

    const std::string& anyInput() { return m_inputs[below(m_inputs.size())]; }

    // A stretch of a text, short ones more often.
    std::string_view piece(std::string_view text)
    {
        const std::size_t from = below(text.size() + 1);
        const std::size_t most = std::min(text.size() - from, std::size_t{1} << below(13));
        return text.substr(from, below(most + 1));
    }

    void change(std::string& text)
    {
        const std::size_t at = below(text.size() + 1);
        switch (below(8)) {
            case 0:  // a bit
                if (at < text.size())
                    text[at] = static_cast<char>(text[at] ^ (1 << below(8)));
                break;
            case 1: {  // a byte, or one more
                const char byte = static_cast<char>(below(256));
                text.replace(at, below(2), 1, byte);
                break;
            }
            case 2:  // a stretch less
                text.erase(at, piece(std::string_view(text).substr(at)).size());
                break;
            case 3:  // its end
                text.resize(at);
                break;
            case 4: {  // a piece of another in place of a stretch
                const std::string inside(piece(anyInput()));
                text.replace(at, below(2) * inside.size(), inside);
                break;
            }
            case 5: {  // a block, many times
                const std::string block(piece(text));
                std::string many;
                for (std::size_t times = std::size_t{1} << below(9);
                     times > 0 && many.size() < kLargestMutant_bytes / 2; --times)
                    many += block;
                text.insert(at, many);
                break;
            }
            default:
                changeNumber(text, at);
        }
    }

    // The next number behind a place.
    void changeNumber(std::string& text, std::size_t at)
    {
        constexpr std::string_view kOfNumbers = "0123456789+-.eE";
        const std::size_t from = text.find_first_of("0123456789", at);
        if (from == std::string::npos)
            return;
        const std::size_t to = std::min(text.find_first_not_of(kOfNumbers, from), text.size());
        text.replace(from, to - from, kNumbers.at(below(kNumbers.size())));
    }

    std::span<const std::string> m_inputs;
    std::mt19937_64 m_random;
};

}  // namespace

std::string mutant(std::span<const std::string> inputs, std::uint64_t number)
{
    return Change(inputs, number).mutant();
}
