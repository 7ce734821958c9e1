// SPDX-License-Identifier: MIT
#include "core/suspension/motion_text.h"

#include <array>

namespace stillbay {
namespace {

// The field's name of a motion, and the plain word for it.
struct Motion {
    const char *name, *plain;
};
constexpr std::array<Motion, 6> kMotions{{
    {translatable("surge"), translatable("slides fore and aft")},
    {translatable("sway"), translatable("slides sideways")},
    {translatable("heave"), translatable("bounces")},
    {translatable("roll"), translatable("rolls")},
    {translatable("pitch"), translatable("nods")},
    {translatable("yaw"), translatable("turns")},
}};
constexpr double kWorthSaying = 0.5;  // of the largest component

}  // namespace

Phrase motionName(Eigen::Index component)
{
    return phrase(kMotions[static_cast<std::size_t>(component)].name);
}

Phrase motionText(const Vector6d& motion)
{
    Vector6d size = motion.cwiseAbs();
    Eigen::Index first = 0, second = 0;
    const double largest = size.maxCoeff(&first);
    size[first] = -1;
    const double next = size.maxCoeff(&second);
    const Motion &mostly = kMotions[static_cast<std::size_t>(first)],
                 &also = kMotions[static_cast<std::size_t>(second)];
    if (next < kWorthSaying * largest)
        return phrase("%1: bay %2", phrase(mostly.name), phrase(mostly.plain));
    return phrase("%1 and %2: bay %3 and %4", phrase(mostly.name), phrase(also.name),
                  phrase(mostly.plain), phrase(also.plain));
}

}  // namespace stillbay
