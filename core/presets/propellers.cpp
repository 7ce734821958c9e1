// SPDX-License-Identifier: MIT
#include "core/base/units.h"
#include "core/drive/propeller.h"
#include "core/presets/presets.h"

namespace stillbay {
namespace {

constexpr auto kPlastic = PropellerPreset::Material::Plastic;
constexpr auto kCarbon = PropellerPreset::Material::Carbon;
constexpr const char* kPropellerPractice = translatable("Common practice, no source");

// clang-format off
constexpr PropellerPreset kPropellers[] = {
    // material; diameter and pitch, in; blades; mass, g
    {kPlastic, 5, 4.5, 2, 4.5, kPropellerPractice},
    {kPlastic, 5, 4.3, 3, 5.5, kPropellerPractice},
    {kPlastic, 6, 4.5, 2, 6, kPropellerPractice},
    {kPlastic, 6, 4, 3, 7.5, kPropellerPractice},
    {kPlastic, 7, 4, 2, 7.5, kPropellerPractice},
    {kPlastic, 7, 4, 3, 9.5, kPropellerPractice},
    {kPlastic, 8, 4.5, 2, 9, kPropellerPractice},
    {kPlastic, 8, 4.5, 3, 12, kPropellerPractice},
    {kPlastic, 9, 4.5, 2, 11, kPropellerPractice},
    {kPlastic, 9, 4.5, 3, 15, kPropellerPractice},
    {kPlastic, 10, 4.5, 2, 13, kPropellerPractice},
    {kPlastic, 10, 4.5, 3, 18, kPropellerPractice},
    {kPlastic, 11, 4.7, 2, 16, kPropellerPractice},
    {kPlastic, 12, 4.5, 2, 20, kPropellerPractice},
    {kCarbon, 12, 4, 2, 15, kPropellerPractice},
    {kCarbon, 13, 4.4, 2, 19, kPropellerPractice},
    {kCarbon, 15, 5, 2, 28, kPropellerPractice},
    {kCarbon, 15, 5, 3, 42, kPropellerPractice},
};
// clang-format on

}  // namespace

std::span<const PropellerPreset> propellerPresets()
{
    return kPropellers;
}

Phrase nameOf(const PropellerPreset& preset)
{
    const Number diameter = exact(preset.diameter_in);
    const Number pitch = exact(preset.pitch_in);
    const Number blades = fixed(preset.blades, 0);
    return preset.material == kPlastic
               ? phrase("Plastic propeller %1 × %2 in, %3 blades", diameter, pitch, blades)
               : phrase("Carbon propeller %1 × %2 in, %3 blades", diameter, pitch, blades);
}

double inertia_g_mm2(const PropellerPreset& preset)
{
    return estimateInertia(preset.mass_g * unit::g, preset.diameter_in * unit::inch) / unit::g_mm2;
}

}  // namespace stillbay
