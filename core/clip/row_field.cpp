// SPDX-License-Identifier: MIT
#include "core/clip/row_field.h"

#include <algorithm>
#include <cmath>

namespace stillbay {

RowField halvedField(const RowField& field, unsigned halvings, std::size_t rows)
{
    RowField half(rows);
    const std::size_t step = std::size_t{1} << halvings;
    const double scale = 1.0 / static_cast<double>(step);
    for (std::size_t y = 0; y < rows; ++y) {
        RowMotion sum;
        for (std::size_t k = 0; k < step; ++k)
            sum += field[std::min(y * step + k, field.size() - 1)];
        half[y] = scale * sum;
        half[y].right *= scale;
        half[y].down *= scale;
    }
    return half;
}

RowMotion motionAt(const RowField& field, double y)
{
    const double last = static_cast<double>(field.size() - 1);
    const double place = std::clamp(y, 0.0, last);
    const double low = std::min(std::floor(place), std::max(0.0, last - 1.0));
    const auto k = static_cast<std::size_t>(low);
    RowMotion motion = (1.0 - (place - low)) * field[k];
    motion += (place - low) * field[std::min(k + 1, field.size() - 1)];
    return motion;
}

void addBands(RowField& field, const std::vector<RowMotion>& bands, std::size_t firstRow,
              std::size_t rows)
{
    for (std::size_t y = 0; y < field.size(); ++y) {
        const double band = (static_cast<double>(y) + 0.5 - static_cast<double>(firstRow)) /
                                static_cast<double>(rows) -
                            0.5;
        field[y] += motionAt(bands, band);
    }
}

}  // namespace stillbay
