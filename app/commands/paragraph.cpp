// SPDX-License-Identifier: MIT
#include "app/commands/paragraph.h"

#include <sstream>

namespace stillbay {
namespace {

constexpr std::size_t kColumns = 96;  // code points

}  // namespace

void paragraph(std::ostream& page, const std::string& text, const std::string& lead)
{
    std::istringstream all(text);
    std::string word, line = lead;
    const auto width = [](const std::string& s) {
        std::size_t n = 0;
        for (const char c : s)
            n += (static_cast<unsigned char>(c) & 0xC0) != 0x80;
        return n;
    };
    bool fresh = true;
    while (all >> word) {
        if (!fresh && width(line) + 1 + width(word) > kColumns) {
            page << line << '\n';
            line = std::string(width(lead), ' ');
            fresh = true;
        }
        line += (fresh ? "" : " ") + word;
        fresh = false;
    }
    page << line << '\n';
}

}  // namespace stillbay
