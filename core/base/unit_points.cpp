// SPDX-License-Identifier: MIT
#include "core/base/unit_points.h"

#include <boost/random/sobol.hpp>
#include <cmath>
#include <random>

namespace stillbay {

std::vector<std::vector<double>> unitPoints(std::size_t count, std::size_t dimensions,
                                            std::uint64_t seed)
{
    boost::random::sobol sobol(dimensions);
    std::mt19937_64 random(seed);
    std::vector<double> shifts;
    for (std::size_t k = 0; k < dimensions; ++k)
        shifts.push_back(std::ldexp(static_cast<double>(random() >> 11U), -53));
    std::vector<std::vector<double>> points(count);
    for (std::vector<double>& point : points)
        for (const double shift : shifts) {
            const double x = std::ldexp(static_cast<double>(sobol()), -64) + shift;
            point.push_back(x - std::floor(x));
        }
    return points;
}

}  // namespace stillbay
