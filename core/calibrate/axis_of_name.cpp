// SPDX-License-Identifier: MIT
#include "core/calibrate/axis_of_name.h"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

namespace stillbay {
namespace {

constexpr std::array<std::pair<std::string_view, std::size_t>, 18> kAxisWords{{{"up", 2},
                                                                               {"upward", 2},
                                                                               {"upwards", 2},
                                                                               {"oben", 2},
                                                                               {"auf", 2},
                                                                               {"aufwärts", 2},
                                                                               {"left", 1},
                                                                               {"links", 1},
                                                                               {"side", 1},
                                                                               {"sideways", 1},
                                                                               {"quer", 1},
                                                                               {"seitlich", 1},
                                                                               {"forward", 0},
                                                                               {"forwards", 0},
                                                                               {"ahead", 0},
                                                                               {"vor", 0},
                                                                               {"vorn", 0},
                                                                               {"vorwärts", 0}}};
constexpr std::array<std::string_view, 4> kBayWords{"bay", "camera", "gondel", "kamera"};

// Bytes of letters beyond ASCII count as well.
bool isLetter(char c)
{
    return (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80;
}

std::string lowered(std::string_view name)
{
    std::string lower(name);
    std::transform(lower.begin(), lower.end(), lower.begin(), [](char c) {
        return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    });
    return lower;
}

bool isCapital(char c)
{
    return c >= 'A' && c <= 'Z';
}

// A word by itself, as in "acc_up", "left (m/s²)" or "AccForward", and not the "up" of "upper".
bool holdsWord(std::string_view name, std::string_view word)
{
    const std::string text = lowered(name);
    for (std::size_t at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) {
        const std::size_t end = at + word.size();
        const bool begins = at == 0 || !isLetter(text[at - 1]) || isCapital(name[at]);
        const bool ends = end == text.size() || !isLetter(text[end]) || isCapital(name[end]);
        if (begins && ends)
            return true;
    }
    return false;
}

}  // namespace

bool isOnBayByName(std::string_view name)
{
    return std::any_of(kBayWords.begin(), kBayWords.end(),
                       [&](std::string_view word) { return holdsWord(name, word); });
}

std::optional<std::size_t> axisOfName(std::string_view name)
{
    for (const auto& [word, axis] : kAxisWords)
        if (holdsWord(name, word))
            return axis;
    const std::string lower = lowered(name);
    // A letter by itself, or behind the a or g of "ax", "gyro_x" and their like.
    for (std::size_t k = lower.size(); k-- > 0;) {
        if (lower[k] < 'x' || lower[k] > 'z')
            continue;
        const bool isFirst =
            k == 0 || !isLetter(lower[k - 1]) || lower[k - 1] == 'a' || lower[k - 1] == 'g';
        const bool isLast = k + 1 == lower.size() || !isLetter(lower[k + 1]);
        if (isFirst && isLast)
            return static_cast<std::size_t>(lower[k] - 'x');
    }
    return std::nullopt;
}

}  // namespace stillbay
