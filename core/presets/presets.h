// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/phrase.h"
#include "core/setup/setup.h"

#include <optional>
#include <span>

/// What common materials, motors, propellers, packs, cameras and tubes are like, for builders who
/// have no data sheet: a start that a measurement replaces. Kinds only, no brand and no model.
///
/// Values are in the units of the setup file. Each entry says where its numbers come from: a
/// table, "from memory", or common practice without a source. docs/presets.md lists them all.
namespace stillbay {

/// A typical value, and how far such things differ.
struct Typical {
    double value = 0.0;
    std::optional<double> spread = {};  ///< one standard deviation over the value; none: not known
};

/// Material of arms and plates. Of wood and laminates the values along the grain or the fibres.
struct ArmPreset {
    const char* name;
    Typical density_kg_m3;
    Typical youngs_modulus_gpa;
    Typical shear_modulus_gpa;
    Typical loss_factor;  ///< of an arm in its clamp, where more is lost than in the material
    bool isotropic;       ///< the same in all directions
    const char* source;
    bool isTube = false;  ///< sold as a tube: an arm of it is hollow
};

/// Class of motors by the diameter of the stator.
struct MotorPreset {
    const char* name;
    double kv_rpm_per_v;                        ///< of the other values
    std::optional<double> lowest_kv_rpm_per_v;  ///< of the class; none: the winding is known
    std::optional<double> highest_kv_rpm_per_v;
    double resistance_mohm;
    double no_load_current_a;
    double mass_g;  ///< with screws and the wire along the arm
    double diameter_mm;
    double height_mm;
    const char* source;
};

struct PropellerPreset {
    enum class Material { Plastic, Carbon };

    Material material;
    double diameter_in;
    double pitch_in;
    int blades;
    double mass_g;  ///< with its nut
    const char* source;
};

struct PackPreset {
    enum class Cells { Pouch, Round };

    Cells kind;
    int cells;
    double capacity_ah;
    double full_v_per_cell;
    double empty_v_per_cell;
    double resistance_mohm;  ///< with the plug
    double mass_g;           ///< with wires and plug
    Triple size_mm;
    const char* source;
};

struct CameraPreset {
    const char* name;
    int width_px;
    int height_px;
    double frame_rate_hz;
    double readout_ms;
    double horizontal_fov_deg;
    Lens lens;
    std::optional<double> exposure_ms;  ///< none: the pilot's choice
    double mass_g;                      ///< with its own cell, card and lens
    Triple size_mm;
    const char* source;
};

/// Silicone tube as sold. Its modulus follows from the hardness until a hang test gives it.
struct TubePreset {
    double outer_diameter_mm;
    double bore_mm;
    double hardness_shore_a;
    double dynamic_ratio;
    double loss_factor;
    double density_kg_m3;
    double max_stretch;
    const char* source;
};

// All there are, in the order in which a list shows them.
std::span<const ArmPreset> armPresets();
std::span<const MotorPreset> motorPresets();
std::span<const PropellerPreset> propellerPresets();
std::span<const PackPreset> packPresets();
std::span<const CameraPreset> cameraPresets();
std::span<const TubePreset> tubePresets();

// What a list calls them, unlike every other of their kind.
Phrase nameOf(const ArmPreset& preset);
Phrase nameOf(const MotorPreset& preset);
Phrase nameOf(const PropellerPreset& preset);
Phrase nameOf(const PackPreset& preset);
Phrase nameOf(const CameraPreset& preset);
Phrase nameOf(const TubePreset& preset);

/// Spread of the KV within the class: evenly in its logarithm from the lowest to the highest.
/// @return one standard deviation over the value; none where the winding is known.
std::optional<double> kvSpread(const MotorPreset& preset);

/// The motor of this class with another winding of the same copper: resistance goes with 1/KV²,
/// no-load current with KV.
///
/// @param kv_rpm_per_v  > 0.
/// @source D. C. Hanselman, Brushless Permanent Magnet Motor Design (the motor constant does not
///         depend on the number of turns), from memory.
MotorPreset wound(const MotorPreset& preset, double kv_rpm_per_v);

/// Polar moment of inertia as the program estimates it from mass and diameter, ±30 %: m D²/18
/// (core/drive/propeller.h).
double inertia_g_mm2(const PropellerPreset& preset);

}  // namespace stillbay
