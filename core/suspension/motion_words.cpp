// SPDX-License-Identifier: MIT
#include "core/suspension/motion_words.h"

#include <array>

namespace stillbay {
namespace {

constexpr std::array<const char*, 6> kWords{
    "slides fore and aft", "slides sideways", "bounces", "rolls", "nods", "turns"};
constexpr double kWorthSaying = 0.5;  // of the largest component

}  // namespace

std::string motionInWords(const Vector6d& motion)
{
    Vector6d size = motion.cwiseAbs();
    Eigen::Index first = 0, second = 0;
    const double largest = size.maxCoeff(&first);
    size[first] = -1;
    const double next = size.maxCoeff(&second);
    std::string words = std::string("bay ") + kWords[static_cast<std::size_t>(first)];
    if (next >= kWorthSaying * largest)
        words += std::string(" and ") + kWords[static_cast<std::size_t>(second)];
    return words;
}

}  // namespace stillbay
