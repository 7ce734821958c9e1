// SPDX-License-Identifier: MIT
#include "core/presets/presets.h"

namespace stillbay {
namespace {

// Wood. Density of air-dry wood is 1.12 × 1000 kg/m³ × specific gravity at 12 % moisture. The
// tables' modulus is from bending with shear in it; 10 % are added for Young's modulus along the
// grain, as the handbook says. The shear modulus is the mean of both planes along the grain.
// Modulus varies by 22 % and specific gravity by 10 % from piece to piece. Red pine is 0.46 and
// 11.2 GPa, Sitka spruce 0.40 and 10.8 GPa, American beech 0.64 and 11.9 GPa; their shear moduli
// are 0.089, 0.062 and (sugar maple's) 0.087 of Young's.
constexpr const char* kWood = translatable(
    "Wood Handbook (USDA Forest Products Laboratory, FPL-GTR-282), chapter 5: red pine, Sitka "
    "spruce, "
    "American beech at 12 % moisture, specific gravity and bending modulus; 10 % added for shear, "
    "ratio of the shear modulus (beech: that of maple) and spread from memory; loss factor from a "
    "logarithmic decrement of 0.02 to 0.1, from memory");

constexpr const char* kCarbonTable = translatable(
    "Mechanical properties of carbon fibre composite materials, fibre and epoxy cured at 120 °C "
    "(table, performance-composites.com, 2009); spread and loss factor from memory");

constexpr Typical kWoodLoss{0.01, 0.6};
constexpr Typical kCarbonDensity{1600, 0.03};

constexpr ArmPreset kArms[] = {
    {translatable("Pine"), {515, 0.1}, {12.4, 0.22}, {1.1, 0.25}, kWoodLoss, false, kWood},
    {translatable("Spruce"), {448, 0.1}, {11.9, 0.22}, {0.74, 0.25}, kWoodLoss, false, kWood},
    {translatable("Beech"), {717, 0.1}, {13, 0.22}, {1.1, 0.25}, kWoodLoss, false, kWood},
    {translatable("Birch plywood"),
     {680, 0.05},
     {10.5, 0.12},
     {0.62, 0.2},
     {0.015, 0.6},
     false,
     translatable(
         "Handbook of Finnish Plywood (Finnish Forest Industries Federation), plain birch plywood "
         "of 9 "
         "to 12 mm, face grain along the arm, bent flat or on edge, from memory; loss factor from "
         "memory")},
    {translatable("Aluminium 6061-T6"),
     {2700, 0.01},
     {68.9, 0.02},
     {26, 0.02},
     {0.002, 1.0},
     true,
     translatable("The Aluminum Association, typical values of 6061-T6; loss factor common "
                  "practice for an arm "
                  "in its clamp, no source (of the metal alone 0.0001: L. Cremer & M. Heckl, "
                  "Structure-Borne "
                  "Sound)")},
    {translatable("Glass-fibre laminate G10"),
     {1820, 0.03},
     {18.6, 0.1},
     {4, 0.2},
     {0.008, 0.6},
     false,
     translatable(
         "NEMA LI 1 grade G10, as laminate makers print it: specific gravity 1.82, flexural "
         "modulus "
         "lengthwise 2.7 million psi; shear modulus of glass cloth from the table of carbon fibre "
         "composite materials (performance-composites.com, 2009); spread and loss factor from "
         "memory")},
    {translatable("Carbon tube, pultruded"),
     kCarbonDensity,
     {135, 0.1},
     {5, 0.2},
     {0.003, 0.7},
     false,
     kCarbonTable,
     true},
    {translatable("Carbon tube, wrapped cloth"),
     kCarbonDensity,
     {70, 0.2},
     {5, 0.4},
     {0.005, 0.7},
     false,
     kCarbonTable,
     true},
    {translatable("Carbon plate, woven"),
     kCarbonDensity,
     {70, 0.15},
     {5, 0.2},
     {0.005, 0.7},
     false,
     kCarbonTable},
    {translatable("Sandwich board, glass on foam"),
     {275, 0.15},
     {6.4, 0.2},
     {0.02, 0.4},
     {0.02, 0.6},
     false,
     translatable(
         "Own derivation for 10 mm with faces of 0.6 mm (1850 kg/m³, 20 GPa) on foam of 60 kg/m³ "
         "that "
         "gives 20 MPa in shear, bent flat: mean density, modulus of a solid board as stiff, shear "
         "modulus of the foam; properties of faces and foam, spread and loss factor from memory")},
};

}  // namespace

std::span<const ArmPreset> armPresets()
{
    return kArms;
}

Phrase nameOf(const ArmPreset& preset)
{
    return phrase(preset.name);
}

}  // namespace stillbay
