// SPDX-License-Identifier: MIT
#include "core/setup/tunes.h"

#include "core/base/format.h"

#include <algorithm>
#include <utility>

namespace stillbay {

Design designOf(const Setup& setup)
{
    return {setup.tube, setup.mounts};
}

Setup withDesign(Setup setup, const Design& design)
{
    setup.tube = design.tube;
    setup.mounts = design.mounts;
    return setup;
}

Tune presentTune(const Setup& setup, std::string name, std::string saved)
{
    return {std::move(name), std::move(saved), {}, designOf(setup), {}};
}

std::string freeTuneName(const Setup& setup)
{
    const TubeKind& tube = setup.tube;
    std::string name = formatted("%g × %g mm, Shore %g, %g mm", tube.outer_diameter_mm,
                                 tube.bore_mm, tube.hardness_shore_a, setup.mounts.free_length_mm);
    if (setup.mounts.stretch)
        name += formatted(", %+.3g %%", 100.0 * (*setup.mounts.stretch - 1.0));
    const auto taken = [&](const std::string& wanted) {
        return std::any_of(setup.tunes.begin(), setup.tunes.end(),
                           [&](const Tune& tune) { return tune.name == wanted; });
    };
    if (!taken(name))
        return name;
    int number = 2;
    while (taken(formatted("%s (%d)", name.c_str(), number)))
        ++number;
    return formatted("%s (%d)", name.c_str(), number);
}

}  // namespace stillbay
