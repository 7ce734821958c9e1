// SPDX-License-Identifier: MIT
#include "core/setup/bay_mass.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace stillbay {
namespace {

double toMilligram(double mass_g)
{
    return std::round(1e3 * mass_g) / 1e3;
}

}  // namespace

double bayMass_g(const Bay& bay)
{
    return std::accumulate(bay.parts.begin(), bay.parts.end(), 0.0,
                           [](double sum, const Part& part) { return sum + part.mass_g; });
}

void setBayMass(Bay& bay, double mass_g)
{
    const double before_g = bayMass_g(bay);
    if (!(before_g > 0))
        return;
    for (Part& part : bay.parts)
        part.mass_g = toMilligram(part.mass_g * mass_g / before_g);
    Part& heaviest =
        *std::max_element(bay.parts.begin(), bay.parts.end(),
                          [](const Part& a, const Part& b) { return a.mass_g < b.mass_g; });
    // The difference of decimal numbers is freed of what binary ones added to it.
    heaviest.mass_g = std::round(1e9 * (heaviest.mass_g + mass_g - bayMass_g(bay))) / 1e9;
}

}  // namespace stillbay
