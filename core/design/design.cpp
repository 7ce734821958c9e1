// SPDX-License-Identifier: MIT
#include "core/design/design.h"

#include "core/craft/craft.h"
#include "core/response/level.h"

#include <utility>

namespace stillbay {
Design Hanging::hung(Design design) const
{
    if (!level)
        return design;
    if (auto mounts =
            levelledMounts(makeBody(withDesign(*level, design).parts), design.tube, design.mounts))
        design.mounts = *std::move(mounts);
    return design;
}

Hanging hangingOf(const Setup& setup, bool level)
{
    return level ? Hanging{setup.bay} : Hanging{};
}

StockTube stockOf(const TubeKind& tube)
{
    return {tube.outer_diameter_mm, tube.bore_mm, tube.hardness_shore_a};
}

void useTube(Design& design, const StockTube& stock)
{
    if (stockOf(design.tube) == stock)
        return;
    design.tube.outer_diameter_mm = stock.outer_diameter_mm;
    design.tube.bore_mm = stock.bore_mm;
    design.tube.hardness_shore_a = stock.hardness_shore_a;
    design.tube.youngs_modulus_mpa.reset();
}

}  // namespace stillbay
