// SPDX-License-Identifier: MIT
#include "core/suspension/motion_text.h"

#include <array>

namespace stillbay {
namespace {

constexpr std::array<const char*, 6> kTexts{translatable("slides fore and aft"),
                                            translatable("slides sideways"),
                                            translatable("bounces"),
                                            translatable("rolls"),
                                            translatable("nods"),
                                            translatable("turns")};
constexpr double kWorthSaying = 0.5;  // of the largest component

}  // namespace

Phrase motionText(const Vector6d& motion)
{
    Vector6d size = motion.cwiseAbs();
    Eigen::Index first = 0, second = 0;
    const double largest = size.maxCoeff(&first);
    size[first] = -1;
    const double next = size.maxCoeff(&second);
    const Phrase mostly{kTexts[static_cast<std::size_t>(first)], {}};
    if (next < kWorthSaying * largest)
        return phrase("bay %1", mostly);
    return phrase("bay %1 and %2", mostly, Phrase{kTexts[static_cast<std::size_t>(second)], {}});
}

}  // namespace stillbay
