// SPDX-License-Identifier: MIT
#include "core/presets/presets.h"

#include <array>
#include <cstddef>

namespace stillbay {
namespace {

struct TubeSize {
    double outer_diameter_mm;
    double bore_mm;
};

struct Silicone {
    double hardness_shore_a;
    double loss_factor;
    double density_kg_m3;
};

constexpr TubeSize kSizes[] = {{4, 2}, {5, 3}, {6, 3}, {6, 4},  {7, 4},  {8, 4},
                               {8, 5}, {8, 6}, {9, 6}, {10, 6}, {10, 7}, {12, 8}};
constexpr Silicone kSilicones[] = {{50, 0.1, 1140}, {60, 0.12, 1160}, {70, 0.14, 1190}};

constexpr const char* kTubePractice = translatable(
    "Sizes as sold, common practice, no source; density of silicone of this hardness from memory; "
    "dynamic ratio, loss factor and stretch limit common practice, no source");

using Stock = std::array<TubePreset, std::size(kSizes) * std::size(kSilicones)>;

constexpr Stock stock()
{
    Stock tubes{};
    std::size_t k = 0;
    for (const TubeSize& size : kSizes)
        for (const Silicone& silicone : kSilicones)
            tubes[k++] = {.outer_diameter_mm = size.outer_diameter_mm,
                          .bore_mm = size.bore_mm,
                          .hardness_shore_a = silicone.hardness_shore_a,
                          .dynamic_ratio = 1.25,
                          .loss_factor = silicone.loss_factor,
                          .density_kg_m3 = silicone.density_kg_m3,
                          .max_stretch = 1.6,
                          .source = kTubePractice};
    return tubes;
}

constexpr Stock kTubes = stock();

}  // namespace

std::span<const TubePreset> tubePresets()
{
    return kTubes;
}

Phrase nameOf(const TubePreset& preset)
{
    return phrase("Tube %1 × %2 mm, Shore A %3", exact(preset.outer_diameter_mm),
                  exact(preset.bore_mm), exact(preset.hardness_shore_a));
}

}  // namespace stillbay
