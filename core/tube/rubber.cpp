// SPDX-License-Identifier: MIT
#include "core/tube/rubber.h"

#include "core/base/units.h"

#include <cmath>
#include <numbers>

namespace stillbay {

double youngsModulusFromShoreA(double shoreA)
{
    return 0.0981 * (56 + 7.62336 * shoreA) / (0.137505 * (254 - 2.54 * shoreA)) * unit::mpa;
}

double shearModulus(double youngsModulus)
{
    return youngsModulus / 3;
}

double TubeSection::area() const
{
    return std::numbers::pi / 4 * (outerDiameter * outerDiameter - bore * bore);
}

double TubeSection::secondMoment() const
{
    return std::numbers::pi / 64 * (std::pow(outerDiameter, 4) - std::pow(bore, 4));
}

double TubeSection::polarMoment() const
{
    return 2 * secondMoment();
}

double TubeSection::shearCoefficient() const
{
    constexpr double nu = 0.5;
    const double m = bore / outerDiameter;
    const double q = (1 + m * m) * (1 + m * m);
    return 6 * (1 + nu) * q / ((7 + 6 * nu) * q + (20 + 12 * nu) * m * m);
}

}  // namespace stillbay
