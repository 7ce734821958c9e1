// SPDX-License-Identifier: MIT
#include "core/calibrate/axis_of_name.h"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

namespace stillbay {
namespace {

constexpr std::array<std::pair<std::string_view, std::size_t>, 8> kAxisWords{{{"up", 2},
                                                                              {"oben", 2},
                                                                              {"auf", 2},
                                                                              {"left", 1},
                                                                              {"links", 1},
                                                                              {"side", 1},
                                                                              {"forward", 0},
                                                                              {"vor", 0}}};

bool isLetter(char c)
{
    return c >= 'a' && c <= 'z';
}

}  // namespace

std::optional<std::size_t> axisOfName(std::string_view name)
{
    std::string lower(name);
    std::transform(lower.begin(), lower.end(), lower.begin(), [](char c) {
        return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    });
    for (const auto& [word, axis] : kAxisWords)
        if (lower.find(word) != std::string::npos)
            return axis;
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
