// SPDX-License-Identifier: MIT
#include "core/base/printable.h"

#include <gtest/gtest.h>

#include <string>
#include <utility>
#include <vector>

namespace stillbay {
namespace {

// Oracle: The Unicode Standard: control codes, separators, and the characters of its annex 9.
TEST(Printable, TellsWhatMovesATerminal)
{
    const std::vector<std::pair<std::string, std::string>> cases{
        {"plain text, 3.5 mm", "plain text, 3.5 mm"},
        {"Größe µ ² 飛 🛩", "Größe µ ² 飛 🛩"},
        {"\x1b[31mred\x1b]0;title\a", "\\u001b[31mred\\u001b]0;title\\u0007"},
        {std::string("a\0b", 3), "a\\u0000b"},
        {"a\tb\rc\nd\x7f", "a\\u0009b\\u000dc\\u000ad\\u007f"},
        {"\xC2\x9B"
         "2J\xC2\x80\xC2\x9F",
         "\\u009b2J\\u0080\\u009f"},
        {"\xC2\xA0", "\xC2\xA0"},  // a no-break space is no control character
        {"a\u202Eb\u202A\u202Bc\u202C\u202D", "a\\u202eb\\u202a\\u202bc\\u202c\\u202d"},
        {"\u2066\u2067\u2068\u2069", "\\u2066\\u2067\\u2068\\u2069"},
        {"\u061C\u200E\u200F\u2028\u2029", "\\u061c\\u200e\\u200f\\u2028\\u2029"},
        {"\u202F\u2065\u200D", "\u202F\u2065\u200D"},
    };
    for (const auto& [given, wanted] : cases) {
        EXPECT_EQ(printable(given), wanted);
        EXPECT_EQ(printable(printable(given)), wanted) << "told twice";
    }
}

// Oracle: The Unicode Standard, table 3-7. Each byte that begins no character is told by itself.
TEST(Printable, TellsBytesThatAreNotUtf8)
{
    EXPECT_EQ(printable("Gr\xF6\xDF"
                        "e"),
              "Gr\\xf6\\xdf"
              "e");
    EXPECT_EQ(printable("\xC0\xAF"), "\\xc0\\xaf");                    // overlong
    EXPECT_EQ(printable("\xED\xA0\x80"), "\\xed\\xa0\\x80");           // a surrogate
    EXPECT_EQ(printable("\xF4\x90\x80\x80"), "\\xf4\\x90\\x80\\x80");  // beyond the last
    EXPECT_EQ(printable("a\xE2\x80"), "a\\xe2\\x80");                  // cut off
    EXPECT_EQ(printable("\x9B"), "\\x9b");  // a control character of an 8-bit terminal
}

// Oracle: definition. A page keeps its lines, and nothing else that a line does not.
TEST(Printable, KeepsTheLinesOfAPage)
{
    EXPECT_EQ(printablePage("one\ntwo\x1b[2J\r\n"), "one\ntwo\\u001b[2J\\u000d\n");
}

// Oracle: every byte alone, and every pair: what comes out is UTF-8 without control characters.
TEST(Printable, LeavesNoControlCharacterWhateverComes)
{
    for (int a = 0; a < 256; ++a)
        for (int b = 0; b < 256; ++b) {
            const std::string pair{static_cast<char>(a), static_cast<char>(b)};
            const std::string shown = printable(pair);
            EXPECT_EQ(findNonUtf8(shown), std::string_view::npos) << a << ' ' << b;
            for (std::size_t i = 0; i < shown.size(); ++i) {
                const auto code = static_cast<unsigned char>(shown[i]);
                EXPECT_FALSE(code < 0x20 || code == 0x7F) << a << ' ' << b;
                EXPECT_FALSE(code == 0xC2 && static_cast<unsigned char>(shown[i + 1]) < 0xA0)
                    << a << ' ' << b;
            }
        }
}

}  // namespace
}  // namespace stillbay
