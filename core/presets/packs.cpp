// SPDX-License-Identifier: MIT
#include "core/presets/presets.h"

namespace stillbay {
namespace {

constexpr auto kPouch = PackPreset::Cells::Pouch;
constexpr auto kRound = PackPreset::Cells::Round;
constexpr const char* kPackPractice = translatable(
    "Common practice, no source: mass and size; pouches with 10 to 17 mΩ over the capacity in Ah "
    "for "
    "each cell and 3 mΩ for plug and wire; round cells of 21 mm by 70 mm, one or two side by side, "
    "with 70 g, 4.5 Ah and about 16 mΩ each");

constexpr PackPreset kPacks[] = {
    // cells; Ah; full and empty, V per cell; mΩ; g; along, across, high, mm
    {kPouch, 3, 2.2, 4.2, 3.5, 22, 180, {106, 34, 24}, kPackPractice},
    {kPouch, 4, 1.5, 4.2, 3.5, 30, 180, {75, 35, 32}, kPackPractice},
    {kPouch, 4, 3.3, 4.2, 3.5, 21, 360, {135, 43, 30}, kPackPractice},
    {kPouch, 4, 5, 4.2, 3.5, 15, 500, {145, 50, 33}, kPackPractice},
    {kPouch, 5, 5, 4.2, 3.5, 18, 620, {150, 50, 41}, kPackPractice},
    {kPouch, 6, 1.3, 4.2, 3.5, 50, 215, {78, 38, 38}, kPackPractice},
    {kPouch, 6, 3.3, 4.2, 3.5, 30, 530, {135, 43, 45}, kPackPractice},
    {kPouch, 6, 5, 4.2, 3.5, 21, 740, {150, 49, 50}, kPackPractice},
    {kPouch, 6, 10, 4.2, 3.5, 13, 1330, {170, 65, 60}, kPackPractice},
    {kPouch, 7, 5, 4.2, 3.5, 24, 860, {155, 49, 58}, kPackPractice},
    {kPouch, 8, 5, 4.2, 3.5, 27, 980, {155, 49, 66}, kPackPractice},
    {kPouch, 8, 10, 4.2, 3.5, 16, 1750, {170, 65, 79}, kPackPractice},
    {kRound, 4, 4.5, 4.2, 3, 67, 300, {75, 43, 43}, kPackPractice},
    {kRound, 6, 4.5, 4.2, 3, 99, 440, {75, 65, 43}, kPackPractice},
    {kRound, 4, 9, 4.2, 3, 35, 590, {75, 86, 43}, kPackPractice},
    {kRound, 6, 9, 4.2, 3, 51, 870, {75, 129, 43}, kPackPractice},
};

}  // namespace

std::span<const PackPreset> packPresets()
{
    return kPacks;
}

Phrase nameOf(const PackPreset& preset)
{
    const Number cells = fixed(preset.cells, 0);
    const Number capacity = exact(preset.capacity_ah);
    return preset.kind == kPouch
               ? phrase("Lithium-polymer pack, %1 cells, %2 Ah", cells, capacity)
               : phrase("Pack of round lithium-ion cells, %1 in series, %2 Ah", cells, capacity);
}

}  // namespace stillbay
