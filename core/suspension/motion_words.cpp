// SPDX-License-Identifier: MIT
#include "core/suspension/motion_words.h"

#include <array>

namespace stillbay {
namespace {

constexpr std::array<const char*, 6> kWords{words("slides fore and aft"),
                                            words("slides sideways"),
                                            words("bounces"),
                                            words("rolls"),
                                            words("nods"),
                                            words("turns")};
constexpr double kWorthSaying = 0.5;  // of the largest component

}  // namespace

Phrase motionInWords(const Vector6d& motion)
{
    Vector6d size = motion.cwiseAbs();
    Eigen::Index first = 0, second = 0;
    const double largest = size.maxCoeff(&first);
    size[first] = -1;
    const double next = size.maxCoeff(&second);
    const Phrase mostly{kWords[static_cast<std::size_t>(first)], {}};
    if (next < kWorthSaying * largest)
        return phrase("bay %1", mostly);
    return phrase("bay %1 and %2", mostly, Phrase{kWords[static_cast<std::size_t>(second)], {}});
}

}  // namespace stillbay
