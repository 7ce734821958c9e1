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

Design wholeDesignOf(const Setup& setup)
{
    Design design = designOf(setup);
    if (const Part* const heaviest = heaviestPart(setup.bay))
        design.heaviest_part_mm = heaviest->centre_mm;
    return design;
}

Setup withDesign(Setup setup, const Design& design)
{
    setup.tube = design.tube;
    setup.mounts = design.mounts;
    setup.bay = withDesign(std::move(setup.bay), design);
    return setup;
}

const Part* heaviestPart(const Bay& bay)
{
    const auto heaviest =
        std::max_element(bay.parts.begin(), bay.parts.end(),
                         [](const Part& a, const Part& b) { return a.mass_g < b.mass_g; });
    return heaviest == bay.parts.end() ? nullptr : &*heaviest;
}

Part* heaviestPart(Bay& bay)
{
    return const_cast<Part*>(heaviestPart(std::as_const(bay)));
}

Bay withDesign(Bay bay, const Design& design)
{
    if (Part* const heaviest = heaviestPart(bay); heaviest && design.heaviest_part_mm)
        heaviest->centre_mm = *design.heaviest_part_mm;
    return bay;
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
