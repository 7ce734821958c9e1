// SPDX-License-Identifier: MIT
#include "core/setup/spreads.h"

#include "core/setup/sources.h"

#include <cmath>

namespace stillbay {

double spreadOfFactor(double factor)
{
    constexpr double kNineOfTen = 1.645;
    const double sigma = std::log(factor) / kNineOfTen;  // of the logarithm
    return std::sqrt(std::expm1(sigma * sigma));
}

double spreadOfNumber(const Setup& setup, std::string_view key, bool isGiven,
                      const UsualSpread& usual)
{
    constexpr double kMeasured = 0.03;
    const Source* const source = isGiven ? sourceOf(setup, key) : nullptr;
    if (source && source->spread)
        return *source->spread;
    if (source)
        return source->from == Origin::Measured ? kMeasured : usual.unknown;
    return isGiven && usual.given ? *usual.given : usual.unknown;
}

double modulusSpread(const Setup& setup)
{
    return spreadOfNumber(setup, "tube.youngs_modulus_mpa",
                          setup.tube.youngs_modulus_mpa.has_value(), {spreadOfFactor(1.5), 0.05});
}

}  // namespace stillbay
